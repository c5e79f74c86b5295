#include "compare/edit.h"

#include <math.h>
#include <string.h>

#include "compare/shape.h"
#include "compare/value_same.h"
#include "geometry/tolerance.h"
#include "units/length.h"

const char *edit_id(const struct markup *node)
{
	const struct markup_attribute *id = markup_find(node, "id");
	return id != NULL ? id->value : NULL;
}

/* ---- what an attribute is about ---- */

struct named_attribute {
	const char *element, *attribute; /* element NULL: of any */
};

static bool is_listed(const struct named_attribute *list, size_t count, const char *element,
                      const char *attribute)
{
	for (size_t i = 0; i < count; i++)
		if ((list[i].element == NULL || strcmp(list[i].element, element) == 0) &&
		    strcmp(list[i].attribute, attribute) == 0)
			return true;
	return false;
}
#define IS_LISTED(list, element, attribute) \
	is_listed(list, sizeof(list) / sizeof *(list), element, attribute)

/* Printed, and nothing else: no work, quantity or finding comes of it. */
static bool is_printed_only(const char *element, const char *attribute)
{
	static const struct named_attribute list[] = {
		{NULL, "name"},         {NULL, "note"},        {"crack", "found"},
		{"floor", "title"},     {"floor", "north"},    {"job", "number"},
		{"job", "site"},        {"job", "drawn-by"},   {"job", "prepared-for"},
		{"job", "prepared-by"}, {"job", "checked-by"}, {"job", "date"},
		{"reading", "date"},    {"revision", "mark"},  {"revision", "date"},
		{"sheets", "paper"},    {"sheets", "scale"},   {"sheets", "style"},
		{"sheets", "words"},    {"grout", "colour"},
	};
	return IS_LISTED(list, element, attribute);
}

static bool is_place(const char *element, const char *attribute)
{
	static const struct named_attribute list[] = {
		{NULL, "x"},   {NULL, "y"},    {NULL, "wall"},      {NULL, "along"},
		{NULL, "out"}, {NULL, "turn"}, {"doorway", "from"}, {"start", "at"},
	};
	return IS_LISTED(list, element, attribute);
}

static bool is_type(const char *element, const char *attribute)
{
	static const struct named_attribute list[] = {
		{NULL, "kind"},  {"slab-joint", "treat"}, {"lay", "pattern"},
		{"lay", "tile"}, {"membrane", "cover"},   {"tile", "shape"},
	};
	return IS_LISTED(list, element, attribute);
}

static enum change_kind kind_of(const char *element, const char *attribute, int order)
{
	if (strcmp(attribute, "width") == 0)
		return order < 0 ? CHANGE_WIDENED : CHANGE_NARROWED;
	if (is_type(element, attribute))
		return CHANGE_RETYPED;
	return is_place(element, attribute) ? CHANGE_MOVED : CHANGE_ALTERED;
}

/* ---- attributes ---- */

/* What holds where nothing is written. */
static const char *fallback(const struct grammar_element *element,
                            const struct grammar_attribute *attribute, const struct markup *node,
                            bool inches)
{
	if (inches && attribute->fallback_inch != NULL)
		return attribute->fallback_inch;
	bool is_square = strcmp(element->name, "tile") == 0 && strcmp(attribute->name, "long") == 0;
	const struct markup_attribute *wide = is_square ? markup_find(node, "wide") : NULL;
	return wide != NULL ? wide->value : attribute->fallback;
}

static const char *text_of(const struct grammar_element *element,
                           const struct grammar_attribute *attribute, const struct markup *node,
                           const struct plan *plan)
{
	const struct markup_attribute *written = markup_find(node, attribute->name);
	return written != NULL ? written->value
	                       : fallback(element, attribute, node, plan_has_inches(plan));
}

static bool is_name(enum grammar_value kind)
{
	return kind == GRAMMAR_NAME || kind == GRAMMAR_REF || kind == GRAMMAR_REFS ||
	       kind == GRAMMAR_PLACES || kind == GRAMMAR_SUBJECT || kind == GRAMMAR_ABOUT;
}

static struct value_reader reader_of(struct arena *arena, const struct plan *plan)
{
	static const enum length_unit units[] = {[PLAN_UNIT_MM] = LENGTH_MM,
	                                         [PLAN_UNIT_M] = LENGTH_M,
	                                         [PLAN_UNIT_IN] = LENGTH_IN,
	                                         [PLAN_UNIT_FT] = LENGTH_FT};
	return (struct value_reader){arena, units[plan->unit], true};
}

static void add(const struct edit_context *c, struct edit_list *edits, struct edit edit)
{
	*array_push(c->arena, &edits->list) = edit;
}

