/* comparison_csv.c - a row for each thing that changed, for spreadsheets. */
#include "base/csv.h"
#include "compare/change_cells.h"
#include "compare/change_text.h"
#include "compare/comparison_write.h"

struct writing {
	struct arena *arena;
	const struct comparison *comparison;
	struct strbuf out;
};

/* A number is no formula, though it may begin with a sign. */
static void add(struct writing *w, const struct change_cells *row, bool has_numbers)
{
	for (int k = 0; k < CHANGE_COLUMN_COUNT; k++) {
		const char *text = row->texts[k] != NULL ? row->texts[k] : "";
		if (k > 0)
			strbuf_add_char(&w->out, ',');
		if (has_numbers && k != CHANGE_RATE &&
		    change_column_is_number((enum change_column)k))
			strbuf_add(&w->out, text);
		else
			csv_add_cell(&w->out, text);
	}
	csv_end_row(&w->out);
}

static void add_heads(struct writing *w)
{
	struct change_cells heads;
	for (int k = 0; k < CHANGE_COLUMN_COUNT; k++)
		heads.texts[k] = change_column_name((enum change_column)k);
	add(w, &heads, false);
}

static const char *date_text(struct arena *arena, struct date date)
{
	return date.day == 0 ? NULL
	                     : arena_printf(arena, "%04d-%02d-%02d", date.year, date.month,
	                                    date.day_of_month);
}

static void add_edit(struct writing *w, const char *mark, const struct change *change,
                     const struct edit *edit)
{
	const char *id = change->id;
	if (edit->of != NULL)
		id = arena_printf(w->arena, "%s %s", id, edit->of);
	add(w,
	    &(struct change_cells){
		    {[CHANGE_LINE] = mark,
	             [CHANGE_KIND] = "edit",
	             [CHANGE_WHAT] = edit->what != NULL ? edit->what : change_kind_word(edit->kind),
	             [CHANGE_WHERE] = id,
	             [CHANGE_BEFORE] = edit->before,
	             [CHANGE_AFTER] = edit->after,
	             [CHANGE_HOW] = change_kind_word(edit->kind)}},
	    false);
}

static const char *kinds_of(struct arena *arena, const struct change *change)
{
	struct strbuf out = strbuf_in(arena);
	for (int i = 0; i < CHANGE_KINDS; i++)
		if (change->kinds & 1u << i)
			strbuf_printf(&out, "%s%s", out.length > 0 ? " " : "",
			              change_kind_word((enum change_kind)(1u << i)));
	return out.length > 0 ? out.text : change->id_was != NULL ? "renumbered" : "printed";
}

static void add_change(struct writing *w, const char *mark, const struct change *change)
{
	add(w,
	    &(struct change_cells){
		    {[CHANGE_LINE] = mark,
	             [CHANGE_KIND] = "change",
	             [CHANGE_WHAT] = arena_printf(w->arena, "%s %s", change->element->name,
	                                          kinds_of(w->arena, change)),
	             [CHANGE_WHERE] = change->id,
	             [CHANGE_BEFORE] = change->id_was,
	             [CHANGE_AFTER] = change->where,
	             [CHANGE_HOW] = change->reason,
	             [CHANGE_FOUND] = date_text(w->arena, change->found)}},
	    false);
	for (size_t i = 0; i < change->edit_count; i++)
		add_edit(w, mark, change, &change->edits[i]);
}

static void add_row(struct writing *w, const char *mark, const char *kind,
                    const struct row_change *change)
{
	struct change_cells cells = change_cells_of_row(w->arena, change);
	cells.texts[CHANGE_LINE] = mark;
	cells.texts[CHANGE_KIND] = kind;
	add(w, &cells, true);
}

static void add_finding(struct writing *w, const char *mark, const struct finding_change *change)
{
	add(w,
	    &(struct change_cells){{[CHANGE_LINE] = mark,
	                            [CHANGE_KIND] = "finding",
	                            [CHANGE_WHAT] = change->finding->rule->name,
	                            [CHANGE_WHERE] = change->finding->about,
	                            [CHANGE_AFTER] = finding_fate_word(change->fate),
	                            [CHANGE_HOW] = change->finding->text}},
	    false);
}

static void add_difference(struct writing *w, const char *mark, const struct difference *difference)
{
	for (size_t i = 0; i < difference->rows.list.count; i++)
		add_row(w, mark, "quantity", &difference->rows.list.items[i]);
	for (size_t i = 0; i < difference->money.list.count; i++)
		add_row(w, mark, "money", &difference->money.list.items[i]);
	if (row_change_row(&difference->days) != NULL)
		add_row(w, mark, "days", &difference->days);
	for (size_t i = 0; i < difference->findings.list.count; i++)
		add_finding(w, mark, &difference->findings.list.items[i]);
}

struct bytes comparison_csv(struct arena *arena, const struct comparison *comparison)
{
	struct writing w = {arena, comparison, strbuf_in(arena)};
	add_heads(&w);
	for (size_t i = 0; i < comparison->line_count; i++) {
		const struct comparison_line *line = &comparison->lines[i];
		const char *mark = comparison_mark(arena, comparison, line);
		for (size_t k = 0; k < line->change_count; k++)
			add_change(&w, mark, line->changes[k]);
		add_difference(&w, mark, &line->difference);
	}
	for (size_t i = 0; i < comparison->changes.list.count; i++)
		if (!comparison->changes.list.items[i].is_work)
			add_change(&w, "", &comparison->changes.list.items[i]);
	add_difference(&w, "total", &comparison->total);
	return strbuf_bytes(&w.out);
}
