#include "record/record.h"

#include <string.h>

#include "count/totals.h"
#include "record/crack_movements.h"
#include "record/markup.h"

/* What the writers of elements share. */
struct writing {
	struct markup markup;
	struct arena *arena;
	const struct placed *placed;
	const struct findings *findings;
};

static struct region out_region(const struct writing *w, const struct placed_lay *lay,
                                const struct region *region)
{
	return frame_region_out(w->arena, lay->field->frame, region);
}

/* Ids by blanks. */
static const char *ids_of_rooms(const struct writing *w, const struct field *field)
{
	struct strbuf ids = strbuf_in(w->arena);
	for (size_t i = 0; i < field->room_count; i++)
		strbuf_printf(&ids, "%s%s", i > 0 ? " " : "", field->rooms[i]->id);
	return ids.text;
}

static const char *ids_of_cracks(const struct writing *w, const struct cracks *cracks,
                                 const struct crack_group *group)
{
	struct strbuf ids = strbuf_in(w->arena);
	for (size_t i = 0; i < group->crack_count; i++)
		strbuf_printf(&ids, "%s%s", i > 0 ? " " : "", cracks->cracks[group->cracks[i]].id);
	return ids.text;
}

static const char *yes_no(bool yes)
{
	return yes ? "yes" : "no";
}

/* ---- as found ---- */

static void write_rooms(struct writing *w)
{
	const struct site *site = w->placed->site;
	struct markup *m = &w->markup;
	for (size_t i = 0; i < site->room_count; i++) {
		const struct site_room *room = &site->rooms[i];
		markup_start(m, "room");
		markup_text(m, "id", room->id);
		markup_area(m, "area", ring_area(room->outline));
		markup_length(m, "perimeter", ring_length(room->outline));
		markup_length(m, "closing-error", room->closing_error);
		markup_points(m, "outline", room->outline.points, room->outline.count);
		markup_end(m, "room");
	}
}

static const char *crack_state_word(enum crack_state state)
{
	static const char *const words[] = {
		[CRACK_ISOLATE] = "isolate", [CRACK_HOLD] = "hold", [CRACK_CARRY] = "carry"};
	return words[state];
}

static void write_crack(struct writing *w, const struct site_crack *crack)
{
	struct crack_total total = crack_total(w->placed, crack);
	struct markup *m = &w->markup;
	markup_start(m, "crack");
	markup_text(m, "id", crack->id);
	markup_text(m, "state", total.is_placed ? crack_state_word(total.state) : "");
	markup_text(m, "pending", yes_no(total.pending));
	markup_text(m, "group", total.group);
	markup_points(m, "line", crack->line.points, crack->line.count);
	markup_end(m, "crack");
}

static bool is_relocated_before(const struct placed *placed, size_t lay, const char *id)
{
	for (size_t i = 0; i < lay; i++)
		for (size_t k = 0; k < placed->lays[i].field->relocated_count; k++)
			if (strcmp(placed->lays[i].field->relocated[k].id, id) == 0)
				return true;
	return false;
}

/* Slab joints that are relocated too: they are isolated as cracks are. */
static void write_cracks(struct writing *w)
{
	const struct placed *placed = w->placed;
	for (size_t i = 0; i < placed->site->crack_count; i++)
		write_crack(w, &placed->site->cracks[i]);
	for (size_t i = 0; i < placed->lay_count; i++)
		for (size_t k = 0; k < placed->lays[i].field->relocated_count; k++) {
			const struct site_crack *crack = &placed->lays[i].field->relocated[k];
			if (!is_relocated_before(placed, i, crack->id))
				write_crack(w, crack);
		}
}

/* ---- lines of the crew ---- */

static void write_control(struct markup *m, const struct placed_lay *lay,
                          const struct control *control)
{
	struct point from = frame_out(lay->field->frame, control->from);
	struct point to = frame_out(lay->field->frame, control->to);
	markup_start(m, "control");
	markup_text(m, "id", control->id);
	markup_text(m, "room", control->room->id);
	markup_length(m, "x1", from.x);
	markup_length(m, "y1", from.y);
	markup_length(m, "x2", to.x);
	markup_length(m, "y2", to.y);
	markup_end(m, "control");
}

