#include "sheets/title_block.h"

#include <math.h>
#include <string.h>

#include "sheets/drawing_scale.h"

/* Paper mm, own design. */
static const double INSET = 4, ROW = 5.4, NAME_HEIGHT = 13, TITLE_HEIGHT = 11.5, STATUS_HEIGHT = 8;
static const double REVISION_ROW = 4.6, REVISION_MARK = 10, REVISION_DATE = 24;
static const double FACT_INSET = 4, FACT_GAP = 2, WRAP_SLACK = 0.01;
static const double STATUS_CAP = 4;
enum { FACT_ROWS = 6, REVISIONS_SHOWN = 3 };

struct block {
	struct sheet *sheet;
	const struct draft *draft;
	double x0, x1, y; /* y: the next rule */
};

struct fact {
	const char *key, *value;
};

static const char *or_blank(const char *text)
{
	return text ? text : "";
}

/* What the plan says of the job; all blank where it says nothing. */
static struct plan_job job_of(const struct draft *draft)
{
	const struct plan_job *job = draft->site->plan->job;
	return job ? *job : (struct plan_job){0};
}

static const char *latest_revision(const struct plan *plan)
{
	return plan->revision_count ? plan->revisions[plan->revision_count - 1].mark : "";
}

static void list_facts(const struct sheet *sheet, struct fact out_facts[FACT_ROWS][2])
{
	const struct draft *draft = sheet->draft;
	struct plan_job job = job_of(draft);
	const struct fact facts[FACT_ROWS][2] = {
		{{"block.prepared-for", or_blank(job.prepared_for)},
	         {"block.prepared-by", or_blank(job.prepared_by)}},
		{{"block.drawn-by", or_blank(job.drawn_by)},
	         {"block.checked-by", or_blank(job.checked_by)}},
		{{"block.job", or_blank(job.number)}, {"block.date", draft_date(draft, job.date)}},
		{{"block.scale",
	          sheet->scale > 0
	                  ? drawing_scale_text(draft->arena, draft->site->inches, sheet->scale)
	                  : draft_word(draft, "block.no-scale")},
	         {"block.paper", draft->paper->label}},
		{{"block.sheet",
	          arena_printf(draft->arena, "%zu / %zu", sheet->number, sheet->count)},
	         {"block.revision", latest_revision(draft->site->plan)}},
		{{"block.approved", ""},
	         {"block.document", draft_word(draft, "block.shop-drawing")}},
	};
	memcpy(out_facts, facts, sizeof facts);
}

/* Where a fact's value begins in the cell from x0 on. */
static double value_left(const struct sheet *sheet, struct fact fact, double x0)
{
	return x0 + FACT_INSET +
	       list_text_width(sheet->list, TEXT_TABLE, draft_word(sheet->draft, fact.key)) +
	       FACT_GAP;
}

/* Width of a fact's cell in one line. */
static double fact_width(const struct sheet *sheet, struct fact fact)
{
	return value_left(sheet, fact, 0) +
	       list_text_width(sheet->list, TEXT_TABLE_HEAD, fact.value) + 1;
}

/* A text as its cell has it: what is too long for one line is set smaller, down to the height
 * of tables, and in more lines where it still is. */
struct fitted {
	double cap;
	struct text_lines lines;
};

static struct fitted fit(const struct sheet *sheet, enum text_role role, double width,
                         const char *text)
{
	const struct draft *draft = sheet->draft;
	const struct text_style *style = &draft->style->texts[role];
	double natural = list_text_width(sheet->list, role, text);
	double cap = fmin(style->cap, style->cap * width / fmax(natural, 1));
	cap = fmax(cap, draft->style->texts[TEXT_TABLE].cap);
	return (struct fitted){cap, text_wrap(draft->text, draft->arena, style->weight, cap,
	                                      width + WRAP_SLACK, text)};
}

/* What the lines after the first add to the height of a cell. */
static double more_height(struct fitted fitted)
{
	return fitted.lines.count > 1 ? (double)(fitted.lines.count - 1) * text_pitch(fitted.cap)
	                              : 0;
}

static double inner_width(const struct sheet *sheet)
{
	return sheet->column.x1 - sheet->column.x0 - 2 * INSET;
}

/* The floor's title, its site, the title of this sheet. */
struct names {
	struct fitted floor, site, sheet;
};

static struct names names_of(const struct sheet *sheet)
{
	double width = inner_width(sheet);
	const char *title = or_blank(sheet->draft->site->plan->title);
	return (struct names){
		fit(sheet, TEXT_STRONG, width, title),
		fit(sheet, TEXT_TABLE, width, or_blank(job_of(sheet->draft).site)),
		fit(sheet, TEXT_TITLE, width, sheet->title),
	};
}

