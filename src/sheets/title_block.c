#include "sheets/title_block.h"

#include <math.h>

#include "sheets/drawing_scale.h"

/* Paper mm, own design. */
static const double INSET = 4, ROW = 5.4, NAME_HEIGHT = 13, TITLE_HEIGHT = 11.5, STATUS_HEIGHT = 8;
static const double REVISION_ROW = 4.6, REVISION_MARK = 10, REVISION_DATE = 24;
enum { FACT_ROWS = 6, REVISIONS_SHOWN = 3 };

struct block {
	struct sheet *sheet;
	const struct draft *draft;
	double x0, x1, y; /* y: the next rule */
};

static double facts_height(void)
{
	return FACT_ROWS * ROW;
}

static size_t revisions_shown(const struct sheet *sheet)
{
	size_t count = sheet->draft->site->plan->revision_count;
	return count < REVISIONS_SHOWN ? count : REVISIONS_SHOWN;
}

static double revisions_height(const struct sheet *sheet)
{
	return (double)(revisions_shown(sheet) + 1) * REVISION_ROW;
}

void title_block_reserve(struct sheet *sheet)
{
	sheet->column.y1 -= NAME_HEIGHT + TITLE_HEIGHT + facts_height() + STATUS_HEIGHT +
	                    revisions_height(sheet);
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

/* Text of a role, smaller where it would not fit `width`. */
static void add_fitted(struct block *b, enum text_role role, double x, double y, double width,
                       const char *text)
{
	double natural = list_text_width(b->sheet->list, role, text);
	double cap = b->draft->style->texts[role].cap;
	double least = b->draft->style->texts[TEXT_TABLE].cap;
	if (natural > width)
		cap = fmax(least, cap * width / natural);
	list_text_at(b->sheet->list, LAYER_SHEET, role, NULL, paper_at(x, y),
	             (struct text_place){.cap = cap, .align = ALIGN_START}, text);
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
	add_text(b, role, b->x0 + INSET + REVISION_MARK, base, date);
	double left = b->x0 + INSET + REVISION_MARK + REVISION_DATE;
	add_fitted(b, role, left, base, b->x1 - INSET - left, note);
	b->y += REVISION_ROW;
	add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
}

static const char *or_blank(const char *text)
{
	return text ? text : "";
}

/* What the plan says of the job; all blank where it says nothing. */
static struct plan_job job_of(const struct block *b)
{
	const struct plan_job *job = b->draft->site->plan->job;
	return job ? *job : (struct plan_job){0};
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
		draw_revision_row(b, TEXT_TABLE, plan->revisions[i].mark,
		                  draft_date(b->draft, plan->revisions[i].date),
		                  or_blank(plan->revisions[i].note));
}

/* Title and site of the floor, then the title of this sheet. */
static void draw_names(struct block *b)
{
	const struct plan *plan = b->draft->site->plan;
	double width = b->x1 - b->x0 - 2 * INSET, x = b->x0 + INSET;
	add_rule(b, PEN_RULE_HEAVY, b->x0, b->y, b->x1, b->y);
	add_fitted(b, TEXT_STRONG, x, b->y + 5.6, width, or_blank(plan->title));
	add_fitted(b, TEXT_TABLE, x, b->y + 10.6, width, or_blank(job_of(b).site));
	b->y += NAME_HEIGHT;
	add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
	add_fitted(b, TEXT_TITLE, x, b->y + TITLE_HEIGHT / 2 + 3.2, width, b->sheet->title);
	b->y += TITLE_HEIGHT;
}

struct fact {
	const char *key, *value;
};

static void draw_fact(struct block *b, struct fact fact, double x0, double x1)
{
	double base = b->y + ROW / 2 + table_cap(b) / 2;
	const char *name = draft_word(b->draft, fact.key);
	add_text(b, TEXT_TABLE, x0 + INSET / 2, base, name);
	double left = x0 + INSET / 2 + list_text_width(b->sheet->list, TEXT_TABLE, name) + 2;
	add_fitted(b, TEXT_TABLE_HEAD, left, base, x1 - left - 1, or_blank(fact.value));
}

static const char *latest_revision(const struct plan *plan)
{
	return plan->revision_count ? plan->revisions[plan->revision_count - 1].mark : "";
}

static void draw_facts(struct block *b)
{
	const struct draft *draft = b->draft;
	const struct plan *plan = draft->site->plan;
	struct plan_job job = job_of(b);
	const char *number = arena_printf(draft->arena, "%zu / %zu", b->sheet->number, b->sheet->count);
	const struct fact facts[FACT_ROWS][2] = {
		{{"block.prepared-for", job.prepared_for}, {"block.prepared-by", job.prepared_by}},
		{{"block.drawn-by", job.drawn_by}, {"block.checked-by", job.checked_by}},
		{{"block.job", job.number}, {"block.date", draft_date(draft, job.date)}},
		{{"block.scale", drawing_scale_text(draft->arena, draft->site->inches, b->sheet->scale)},
	         {"block.paper", draft->paper->label}},
		{{"block.sheet", number}, {"block.revision", latest_revision(plan)}},
		{{"block.approved", ""}, {"block.document", draft_word(draft, "block.shop-drawing")}},
	};
	double middle = (b->x0 + b->x1) / 2, top = b->y;
	for (int i = 0; i < FACT_ROWS; i++) {
		add_rule(b, PEN_RULE, b->x0, b->y, b->x1, b->y);
		draw_fact(b, facts[i][0], b->x0 + INSET / 2, middle);
		draw_fact(b, facts[i][1], middle, b->x1);
		b->y += ROW;
	}
	add_rule(b, PEN_RULE, middle, top, middle, b->y);
}

static void draw_status(struct block *b)
{
	bool stopped = findings_is_stopped(b->draft->findings);
	const char *text = draft_word(b->draft, stopped ? "status.proposed" : "status.proposal");
	add_rule(b, PEN_RULE_HEAVY, b->x0, b->y, b->x1, b->y);
	enum text_role role = stopped ? TEXT_WARNING : TEXT_STRONG;
	double cap = stopped ? 4 : b->draft->style->texts[role].cap;
	list_text_at(b->sheet->list, LAYER_SHEET, role, NULL,
	             paper_at((b->x0 + b->x1) / 2, b->y + STATUS_HEIGHT / 2 + cap / 2),
	             (struct text_place){.cap = cap, .align = ALIGN_MIDDLE}, text);
	b->y += STATUS_HEIGHT;
}

void title_block_draw(struct sheet *sheet)
{
	struct block b = {sheet, sheet->draft, sheet->column.x0, sheet->column.x1, sheet->column.y1};
	draw_revisions(&b);
	draw_names(&b);
	draw_facts(&b);
	draw_status(&b);
}
