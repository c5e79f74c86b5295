#include "sheets/install_notes.h"

#include <math.h>
#include <string.h>

#include "sheets/cautions.h"
#include "sheets/ground_questions.h"
#include "sheets/lay_view.h"
#include "sheets/materials.h"
#include "sheets/parts.h"
#include "sheets/strip_corners.h"

struct steps {
	struct notes *notes;
	const struct draft *draft;
	const struct site_room *room;
	const struct placed_lay *lay;
	enum note_group group;
	const struct lay_view *seen; /* what of the lay the sheet names; NULL: all of it */
	int number;
};

static void add_step(struct steps *s, const char *text)
{
	notes_item(s->notes, s->group, arena_printf(s->draft->arena, "%d", ++s->number), text);
}

static void add_word(struct steps *s, const char *key)
{
	add_step(s, draft_word(s->draft, key));
}

static const struct first_tile *first_of(const struct steps *s)
{
	const struct controls *controls = s->lay->controls;
	for (size_t i = 0; i < controls->first_count; i++)
		if (controls->firsts[i].room == s->room)
			return &controls->firsts[i];
	return NULL;
}

/* Which leg of the 3-4-5 lies on which line is said, as the drawing has it; of a lay in several
 * rooms each room's own sheet says it. */
static void add_square(struct steps *s, const struct first_tile *first)
{
	double unit = first->square_side;
	bool is_of_many = !s->seen && s->lay->field->room_count > 1;
	if (unit <= 0 || is_of_many) {
		add_word(s, "step.snap");
		return;
	}
	double one = fabs(first->square_u.x - first->at.x);
	double two = fabs(first->square_v.y - first->at.y);
	add_step(s, draft_text(s->draft, "step.snap-square", {"one", draft_length(s->draft, one)},
	                       {"two", draft_length(s->draft, two)},
	                       {"across", draft_length(s->draft, 5 * unit)}));
}

/* Ids of what is held, carried or covered, by commas. */
static void add_id(struct strbuf *list, const char *id)
{
	strbuf_printf(list, "%s%s", list->length ? ", " : "", id);
}

static bool sees_line(const struct steps *s, struct line line)
{
	return lay_view_names(s->draft->arena, s->seen, line);
}

static bool sees_carried(const struct steps *s, const struct joint *joint)
{
	return joint->kind == JOINT_CARRIED && sees_line(s, joint->line);
}

static bool sees_kind(const struct steps *s, enum joint_kind kind)
{
	const struct joints *joints = s->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++)
		if (joints->joints[i].kind == kind && sees_line(s, joints->joints[i].line))
			return true;
	return false;
}

static bool sees_region(const struct steps *s, const struct region *region)
{
	return !s->seen || lay_view_named_most(s->draft->arena, s->seen, region) != NULL;
}

static bool sees_strip(const struct steps *s, const struct strip *strip)
{
	return sees_region(s, &strip->region);
}

static bool sees_hold(const struct steps *s)
{
	for (size_t i = 0; i < s->lay->cracks->hold_count; i++)
		if (sees_region(s, &s->lay->cracks->holds[i].region))
			return true;
	return false;
}

static bool sees_crack(const struct steps *s, const struct placed_crack *crack)
{
	for (size_t i = 0; i < crack->run_count; i++)
		if (sees_line(s, crack->runs[i]))
			return true;
	return false;
}

/* A slab joint that bends, or runs through several rooms, is carried in several. */
static bool is_said_before(const struct steps *s, size_t joint)
{
	const struct joints *joints = s->lay->joints;
	for (size_t i = 0; i < joint; i++)
		if (sees_carried(s, &joints->joints[i]) &&
		    strcmp(joints->joints[i].of, joints->joints[joint].of) == 0)
			return true;
	return false;
}

static const char *carried_ids(const struct steps *s)
{
	struct strbuf list = strbuf_in(s->draft->arena);
	const struct joints *joints = s->lay->joints;
	for (size_t i = 0; i < joints->joint_count; i++)
		if (sees_carried(s, &joints->joints[i]) && !is_said_before(s, i))
			add_id(&list, draft_tag(s->draft, joints->joints[i].of));
	return list.text;
}

/* Of the strips that wait for no answer. */
static const char *strip_ids(const struct steps *s)
{
	struct strbuf list = strbuf_in(s->draft->arena);
	for (size_t i = 0; i < s->lay->strips->strip_count; i++) {
		const struct strip *strip = &s->lay->strips->strips[i];
		if (!strip->pending && sees_strip(s, strip))
			add_id(&list, draft_tag(s->draft, strip->cracks[0]));
	}
	return list.text;
}

/* True where an answer says whether it may be touched at all: not of its width, which is patched
 * in any case. */
static bool waits(const struct steps *s, const struct placed_crack *crack)
{
	const struct rule *wide = rules_rule(s->draft->placed->rules, RULE_CRACK_WIDE);
	for (size_t i = 0; i < crack->verdict.cause_count; i++) {
		const struct crack_cause *cause = &crack->verdict.causes[i];
		if (cause->rule->weight != RULE_NOTE && cause->rule != wide && !cause->answer)
			return true;
	}
	return false;
}