static void write_first(struct markup *m, const struct placed_lay *lay,
                        const struct first_tile *first)
{
	struct point at = frame_out(lay->field->frame, first->at);
	markup_start(m, "first");
	markup_text(m, "room", first->room->id);
	markup_length(m, "x", at.x);
	markup_length(m, "y", at.y);
	markup_end(m, "first");
}

static void write_controls(struct writing *w, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->controls->control_count; i++)
		write_control(&w->markup, lay, &lay->controls->controls[i]);
	for (size_t i = 0; i < lay->controls->first_count; i++)
		write_first(&w->markup, lay, &lay->controls->firsts[i]);
}

/* ---- tile ---- */

static void write_grid(struct writing *w, const struct placed_lay *lay)
{
	const struct module *module = lay->module;
	struct frame frame = lay->field->frame;
	struct markup *m = &w->markup;
	markup_start(m, "grid");
	markup_number(m, "angle", lay->field->lay->angle_deg);
	markup_point(m, "a", frame_out(frame, module->a));
	markup_point(m, "b", frame_out(frame, module->b));
	for (size_t i = 0; i < module->face_count; i++) {
		const struct face *face = &module->faces[i];
		struct ring ring = frame_ring_out(w->arena, frame, face->ring);
		markup_start(m, "face");
		markup_text(m, "tile", lay->field->lay->tiles[face->tile]->id);
		markup_end_points(m, "face", ring.points, ring.count);
	}
	markup_end(m, "grid");
}

static void write_setting_out(struct markup *m, const struct position_key *key)
{
	markup_start(m, "setting-out");
	markup_number(m, "unmet", key->unmet);
	markup_number(m, "small", key->small);
	markup_number(m, "whole-at-joint", key->whole_at_joint);
	markup_number(m, "balance", key->balance);
	markup_number(m, "cut-pieces", key->cut_pieces);
	markup_end(m, "setting-out");
}

static void write_tiles(struct markup *m, const struct placed_lay *lay)
{
	struct tile_total total = tile_total(lay);
	markup_start(m, "tiles");
	markup_count(m, "whole", total.whole);
	markup_count(m, "cut", total.cut);
	markup_area(m, "lost", total.lost_mm2);
	markup_count(m, "held-whole", total.held_whole);
	markup_count(m, "held-cut", total.held_cut);
	markup_area(m, "held-area", total.held_mm2);
	markup_length(m, "smallest-cut", lay->position->smallest_cut);
	markup_length(m, "smallest-cut-worst", lay->position->smallest_cut_worst);
	markup_area(m, "smallest-piece", total.smallest_piece_mm2);
	markup_area(m, "area", total.tile_mm2);
	markup_end(m, "tiles");
}

static void write_edge(struct writing *w, const struct placed_lay *lay,
                       const struct border_cut *cut)
{
	const struct field_border *border = &lay->field->borders[cut->border];
	struct strbuf courses = strbuf_in(w->arena);
	struct markup *m = &w->markup;
	for (size_t i = 0; i < cut->course_count; i++) {
		if (i > 0)
			strbuf_add_char(&courses, ' ');
		markup_add_length(&courses, cut->courses[i]);
	}
	markup_start(m, "edge");
	markup_text(m, "of", border->of);
	markup_point(m, "from", frame_out(lay->field->frame, border->from));
	markup_point(m, "to", frame_out(lay->field->frame, border->to));
	markup_length(m, "cut-from", cut->from);
	markup_length(m, "cut-to", cut->to);
	markup_text(m, "courses", courses.text);
	markup_end(m, "edge");
}

static void write_panel(struct writing *w, const struct placed_lay *lay, const struct panel *panel)
{
	struct region ground =
		out_region(w, lay, &(struct region){(struct polygon[]){panel->ground}, 1});
	struct point at = frame_out(lay->field->frame, panel->position);
	struct markup *m = &w->markup;
	markup_start(m, "panel");
	markup_text(m, "id", panel->id);
	markup_length(m, "x", at.x);
	markup_length(m, "y", at.y);
	markup_area(m, "area", panel->area_mm2);
	markup_length(m, "long", panel->long_side);
	markup_length(m, "short", panel->short_side);
	markup_region(m, &ground);
	markup_end(m, "panel");
}