static double names_height(const struct sheet *sheet)
{
	struct names names = names_of(sheet);
	return NAME_HEIGHT + more_height(names.floor) + more_height(names.site) + TITLE_HEIGHT +
	       more_height(names.sheet);
}

static struct fitted fit_fact(const struct sheet *sheet, struct fact fact, double x0, double x1)
{
	return fit(sheet, TEXT_TABLE_HEAD, x1 - value_left(sheet, fact, x0) - 1, fact.value);
}

static double fact_height(const struct sheet *sheet, struct fact fact)
{
	return ROW + more_height(fit_fact(sheet, fact, sheet->column.x0, sheet->column.x1));
}

/* Two facts share a row where both fit in half of it. */
static bool is_shared(const struct sheet *sheet, const struct fact row[2])
{
	double half = (sheet->column.x1 - sheet->column.x0) / 2;
	return fact_width(sheet, row[0]) <= half && fact_width(sheet, row[1]) <= half;
}

static double facts_height(const struct sheet *sheet)
{
	struct fact facts[FACT_ROWS][2];
	double height = 0;
	list_facts(sheet, facts);
	for (int i = 0; i < FACT_ROWS; i++)
		height += is_shared(sheet, facts[i]) ? ROW
		                                     : fact_height(sheet, facts[i][0]) +
		                                               fact_height(sheet, facts[i][1]);
	return height;
}

static size_t revisions_shown(const struct sheet *sheet)
{
	size_t count = sheet->draft->site->plan->revision_count;
	return count < REVISIONS_SHOWN ? count : REVISIONS_SHOWN;
}

/* Columns of the revisions, as wide as their heads at least. */
static double revision_column(const struct sheet *sheet, double least, const char *head)
{
	double width =
		list_text_width(sheet->list, TEXT_TABLE_HEAD, draft_word(sheet->draft, head));
	return fmax(least, width + FACT_GAP);
}

static double date_left(const struct sheet *sheet)
{
	return sheet->column.x0 + INSET + revision_column(sheet, REVISION_MARK, "block.revision");
}

static double note_left(const struct sheet *sheet)
{
	return date_left(sheet) + revision_column(sheet, REVISION_DATE, "block.date");
}

/* A note that is too long for one line of its cell has more. */
static double revision_height(const struct sheet *sheet, const char *note)
{
	const struct draft *draft = sheet->draft;
	const struct text_style *style = &draft->style->texts[TEXT_TABLE];
	struct text_lines lines = text_wrap(draft->text, draft->arena, style->weight, style->cap,
	                                    sheet->column.x1 - INSET - note_left(sheet), note);
	size_t more = lines.count > 1 ? lines.count - 1 : 0;
	return REVISION_ROW + (double)more * text_pitch(style->cap);
}

static double revisions_height(const struct sheet *sheet)
{
	const struct plan *plan = sheet->draft->site->plan;
	double height = REVISION_ROW;
	for (size_t i = plan->revision_count - revisions_shown(sheet); i < plan->revision_count;
	     i++)
		height += revision_height(sheet, or_blank(plan->revisions[i].note));
	return height;
}

void title_block_reserve(struct sheet *sheet)
{
	sheet->column.y1 -=
		names_height(sheet) + facts_height(sheet) + STATUS_HEIGHT + revisions_height(sheet);
	sheet->block = sheet->column.y1;
}

static void add_rule(struct block *b, enum pen pen, double x0, double y0, double x1, double y1)
{
	list_stroke(b->sheet->list, LAYER_SHEET, pen, NULL,
	            paper_path_segment(b->draft->arena, paper_at(x0, y0), paper_at(x1, y1)));
}

static void add_text(struct block *b, enum text_role role, double x, double y, const char *text)
{
	list_text(b->sheet->list, LAYER_SHEET, role, NULL, paper_at(x, y), ALIGN_START, text);
}

/* Gives what it adds to the height of its cell. */
static double add_fitted(struct block *b, enum text_role role, double x, double y,
                         struct fitted fitted)
{
	for (size_t i = 0; i < fitted.lines.count; i++)
		list_text_at(b->sheet->list, LAYER_SHEET, role, NULL,
		             paper_at(x, y + (double)i * text_pitch(fitted.cap)),
		             (struct text_place){.cap = fitted.cap, .align = ALIGN_START},
		             fitted.lines.lines[i]);
	return more_height(fitted);
}

static double table_cap(const struct block *b)
{
	return b->draft->style->texts[TEXT_TABLE].cap;
}

static void draw_revision_row(struct block *b, enum text_role role, const char *mark,
                              const char *date, const char *note)
{
	double base = b->y + REVISION_ROW / 2 + table_cap(b) / 2;
	add_text(b, role, b->x0 + INSET, base, mark);
	add_text(b, role, date_left(b->sheet), base, date);
	double left = note_left(b->sheet);
	list_paragraph(b->sheet->list, LAYER_SHEET, role, paper_at(left, base - table_cap(b)),
	               b->x1 - INSET - left, note);
	b->y += revision_height(b->sheet, note);
	add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
}