static const char *filled_ids(const struct steps *s)
{
	struct strbuf list = strbuf_in(s->draft->arena);
	for (size_t i = 0; i < s->lay->cracks->crack_count; i++) {
		const struct placed_crack *crack = &s->lay->cracks->cracks[i];
		if (placed_crack_is_filled(crack, s->draft->placed->rules) && !waits(s, crack) &&
		    sees_crack(s, crack))
			add_id(&list, draft_tag(s->draft, crack->id));
	}
	return list.text;
}

static const char *hours_text(const struct steps *s, int64_t hours)
{
	return arena_printf(s->draft->arena, "%lld", (long long)hours);
}

static void add_filling(struct steps *s)
{
	const char *cracks = filled_ids(s);
	int64_t hours = s->draft->site->plan->patch.cure_hours;
	if (*cracks && hours > 0)
		add_step(s, draft_text(s->draft, "step.fill-wait", {"cracks", cracks},
		                       {"hours", hours_text(s, hours)}));
	else if (*cracks)
		add_step(s, draft_text(s->draft, "step.fill", {"cracks", cracks}));
}

/* A strip, or where the membrane is laid in full the soft joints of a crack. */
static bool has_pending(const struct steps *s)
{
	const struct cracks *cracks = s->lay->cracks;
	for (size_t i = 0; i < s->lay->strips->strip_count; i++)
		if (s->lay->strips->strips[i].pending && sees_strip(s, &s->lay->strips->strips[i]))
			return true;
	for (size_t i = 0; i < cracks->crack_count; i++)
		if (cracks->cracks[i].pending && sees_crack(s, &cracks->cracks[i]))
			return true;
	return false;
}

static void add_grout(struct steps *s)
{
	int64_t hours = s->draft->site->plan->mortar.cure_hours;
	if (hours > 0)
		add_step(s,
		         draft_text(s->draft, "step.grout-wait", {"hours", hours_text(s, hours)}));
	else
		add_word(s, "step.grout");
}

/* The owner has not said yet whether the membrane goes over the whole floor. */
static bool is_cover_asked(const struct steps *s)
{
	const struct plan_membrane *membrane = s->lay->strips->cover.membrane;
	for (size_t i = 0; membrane && i < s->draft->findings->count; i++) {
		const struct finding *finding = &s->draft->findings->items[i];
		if (strcmp(finding->rule->name, "cover-unapproved") == 0 &&
		    finding->state == FINDING_OPEN && strcmp(finding->about, membrane->id) == 0)
			return true;
	}
	return false;
}

static void add_membrane(struct steps *s)
{
	const char *strips = strip_ids(s);
	const char *hours = materials_cure(s->draft, s->lay);
	const struct cover *cover = &s->lay->strips->cover;
	bool is_liquid = cover->membrane && cover->membrane->kind == PLAN_MEMBRANE_LIQUID;
	if (cover->is_full)
		add_step(s, draft_text(s->draft, is_liquid ? "step.cover-liquid" : "step.cover",
		                       {"membrane", draft_tag(s->draft, cover->membrane->id)}));
	else if (*strips)
		add_step(s,
		         draft_text(s->draft, is_liquid ? "step.membrane-liquid" : "step.membrane",
		                    {"cracks", strips}));
	else
		return;
	if (hours)
		add_step(s, draft_text(s->draft, "step.membrane-wait", {"hours", hours}));
}

/* What comes before the lines: of the whole floor all that is asked, of a room what is asked of
 * its ground. */
static void add_before(struct steps *s)
{
	if (!s->seen) {
		add_word(s, "step.answers");
		add_word(s, "step.marks");
		return;
	}
	const char *about = ground_questions(s->draft, s->room);
	if (*about)
		add_step(s, draft_text(s->draft, "step.questions", {"about", about}));
}

static void add_after(struct steps *s)
{
	const struct plan *plan = s->draft->site->plan;
	if (s->seen)
		return;
	add_step(s, draft_text(s->draft, "step.seal-wait",
	                       {"hours", hours_text(s, plan->grout.cure_hours)}));
	add_step(s, draft_text(s->draft, "step.protect",
	                       {"hours", hours_text(s, plan->sealant.cure_hours)}));
}

/* Kinds of joints that stay free of mortar and grout. */
static void add_sealed(struct steps *s)
{
	static const struct {
		enum joint_kind kind;
		const char *word;
	} KINDS[] = {
		{JOINT_CARRIED, "step.sealed.carried"},
		{JOINT_MOVEMENT, "step.sealed.field"},
		{JOINT_SOFT, "step.sealed.soft"},
	};
	static const char *const JOINED[] = {"step.sealed.last", "step.sealed.more"};
	const char *list = NULL;
	size_t count = 0;
	for (size_t i = sizeof KINDS / sizeof *KINDS; i-- > 0;) {
		const char *word = draft_word(s->draft, KINDS[i].word);
		if (!sees_kind(s, KINDS[i].kind))
			continue;
		list = count == 0 ? word
		                  : draft_text(s->draft, JOINED[count > 1], {"one", word},
		                               {"other", list});
		count++;
	}
	if (list)
		add_step(s, draft_text(s->draft, "step.sealed", {"kinds", list}));
}

