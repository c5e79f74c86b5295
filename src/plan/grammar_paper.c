/* What is said about the work, not of the floor: job, sheets, answers, rates. */
#include "plan/grammar_table.h"

static const char *const DECISIONS[] = {"isolate", "carry", "hold", "proceed", "decline", NULL};
static const char *const PAPERS[] = {"letter", "tabloid", "ansi-c", "ansi-d", "arch-d", "a4",
                                     "a3",     "a2",      "a1",     "a0",     NULL};
static const char *const LANGUAGES[] = {"en", "es", NULL};
static const char *const RATE_WORDS[] = {"tile",    "membrane", "strip",   "patch", "primer",
                                         "mortar",  "grout",    "sealant", "rod",   "perimeter",
                                         "cutting", "labour",   NULL};
static const char *const RATE_UNITS[] = {"m2",  "sqft", "m",    "ft", "each",
                                         "bag", "box",  "hour", NULL};
static const char *const MARKUP_WORDS[] = {"material", "labour", "all", NULL};
/* ---- job, revision, sheets ---- */

static const struct grammar_attribute JOB_ATTRIBUTES[] = {
	{"number", GRAMMAR_TEXT, IN(job, number), .meaning = "job number"},
	{"site", GRAMMAR_TEXT, IN(job, site), .meaning = "where the floor is"},
	{"prepared-for", GRAMMAR_TEXT, IN(job, prepared_for),
         .meaning = "who receives the drawings"},
	{"prepared-by", GRAMMAR_TEXT, IN(job, prepared_by), .meaning = "the tile contractor"},
	{"drawn-by", GRAMMAR_TEXT, IN(job, drawn_by), .meaning = "who drew"},
	{"checked-by", GRAMMAR_TEXT, IN(job, checked_by), .meaning = "who checked"},
	{"date", GRAMMAR_DATE, IN(job, date), .meaning = "date of issue"},
	{"starts", GRAMMAR_DATE, IN(job, starts), .meaning = "day on which setting tile begins"},
};
const struct grammar_element grammar_job = {"job", HEAD(job), ROWS(JOB_ATTRIBUTES),
                                            .meaning = "what the title block says"};

static const struct grammar_attribute REVISION_ATTRIBUTES[] = {
	{"mark", GRAMMAR_TEXT, IN(revision, mark), .required = true, .meaning = "A, B, C"},
	{"date", GRAMMAR_DATE, IN(revision, date), .required = true,
         .meaning = "date of this issue"},
	{"note", GRAMMAR_TEXT, IN(revision, note), .meaning = "what changed"},
};
const struct grammar_element grammar_revision = {"revision", HEAD(revision),
                                                 ROWS(REVISION_ATTRIBUTES),
                                                 .meaning = "one issue of the drawings"};

static const struct grammar_attribute SHEETS_ATTRIBUTES[] = {
	{"paper", GRAMMAR_TEXT, IN(sheets, paper), .words = PAPERS,
         .meaning = "size of the sheets"},
	{"scale", GRAMMAR_TEXT, IN(sheets, scale),
         .meaning = "1:50 or 1/4in; default the largest that fits"},
	{"style", GRAMMAR_TEXT, IN(sheets, style), .meaning = "a shipped style"},
	{"words", GRAMMAR_TEXT, IN(sheets, words), .words = LANGUAGES,
         .meaning = "language of the sheets"},
};
const struct grammar_element grammar_sheets = {
	"sheets", HEAD(sheets), ROWS(SHEETS_ATTRIBUTES),
	.meaning = "defaults for drawing; the command line wins"};

/* ---- answers, rates ---- */

static const struct grammar_attribute ANSWER_ATTRIBUTES[] = {
	{"about", GRAMMAR_ABOUT, IN(answer, about), .required = true,
         .meaning = "id of the element"},
	{"decision", GRAMMAR_WORD, IN(answer, decision), .required = true, .words = DECISIONS,
         .meaning = "what was decided"},
	{"by", GRAMMAR_TEXT, IN(answer, by), .required = true, .meaning = "who decided"},
	{"on", GRAMMAR_DATE, IN(answer, on), .required = true, .meaning = "when"},
	{"rule", GRAMMAR_TEXT, IN(answer, rule),
         .meaning = "which finding, where the element has several"},
	{"ref", GRAMMAR_TEXT, IN(answer, ref),
         .meaning = "letter or drawing it rests on; isolate on a stepped crack must state it"},
	{"note", GRAMMAR_TEXT, IN(answer, note), .meaning = "anything to print"},
};
const struct grammar_element grammar_answer = {
	"answer", HEAD(answer), ROWS(ANSWER_ATTRIBUTES),
	.meaning = "what someone with authority decided about a finding"};

static const struct grammar_attribute RATE_ATTRIBUTES[] = {
	{"of", GRAMMAR_SUBJECT, IN(rate, of), .required = true, .words = RATE_WORDS,
         .meaning = "what it is for: a word or an id; one rate of each"},
	{"each", GRAMMAR_MONEY, IN(rate, each), .required = true, .meaning = "price of one"},
	{"per", GRAMMAR_WORD, IN(rate, per), .required = true, .words = RATE_UNITS,
         .meaning = "one of what"},
	{"hours", GRAMMAR_DECIMAL, IN(rate, hours), .range = GRAMMAR_POSITIVE,
         .meaning = "of labour for one"},
};
static const struct grammar_element RATE = {"rate", HEAD(rate), ROWS(RATE_ATTRIBUTES),
                                            .meaning = "one price"};

static const struct grammar_attribute MARKUP_ATTRIBUTES[] = {
	{"of", GRAMMAR_WORD, IN(markup, of), .required = true, .words = MARKUP_WORDS,
         .meaning = "what it is added to"},
	{"share", GRAMMAR_SHARE, IN(markup, share), .required = true, .range = GRAMMAR_PART,
         .meaning = "of that"},
	{"name", GRAMMAR_TEXT, IN(markup, name), .required = true, .meaning = "as it is printed"},
};
static const struct grammar_element MARKUP = {"markup", HEAD(markup), ROWS(MARKUP_ATTRIBUTES),
                                              .meaning = "an addition"};

static const struct grammar_attribute RATES_ATTRIBUTES[] = {
	{"currency", GRAMMAR_TEXT, IN(rates, currency), .required = true,
         .meaning = "USD, GBP, EUR"},
};
static const struct grammar_child RATES_CHILDREN[] = {
	{&RATE, GRAMMAR_MANY, IN(rates, rates), IN(rates, rate_count), false},
	{&MARKUP, GRAMMAR_MANY, IN(rates, markups), IN(rates, markup_count), false},
};
const struct grammar_element grammar_rates = {"rates", HEAD(rates), ROWS(RATES_ATTRIBUTES),
                                              ROWS(RATES_CHILDREN), .meaning = "prices"};