/* The revision that the clouds are of has their triangle. */
static const char *revision_mark(const struct draft *draft, const struct plan_revision *revision)
{
	const struct comparison *comparison = draft->comparison;
	if (comparison == NULL || comparison->revision != revision)
		return revision->mark;
	return draft_text(draft, "changes.mark", {"mark", revision->mark});
}

/* The latest revisions in time order; older ones are in the set's history. */
static void draw_revisions(struct block *b)
{
	const struct plan *plan = b->draft->site->plan;
	size_t shown = revisions_shown(b->sheet);
	add_rule(b, PEN_RULE_HEAVY, b->x0, b->y, b->x1, b->y);
	draw_revision_row(b, TEXT_TABLE_HEAD, draft_word(b->draft, "block.revision"),
	                  draft_word(b->draft, "block.date"), draft_word(b->draft, "block.change"));
	for (size_t i = plan->revision_count - shown; i < plan->revision_count; i++)
		draw_revision_row(b, TEXT_TABLE, revision_mark(b->draft, &plan->revisions[i]),
		                  draft_date(b->draft, plan->revisions[i].date),
		                  or_blank(plan->revisions[i].note));
}

/* Title and site of the floor, then the title of this sheet. */
static void draw_names(struct block *b)
{
	struct names names = names_of(b->sheet);
	double x = b->x0 + INSET;
	add_rule(b, PEN_RULE_HEAVY, b->x0, b->y, b->x1, b->y);
	b->y += add_fitted(b, TEXT_STRONG, x, b->y + 5.6, names.floor);
	b->y += add_fitted(b, TEXT_TABLE, x, b->y + 10.6, names.site);
	b->y += NAME_HEIGHT;
	add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
	b->y += add_fitted(b, TEXT_TITLE, x, b->y + TITLE_HEIGHT / 2 + 3.2, names.sheet);
	b->y += TITLE_HEIGHT;
}

/* Gives the height of its cell. */
static double draw_fact(struct block *b, struct fact fact, double x0, double x1)
{
	double base = b->y + ROW / 2 + table_cap(b) / 2;
	add_text(b, TEXT_TABLE, x0 + FACT_INSET, base, draft_word(b->draft, fact.key));
	return ROW + add_fitted(b, TEXT_TABLE_HEAD, value_left(b->sheet, fact, x0), base,
	                        fit_fact(b->sheet, fact, x0, x1));
}

static void draw_fact_row(struct block *b, const struct fact row[2])
{
	double middle = (b->x0 + b->x1) / 2;
	add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
	if (is_shared(b->sheet, row)) {
		draw_fact(b, row[0], b->x0, middle);
		draw_fact(b, row[1], middle, b->x1);
		add_rule(b, PEN_RULE, middle, b->y, middle, b->y + ROW);
		b->y += ROW;
		return;
	}
	b->y += draw_fact(b, row[0], b->x0, b->x1);
	add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
	b->y += draw_fact(b, row[1], b->x0, b->x1);
}

static void draw_facts(struct block *b)
{
	struct fact facts[FACT_ROWS][2];
	list_facts(b->sheet, facts);
	for (int i = 0; i < FACT_ROWS; i++)
		draw_fact_row(b, facts[i]);
}

static void draw_status(struct block *b)
{
	bool stopped = findings_is_stopped(b->draft->findings);
	const char *text = draft_word(b->draft, stopped ? "status.proposed" : "status.proposal");
	add_rule(b, PEN_RULE_HEAVY, b->x0, b->y, b->x1, b->y);
	enum text_role role = stopped ? TEXT_WARNING : TEXT_STRONG;
	double cap = stopped ? STATUS_CAP : b->draft->style->texts[role].cap;
	double wide = list_text_width(b->sheet->list, role, text) * cap /
	              b->draft->style->texts[role].cap;
	cap *= fmin(1, (b->x1 - b->x0 - INSET) / wide);
	list_text_at(b->sheet->list, LAYER_SHEET, role, NULL,
	             paper_at((b->x0 + b->x1) / 2, b->y + STATUS_HEIGHT / 2 + cap / 2),
	             (struct text_place){.cap = cap, .align = ALIGN_MIDDLE}, text);
	b->y += STATUS_HEIGHT;
}

void title_block_draw(struct sheet *sheet)
{
	struct block b = {sheet, sheet->draft, sheet->column.x0, sheet->column.x1, sheet->block};
	draw_revisions(&b);
	draw_names(&b);
	draw_facts(&b);
	draw_status(&b);
}