/* True where a slab joint is carried up at a slant to the courses: no two cuts are alike. */
static bool has_slant(const struct steps *s)
{
	for (size_t i = 0; i < s->lay->joints->joint_count; i++) {
		const struct joint *joint = &s->lay->joints->joints[i];
		for (size_t k = 0; sees_carried(s, joint) && k + 1 < joint->line.count; k++)
			if (field_is_askew(joint->line.points[k], joint->line.points[k + 1]))
				return true;
	}
	return false;
}

/* The part that the first tile lies on; NULL: this one, or all of the floor. */
static const struct part *first_part(const struct steps *s)
{
	const struct sheet *sheet = s->notes->sheet;
	const struct first_tile *first = first_of(s);
	if (!s->seen || !sheet->parts)
		return NULL;
	struct box at = box_with(box_empty(), lay_view_plan(s->seen, first->at));
	if (box_meets(sheet->parts->list[sheet->part].core, at))
		return NULL;
	for (size_t i = 0; i < sheet->parts->count; i++)
		if (box_meets(sheet->parts->list[i].core, at))
			return &sheet->parts->list[i];
	return NULL;
}

static void add_first(struct steps *s)
{
	const struct part *part = first_part(s);
	if (!part) {
		add_word(s, "step.first");
		return;
	}
	size_t index = (size_t)(part - s->notes->sheet->parts->list);
	add_step(s, draft_text(s->draft, "step.first-part",
	                       {"part", arena_printf(s->draft->arena, "%zu", index + 1)}));
	notes_lead(s->notes, part->name);
}

/* From the lines on: nothing of it where no whole tile can be laid. */
static void add_tiling(struct steps *s)
{
	struct view plain = {.scale = 1};
	struct lay_view v = lay_view_make(s->draft->arena, s->lay, &plain, s->room);
	add_first(s);
	if (lay_view_is_turned(&v))
		add_word(s, "step.cut-walls");
	const char *carried = carried_ids(s);
	if (*carried)
		add_step(s, draft_text(s->draft, "step.carried", {"joints", carried}));
	if (has_slant(s))
		add_word(s, "step.cut-joints");
	add_sealed(s);
	add_grout(s);
	add_after(s);
}

static void add_steps(struct steps *s)
{
	const struct first_tile *first = first_of(s);
	add_before(s);
	if (sees_hold(s))
		add_word(s, "step.held");
	if (first)
		add_square(s, first);
	add_filling(s);
	if (has_pending(s))
		add_word(s, "step.pending");
	if (is_cover_asked(s))
		add_step(s, draft_text(s->draft, "step.cover-asked",
		                       {"membrane",
		                        draft_tag(s->draft, s->lay->strips->cover.membrane->id)}));
	add_membrane(s);
	if (first)
		add_tiling(s);
	else
		add_word(s, "step.no-lines");
}

void install_steps(struct notes *notes, const struct site_room *room, const struct placed_lay *lay,
                   enum note_group group)
{
	struct steps steps = {notes, notes->sheet->draft, room, lay, group, NULL, 0};
	add_steps(&steps);
}

/* Of the room, or the part of it that the sheet shows. */
static void steps_here(struct notes *notes, const struct lay_view *v)
{
	struct steps steps = {notes, notes->sheet->draft, v->room, v->lay, NOTE_WORK, v, 0};
	add_steps(&steps);
}

void install_notes(struct sheet *sheet, const struct site_room *room, const struct placed_lay *lay)
{
	const struct draft *draft = sheet->draft;
	struct notes notes = {.sheet = sheet};
	if (!lay) {
		notes_item(&notes, NOTE_WORK, "", draft_word(draft, "step.no-tile"));
		notes_legend(&notes);
		notes_draw(&notes);
		return;
	}
	notes_warning(&notes,
	              draft_text(draft, "note.stop-and-call",
	                         {"tolerance", draft_measure(draft, lay->field->tolerance)}));
	notes_heading(&notes, NOTE_WORK, "heading.order");
	struct view plain = parts_extent(sheet);
	struct lay_view v = lay_view_make(draft->arena, lay, &plain, room);
	steps_here(&notes, &v);
	struct strip_corners corners = strip_corners_find(draft->arena, draft->placed, &v, false);
	strip_corners_note(&notes, &v, &corners);
	notes_heading(&notes, NOTE_MATERIAL, "heading.materials");
	materials_add(&notes, lay, &v);
	notes_missing(&notes);
	cautions_add(&notes);
	notes_legend(&notes);
	notes_draw(&notes);
}