static void find_attribute(const struct edit_context *c, const struct grammar_element *element,
                           const struct grammar_attribute *attribute, const struct markup *base,
                           const struct markup *revised, struct edit_list *edits)
{
	struct value_reader from = reader_of(c->arena, c->base->plan),
			    to = reader_of(c->arena, c->revised->plan);
	const char *before = text_of(element, attribute, base, c->base->plan),
		   *after = text_of(element, attribute, revised, c->revised->plan);
	const char *meant = before != NULL && is_name(attribute->value)
	                            ? renames_revised(c->arena, c->renames, before)
	                            : before;
	int order = value_compare(element, attribute, (struct value_side){&from, meant},
	                          (struct value_side){&to, after});
	if (order == 0)
		return;
	add(c, edits,
	    (struct edit){.what = attribute->name,
	                  .before = before,
	                  .after = after,
	                  .kind = kind_of(element->name, attribute->name, order),
	                  .is_work = !is_printed_only(element->name, attribute->name)});
}

/* ---- children ---- */

/* Boundaries and lines: they are compared where they lie, not as they are written. */
static bool is_drawn(const char *name)
{
	return strcmp(name, "corners") == 0 || strcmp(name, "walls") == 0 ||
	       strcmp(name, "at") == 0;
}

/* What tells children of one name apart; NULL: their order. */
static const char *key_of(const struct markup *node)
{
	static const char *const keys[] = {"id", "of", "name"};
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const struct markup_attribute *key = markup_find(node, keys[i]);
		if (key != NULL)
			return key->value;
	}
	return NULL;
}

static size_t place_of(const struct markup *node)
{
	size_t place = 0;
	for (const struct markup *at = node->parent->first_child; at != node; at = at->next)
		place += strcmp(at->name, node->name) == 0;
	return place;
}

static bool is_fellow(const struct edit_context *c, const struct markup *base,
                      const struct markup *revised)
{
	if (strcmp(base->name, revised->name) != 0)
		return false;
	const char *a = key_of(base), *b = key_of(revised);
	if (a == NULL || b == NULL)
		return a == b && place_of(base) == place_of(revised);
	return strcmp(renames_revised(c->arena, c->renames, a), b) == 0;
}

static const struct markup *fellow_of_base(const struct edit_context *c, const struct markup *base,
                                           const struct markup *revised)
{
	for (const struct markup *at = revised->first_child; at != NULL; at = at->next)
		if (is_fellow(c, base, at))
			return at;
	return NULL;
}

static bool has_fellow(const struct edit_context *c, const struct markup *base,
                       const struct markup *revised)
{
	for (const struct markup *at = base->first_child; at != NULL; at = at->next)
		if (is_fellow(c, at, revised))
			return true;
	return false;
}

static const char *name_of(const struct markup *node)
{
	const char *key = key_of(node);
	return key != NULL ? key : node->name;
}

static void find_in_child(const struct edit_context *c, const struct grammar_element *element,
                          const struct markup *base, const struct markup *revised,
                          struct edit_list *edits)
{
	size_t first = edits->list.count;
	edit_find(c, element, base, revised, edits);
	for (size_t i = first; i < edits->list.count; i++)
		if (edits->list.items[i].of == NULL)
			edits->list.items[i].of = name_of(revised);
}

static void find_children(const struct edit_context *c, const struct grammar_element *element,
                          const struct markup *base, const struct markup *revised,
                          struct edit_list *edits)
{
	for (const struct markup *at = base->first_child; at != NULL; at = at->next) {
		if (is_drawn(at->name))
			continue;
		const struct markup *fellow = fellow_of_base(c, at, revised);
		if (fellow != NULL)
			find_in_child(c, grammar_find_child(element, at->name)->element, at, fellow,
			              edits);
		else
			add(c, edits,
			    (struct edit){name_of(at), NULL, at->name, NULL, CHANGE_REMOVED, true});
	}
	for (const struct markup *at = revised->first_child; at != NULL; at = at->next)
		if (!is_drawn(at->name) && !has_fellow(c, base, at))
			add(c, edits,
			    (struct edit){name_of(at), NULL, NULL, at->name, CHANGE_ADDED, true});
}

/* ---- walls: what tile meets at each, whichever way the boundary is given ---- */

static const char *wall_text(const struct edit_context *c, const struct site_edge *edge)
{
	static const char *const kinds[] = {
		[SITE_EDGE_WALL] = "wall",
		[SITE_EDGE_GLASS] = "glass",
		[SITE_EDGE_OTHER_FLOOR] = "other-floor",
		[SITE_EDGE_OPEN] = "open",
	};
	static const char *const bases[] = {[SITE_BASE_COVERS] = "covers",
	                                    [SITE_BASE_FIRST] = "first",
	                                    [SITE_BASE_NONE] = "none"};
	return arena_printf(c->arena, "%s, %s, %s", kinds[edge->kind], bases[edge->base],
	                    edge->show ? "shown" : "hidden");
}

static void find_walls(const struct edit_context *c, const struct site_room *base,
                       const struct site_room *revised, struct edit_list *edits)
{
	for (size_t i = 0; i < base->edge_count && i < revised->edge_count; i++) {
		const char *before = wall_text(c, &base->edges[i]),
			   *after = wall_text(c, &revised->edges[i]);
		bool is_told = i > 0 && base->edges[i].wall == base->edges[i - 1].wall;
		if (!is_told && strcmp(before, after) != 0)
			add(c, edits,
			    (struct edit){revised->edges[i].id, "kind", before, after,
			                  CHANGE_RETYPED, true});
	}
}

