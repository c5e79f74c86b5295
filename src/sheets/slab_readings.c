#include "sheets/slab_readings.h"

#include "drawing/symbol.h"
#include "sheets/lay_view.h"
#include "units/length.h"

static const char *verdict_key(const struct draft *draft, const struct site_reading *reading)
{
	if (reading->room && !lay_of_room(draft->placed, reading->room))
		return "reading.untiled";
	return findings_fail_reading(draft->findings, reading->id) ? "reading.fail"
	                                                           : "reading.pass";
}

static const char *kind_key(enum plan_reading_kind kind)
{
	static const char *const KEYS[] = {
		[PLAN_READING_HUMIDITY] = "reading.humidity",
		[PLAN_READING_EMISSION] = "reading.emission",
		[PLAN_READING_FLATNESS] = "reading.flatness",
		[PLAN_READING_DROP] = "reading.drop",
	};
	return KEYS[kind];
}

static const char *value_text(const struct draft *draft, const struct plan_reading *reading)
{
	switch (reading->kind) {
	case PLAN_READING_DROP:
		return draft_word(draft,
		                  reading->is_absorbed ? "reading.absorbed" : "reading.beads");
	case PLAN_READING_FLATNESS: {
		const char *off = draft_width(draft, length_mm(reading->deviation_nm));
		if (reading->under_nm == 0)
			return off;
		return draft_text(draft, "reading.under", {"value", off},
		                  {"edge", draft_measure(draft, length_mm(reading->under_nm))});
	}
	default:
		return reading->value;
	}
}

static void draw_reading(struct sheet *sheet, const struct view *view,
                         const struct site_reading *reading)
{
	const struct draft *draft = sheet->draft;
	struct paper_point at = view_point(view, reading->at);
	if (!list_shows(sheet->list, at))
		return;
	const char *lines[] = {
		draft_text(draft, "tag.reading", {"id", draft_tag(draft, reading->id)},
	                   {"value", draft_tag(draft, value_text(draft, reading->plan))}),
		draft_tag(draft, draft_word(draft, verdict_key(draft, reading))),
	};
	symbol_reading(sheet->list, reading->id, at,
	               findings_fail_reading(draft->findings, reading->id));
	sheet_use(sheet, LEGEND_READING);
	list_label(sheet->list, &(struct label){.lines = lines,
	                                        .line_count = 2,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .element = reading->id,
	                                        .where = LABEL_AROUND,
	                                        .a = at,
	                                        .b = at,
	                                        .priority = 5,
	                                        .can_lead = true,
	                                        .is_clear = true});
}

void slab_readings_draw(struct sheet *sheet, const struct view *view)
{
	const struct site *site = sheet->draft->site;
	for (size_t i = 0; i < site->reading_count; i++)
		if (site->readings[i].has_at)
			draw_reading(sheet, view, &site->readings[i]);
}

void slab_readings_list(struct notes *notes)
{
	const struct draft *draft = notes->sheet->draft;
	const struct site *site = draft->site;
	if (site->reading_count > 0)
		notes_heading(notes, NOTE_MATERIAL, "heading.readings");
	for (size_t i = 0; i < site->reading_count; i++) {
		const struct site_reading *reading = &site->readings[i];
		const char *date = draft_date(draft, reading->plan->date);
		notes_item(notes, NOTE_MATERIAL, draft_tag(draft, reading->id),
		           draft_text(draft, *date != '\0' ? "reading.row-dated" : "reading.row",
		                      {"kind", draft_word(draft, kind_key(reading->plan->kind))},
		                      {"value", value_text(draft, reading->plan)}, {"date", date},
		                      {"verdict", draft_word(draft, verdict_key(draft, reading))}));
	}
}
