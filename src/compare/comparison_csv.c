/* comparison_csv.c - a row for each thing that changed, for spreadsheets. */
#include "base/csv.h"
#include "compare/change_text.h"
#include "compare/comparison_write.h"
#include "units/number.h"

enum {
	LINE,
	KIND,
	WHAT,
	WHERE,
	BEFORE,
	AFTER,
	MORE,
	UNIT,
	RATE,
	PRICE_BEFORE,
	PRICE_AFTER,
	PRICE_MORE,
	HOW,
	FOUND,
	COLUMNS
};

struct cells {
	const char *texts[COLUMNS]; /* NULL: blank */
	bool is_number;             /* before, after and difference are */
};

struct writing {
	struct arena *arena;
	const struct comparison *comparison;
	struct strbuf out;
};

static bool is_plain(const struct cells *row, int column)
{
	bool is_amount = column == BEFORE || column == AFTER || column == MORE;
	return (is_amount && row->is_number) || column == PRICE_BEFORE || column == PRICE_AFTER ||
	       column == PRICE_MORE;
}

static void add(struct writing *w, const struct cells *row)
{
	for (int k = 0; k < COLUMNS; k++) {
		const char *text = row->texts[k] != NULL ? row->texts[k] : "";
		if (k > 0)
			strbuf_add_char(&w->out, ',');
		if (is_plain(row, k))
			strbuf_add(&w->out, text);
		else
			csv_add_cell(&w->out, text);
	}
	csv_end_row(&w->out);
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
	add(w, &(struct cells){.texts = {[LINE] = mark,
	                                 [KIND] = "edit",
	                                 [WHAT] = edit->what != NULL ? edit->what
	                                                             : change_kind_word(edit->kind),
	                                 [WHERE] = id,
	                                 [BEFORE] = edit->before,
	                                 [AFTER] = edit->after}});
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
	add(w, &(struct cells){
		       .texts = {[LINE] = mark,
	                         [KIND] = "change",
	                         [WHAT] = arena_printf(w->arena, "%s %s", change->element->name,
	                                               kinds_of(w->arena, change)),
	                         [WHERE] = change->id,
	                         [BEFORE] = change->id_was,
	                         [AFTER] = change->where,
	                         [HOW] = change->reason,
	                         [FOUND] = date_text(w->arena, change->found)}});
	for (size_t i = 0; i < change->edit_count; i++)
		add_edit(w, mark, change, &change->edits[i]);
}

static void add_row(struct writing *w, const char *mark, const char *kind,
                    const struct row_change *change)
{
	const struct count_row *row = row_change_row(change);
	add(w,
	    &(struct cells){
		    .texts = {[LINE] = mark,
	                      [KIND] = kind,
	                      [WHAT] = row->what,
	                      [WHERE] = row->where,
	                      [BEFORE] =
	                              change_text_amount(w->arena, change, change->amount_before),
	                      [AFTER] = change_text_amount(w->arena, change, change->amount_after),
	                      [MORE] = number_text(w->arena, change->amount_more, change->decimals),
	                      [UNIT] = row->unit,
	                      [RATE] = change_text_rate(w->arena, change),
	                      [PRICE_BEFORE] =
	                              change_text_cents(w->arena, change, change->cents_before),
	                      [PRICE_AFTER] =
	                              change_text_cents(w->arena, change, change->cents_after),
	                      [PRICE_MORE] =
	                              change_text_cents(w->arena, change,
	                                                change->cents_after - change->cents_before),
	                      [HOW] = row->how},
		    .is_number = true,
	    });
}

static void add_finding(struct writing *w, const char *mark, const struct finding_change *change)
{
	add(w, &(struct cells){.texts = {[LINE] = mark,
	                                 [KIND] = "finding",
	                                 [WHAT] = change->finding->rule->name,
	                                 [WHERE] = change->finding->about,
	                                 [AFTER] = finding_fate_word(change->fate),
	                                 [HOW] = change->finding->text}});
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
	strbuf_add(&w.out, "line,kind,what,where,before,after,difference,unit,rate,price-before,"
	                   "price-after,price-difference,how,found\r\n");
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