/* ---- walls: which of them lie elsewhere ---- */

struct wall_run {
	const char *id;
	struct point from, to;
	double length;
};

/* The edges of a wall together; an arc has several. */
static struct wall_run wall_at(const struct site_room *room, size_t first)
{
	const struct site_edge *edges = room->edges;
	struct wall_run run = {edges[first].id, edges[first].from, edges[first].to, 0};
	for (size_t i = first; i < room->edge_count && edges[i].wall == edges[first].wall; i++) {
		run.length += point_distance(edges[i].from, edges[i].to);
		run.to = edges[i].to;
	}
	return run;
}

static bool is_first_edge(const struct site_room *room, size_t i)
{
	return i == 0 || room->edges[i].wall != room->edges[i - 1].wall;
}

static bool find_wall(const struct site_room *room, const char *id, struct wall_run *out_run)
{
	for (size_t i = 0; i < room->edge_count; i++)
		if (is_first_edge(room, i) && strcmp(room->edges[i].id, id) == 0) {
			*out_run = wall_at(room, i);
			return true;
		}
	return false;
}

static bool is_near(struct point a, struct point b)
{
	return point_distance(a, b) <= TOLERANCE_WHOLE;
}

static void find_moved_walls(const struct edit_context *c, const struct site_room *base,
                             const struct site_room *revised, struct edit_list *edits)
{
	bool inches = c->revised->site->inches;
	for (size_t i = 0; i < revised->edge_count; i++) {
		struct wall_run to = wall_at(revised, i), from;
		if (!is_first_edge(revised, i))
			continue;
		if (!find_wall(base, to.id, &from))
			add(c, edits, (struct edit){to.id, NULL, NULL, NULL, CHANGE_ADDED, true});
		else if (fabs(from.length - to.length) > TOLERANCE_WHOLE)
			add(c, edits,
			    (struct edit){to.id, "length",
			                  length_text(c->arena, from.length, inches),
			                  length_text(c->arena, to.length, inches), CHANGE_MOVED,
			                  true});
		else if (!is_near(from.from, to.from) || !is_near(from.to, to.to))
			add(c, edits,
			    (struct edit){to.id, "place", NULL, NULL, CHANGE_MOVED, true});
	}
	struct wall_run gone;
	for (size_t i = 0; i < base->edge_count; i++)
		if (is_first_edge(base, i) && !find_wall(revised, base->edges[i].id, &gone))
			add(c, edits,
			    (struct edit){base->edges[i].id, NULL, NULL, NULL, CHANGE_REMOVED,
			                  true});
}

/* Written alike, down to its last point: where it lies elsewhere all the same, something
 * else has moved it. */
static bool is_written_alike(const struct edit_context *c, const struct markup *base,
                             const struct markup *revised)
{
	if (strcmp(base->name, revised->name) != 0 ||
	    base->attribute_count != revised->attribute_count)
		return false;
	for (size_t i = 0; i < base->attribute_count; i++) {
		const struct markup_attribute *from = &base->attributes[i],
					      *to = markup_find(revised, from->name);
		const char *meant = renames_revised(c->arena, c->renames, from->value);
		if (to == NULL || (strcmp(from->name, "id") != 0 && strcmp(meant, to->value) != 0))
			return false;
	}
	const struct markup *a = base->first_child, *b = revised->first_child;
	for (; a != NULL && b != NULL; a = a->next, b = b->next)
		if (!is_written_alike(c, a, b))
			return false;
	return a == b;
}

static void find_shape(const struct edit_context *c, const struct grammar_element *element,
                       const struct markup *base, const struct markup *revised,
                       struct edit_list *edits)
{
	const char *from = edit_id(base), *to = edit_id(revised);
	if (from == NULL || to == NULL || is_written_alike(c, base, revised))
		return;
	struct shape a = shape_find(c->arena, c->base->site, element->name, from),
		     b = shape_find(c->arena, c->revised->site, element->name, to);
	bool moved = !shape_is_same(a, b), is_room = strcmp(element->name, "room") == 0;
	if (moved)
		add(c, edits, (struct edit){NULL, "place", NULL, NULL, CHANGE_MOVED, true});
	if (is_room)
		(moved ? find_moved_walls : find_walls)(c, site_room_find(c->base->site, from),
		                                        site_room_find(c->revised->site, to),
		                                        edits);
}

void edit_find(const struct edit_context *c, const struct grammar_element *element,
               const struct markup *base, const struct markup *revised, struct edit_list *edits)
{
	find_shape(c, element, base, revised, edits);
	for (size_t i = 0; i < element->attribute_count; i++)
		if (element->attributes[i].value != GRAMMAR_ID)
			find_attribute(c, element, &element->attributes[i], base, revised, edits);
	/* Of two floors only they themselves are compared; pairing.h has their elements. */
	if (element != &grammar_floor)
		find_children(c, element, base, revised, edits);
}