static void write_field(struct writing *w, const struct placed_lay *lay)
{
	struct markup *m = &w->markup;
	markup_start(m, "field");
	markup_text(m, "lay", lay->field->lay->id);
	markup_text(m, "rooms", ids_of_rooms(w, lay->field));
	markup_area(m, "area", lay->field->area_mm2);
	write_grid(w, lay);
	write_setting_out(m, &lay->position->key);
	write_tiles(m, lay);
	for (size_t i = 0; i < lay->position->cut_count; i++)
		write_edge(w, lay, &lay->position->cuts[i]);
	for (size_t i = 0; i < lay->tiling->panel_count; i++)
		write_panel(w, lay, &lay->tiling->panels[i]);
	markup_end(m, "field");
}

/* ---- membrane ---- */

static void write_cover(struct writing *w, const struct placed_lay *lay)
{
	const struct cover *cover = &lay->strips->cover;
	struct markup *m = &w->markup;
	if (cover->membrane == NULL)
		return;
	struct region region = out_region(w, lay, &cover->region);
	markup_start(m, "cover");
	markup_text(m, "membrane", cover->membrane->id);
	markup_text(m, "rooms", ids_of_rooms(w, lay->field));
	markup_area(m, "area", cover->area_mm2);
	markup_text(m, "scope", cover->is_full ? "full" : "partial");
	if (cover->alternate_mm2 > 0)
		markup_area(m, "alternate", cover->alternate_mm2);
	else
		markup_text(m, "alternate", "");
	markup_region(m, &region);
	markup_end(m, "cover");
}

static void write_piece(struct writing *w, const struct placed_lay *lay,
                        const struct strip_piece *piece)
{
	struct polygon shape = piece->shape;
	struct region region = out_region(w, lay, &(struct region){&shape, 1});
	struct markup *m = &w->markup;
	markup_start(m, "piece");
	markup_count(m, "order", piece->order);
	markup_count(m, "roll", piece->roll);
	markup_length(m, "length", piece->length);
	markup_length(m, "wide", piece->wide);
	markup_length(m, "lap", piece->lap);
	markup_region(m, &region);
	markup_end(m, "piece");
}

static void write_strip(struct writing *w, const struct placed_lay *lay, const struct strip *strip)
{
	struct region region = out_region(w, lay, &strip->region);
	struct markup *m = &w->markup;
	struct strbuf cracks = strbuf_in(w->arena);
	for (size_t i = 0; i < strip->crack_count; i++)
		strbuf_printf(&cracks, "%s%s", i > 0 ? " " : "", strip->cracks[i]);
	markup_start(m, "strip");
	markup_text(m, "id", strip->id);
	markup_text(m, "crack", cracks.text);
	markup_length(m, "width", strip->width);
	markup_length(m, "length", strip->length);
	markup_area(m, "area", region_area(&strip->region));
	markup_text(m, "pending", yes_no(strip->pending));
	markup_region(m, &region);
	for (size_t i = 0; i < strip->piece_count; i++)
		write_piece(w, lay, &strip->pieces[i]);
	markup_end(m, "strip");
}

static void write_hold(struct writing *w, const struct placed_lay *lay, const struct hold *hold)
{
	struct region region = out_region(w, lay, &hold->region);
	const struct crack_group *group = &lay->cracks->groups[hold->group];
	struct markup *m = &w->markup;
	markup_start(m, "hold");
	markup_text(m, "id", hold->id);
	markup_text(m, "crack", ids_of_cracks(w, lay->cracks, group));
	markup_area(m, "area", hold->area_mm2);
	markup_region(m, &region);
	markup_end(m, "hold");
}

/* ---- joints ---- */

static const char *joint_back_word(enum joint_back back)
{
	static const char *const words[] = {
		[JOINT_BACK_NONE] = "none", [JOINT_BACK_ROD] = "rod", [JOINT_BACK_TAPE] = "tape"};
	return words[back];
}

/* A closed joint comes back to its first point. */
static struct line joint_line(const struct writing *w, const struct placed_lay *lay,
                              const struct joint *joint)
{
	struct line line = frame_line_out(w->arena, lay->field->frame, joint->line);
	if (!joint->is_closed || line.count == 0)
		return line;
	struct point *points = ARENA_ARRAY(w->arena, struct point, line.count + 1);
	for (size_t i = 0; i <= line.count; i++)
		points[i] = line.points[i % line.count];
	return (struct line){points, line.count + 1};
}

static void write_joint(struct writing *w, const struct placed_lay *lay, const struct joint *joint)
{
	struct line line = joint_line(w, lay, joint);
	struct markup *m = &w->markup;
	markup_start(m, "joint");
	markup_text(m, "id", joint->id);
	markup_text(m, "kind", joint_kind_word(joint->kind));
	markup_text(m, "of", joint->of);
	markup_text(m, "side", joint->side);
	markup_text(m, "on", joint->on_joint ? "joint" : "cut");
	markup_length(m, "width", joint->width);
	markup_length(m, "depth", joint->depth);
	markup_text(m, "back", joint_back_word(joint->back));
	markup_length(m, "length", joint->length);
	markup_number(m, "turns", joint->turns);
	markup_length(m, "cost", joint->cost);
	markup_text(m, "ends", joint->ends);
	markup_text(m, "why", joint->why);
	markup_text(m, "serves", joint->serves);
	markup_points(m, "line", line.points, line.count);
	markup_end(m, "joint");
}

/* ---- in the order of the contract: kind by kind, lay by lay within ---- */

static void write_strips(struct writing *w, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->strips->strip_count; i++)
		write_strip(w, lay, &lay->strips->strips[i]);
}

static void write_holds(struct writing *w, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->cracks->hold_count; i++)
		write_hold(w, lay, &lay->cracks->holds[i]);
}

static void write_joints(struct writing *w, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->joints->joint_count; i++)
		write_joint(w, lay, &lay->joints->joints[i]);
}

static void write_lays(struct writing *w)
{
	static void (*const writers[])(struct writing *,
	                               const struct placed_lay *) = {write_controls, write_field,
	                                                             write_cover,    write_strips,
	                                                             write_holds,    write_joints};
	for (size_t k = 0; k < sizeof writers / sizeof writers[0]; k++)
		for (size_t i = 0; i < w->placed->lay_count; i++)
			writers[k](w, &w->placed->lays[i]);
}

/* ---- findings ---- */

static void write_finding(struct markup *m, const struct finding *finding)
{
	markup_start(m, "finding");
	markup_text(m, "rule", finding->rule->name);
	markup_text(m, "weight", rule_weight_word(finding->weight));
	markup_text(m, "state", finding->state == FINDING_OPEN ? "open" : "answered");
	markup_text(m, "who", finding->rule->who);
	markup_text(m, "about", finding->about);
	markup_count(m, "line", finding->line);
	markup_length(m, "x", finding->at.x);
	markup_length(m, "y", finding->at.y);
	markup_number(m, "measured", finding->measured);
	markup_number(m, "limit", finding->limit);
	markup_text(m, "unit", finding->unit);
	markup_text(m, "source", finding->rule->source);
	markup_end_text(m, "finding", finding->text);
}

struct bytes record_write(struct arena *arena, const struct placed *placed,
                          const struct findings *findings, const char *plan_name)
{
	struct strbuf out = strbuf_in(arena);
	struct writing w = {{&out, 0, false}, arena, placed, findings};
	strbuf_add(&out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
	markup_start(&w.markup, "placed");
	markup_text(&w.markup, "version", "1");
	markup_text(&w.markup, "plan", plan_name);
	markup_text(&w.markup, "title", placed->site->plan->title);
	write_rooms(&w);
	write_cracks(&w);
	crack_movements_write(&w.markup, arena, placed);
	write_lays(&w);
	for (size_t i = 0; i < findings->count; i++)
		write_finding(&w.markup, &findings->items[i]);
	markup_end(&w.markup, "placed");
	return strbuf_bytes(&out);
}
