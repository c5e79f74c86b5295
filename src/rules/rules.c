#include "rules/rules.h"

#include <string.h>

#include "base/array.h"
#include "base/embedded.h"
#include "rules/lines.h"
#include "rules/value.h"
#include "units/number.h"

struct figure_entry {
	double value;
	const char *use, *source;
	int line; /* 0: not given yet */
};

struct rule_entry {
	struct rule rule;
	const char *weight, *limit_figure;
	int line;
};

struct rules {
	const char *name, *title;
	struct figure_entry figures[FIGURE_COUNT];
	ARRAY_OF(struct rule_entry) entries; /* in the table's order */
	const struct rule *by_id[RULE_COUNT];
};

struct figure_kind {
	const char *name;
	enum value_kind kind;
};

static const struct figure_kind figure_kinds[FIGURE_COUNT] = {
#define FIGURE(id, name, kind) {name, VALUE_##kind},
	FIGURES(FIGURE)
#undef FIGURE
};

static const char *const rule_names[RULE_COUNT] = {
#define RULE(id, name) name,
	RULE_NAMES(RULE)
#undef RULE
};

static const char *const weights[] = {"note", "ask", "stop"};
static const char *const sides[] = {"when", "over", "from", "under"};

/* Index of `word` in a list; -1 where it is not. */
static int index_of(const char *word, const char *const *list, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (strcmp(word, list[i]) == 0)
			return (int)i;
	return -1;
}

/* ---- reading ---- */

/* What the lines that are set in speak of. */
struct reading {
	struct rules *rules;
	struct diag_list *diags;
	struct lines lines;
	struct figure_entry *figure;
	struct rule_entry *rule;
	bool is_table;
	bool inches;
	bool is_lost; /* below a heading that was not understood */
};

static int figure_named(const char *name)
{
	for (int i = 0; i < FIGURE_COUNT; i++)
		if (strcmp(name, figure_kinds[i].name) == 0)
			return i;
	return -1;
}

static void read_figure(struct reading *r, char *text)
{
	const char *name = lines_word(&text);
	const char *equals = lines_word(&text);
	int line = r->lines.number, id = figure_named(name);
	struct value value = {0};
	if (id < 0) {
		diag_error(r->diags, line, "no figure is called `%s`", name);
		r->is_lost = true;
		return;
	}
	r->figure = &r->rules->figures[id];
	if (r->figure->line != 0)
		diag_error(r->diags, line, "figure `%s` is there already, on line %d", name,
		           r->figure->line);
	if (strcmp(equals, "=") != 0 || !value_parse_either(text, r->inches, &value))
		diag_error(r->diags, line, "expected `figure %s = VALUE UNIT`", name);
	else if (value.kind != figure_kinds[id].kind)
		diag_error(r->diags, line, "figure `%s` is %s, not %s", name,
		           value_kind_word(figure_kinds[id].kind), value_kind_word(value.kind));
	r->figure->value = value.number;
	r->figure->line = line;
}

/* The limit of a rule: a value, or `figure NAME`. */
static void read_limit(struct reading *r, struct rule_entry *entry, char *text)
{
	struct value value = {0};
	char *rest = text;
	if (strncmp(text, "figure ", 7) == 0) {
		lines_word(&rest);
		entry->limit_figure = lines_word(&rest);
		return;
	}
	if (!value_parse_either(text, r->inches, &value))
		diag_error(r->diags, r->lines.number, "rule `%s`: `%s` is no limit",
		           entry->rule.name, text);
	entry->rule.limit = value.number;
	entry->rule.unit = value_unit_word(&value);
}

static void read_rule(struct reading *r, char *text)
{
	const char *name = lines_word(&text);
	int line = r->lines.number;
	int side = index_of(lines_word(&text), sides, sizeof sides / sizeof sides[0]);
	if (index_of(name, rule_names, RULE_COUNT) < 0)
		diag_error(r->diags, line, "no rule is called `%s`", name);
	for (size_t i = 0; i < r->rules->entries.count; i++)
		if (strcmp(r->rules->entries.items[i].rule.name, name) == 0)
			diag_error(r->diags, line, "rule `%s` is there already, on line %d", name,
			           r->rules->entries.items[i].line);
	if (side < 0)
		diag_error(r->diags, line, "expected `rule %s when`, `over`, `from` or `under`",
		           name);
	struct rule_entry *entry = array_push(r->lines.arena, &r->rules->entries);
	entry->line = line;
	entry->rule = (struct rule){.name = name, .unit = "none"};
	entry->rule.side = side < 0 ? RULE_WHEN : (enum rule_side)side;
	if (side > RULE_WHEN)
		read_limit(r, entry, text);
	else if (*text != '\0')
		diag_error(r->diags, line,
		           "rule `%s` has no limit: nothing is expected after `when`", name);
	r->rule = entry;
}

static void refuse_heading(struct reading *r, const char *word)
{
	diag_error(r->diags, r->lines.number, "`%s`: expected table, figure or rule", word);
	r->is_lost = true;
}

static void read_heading(struct reading *r)
{
	char *text = r->lines.text;
	const char *word = lines_word(&text);
	r->figure = NULL;
	r->rule = NULL;
	r->is_table = strcmp(word, "table") == 0;
	r->is_lost = false;
	if (strcmp(word, "figure") == 0)
		read_figure(r, text);
	else if (strcmp(word, "rule") == 0)
		read_rule(r, text);
	else if (!r->is_table)
		refuse_heading(r, word);
	else if (strcmp(text, r->rules->name) != 0)
		diag_error(r->diags, r->lines.number, "expected `table %s`", r->rules->name);
}

/* Where the text of a line that is set in goes; NULL: nowhere. */
static const char **place_of(struct reading *r, const char *key)
{
	const struct {
		const char *key;
		const char **place;
	} places[] = {
		{"title", r->is_table ? &r->rules->title : NULL},
		{"use", r->figure != NULL ? &r->figure->use : NULL},
		{"source", r->figure != NULL ? &r->figure->source : NULL},
		{"quantity", r->rule != NULL ? &r->rule->rule.quantity : NULL},
		{"weight", r->rule != NULL ? &r->rule->weight : NULL},
		{"who", r->rule != NULL ? &r->rule->rule.who : NULL},
		{"source", r->rule != NULL ? &r->rule->rule.source : NULL},
		{"message", r->rule != NULL ? &r->rule->rule.message : NULL},
	};
	for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
		if (places[i].place != NULL && strcmp(places[i].key, key) == 0)
			return places[i].place;
	return NULL;
}

static void read_detail(struct reading *r)
{
	char *text = r->lines.text;
	const char *key = lines_word(&text);
	const char **place = place_of(r, key);
	if (r->is_lost)
		return;
	if (place == NULL)
		diag_error(r->diags, r->lines.number, "`%s` does not belong here", key);
	else if (*text == '\0')
		diag_error(r->diags, r->lines.number, "`%s` is empty", key);
	else
		*place = text;
}

/* ---- completing ---- */

static void check_figures(const struct rules *rules, struct diag_list *diags)
{
	for (int i = 0; i < FIGURE_COUNT; i++) {
		const struct figure_entry *figure = &rules->figures[i];
		if (figure->line == 0)
			diag_error(diags, 0, "figure `%s` is missing", figure_kinds[i].name);
		else if (figure->use == NULL || figure->source == NULL)
			diag_error(diags, figure->line, "figure `%s` needs a use and a source",
			           figure_kinds[i].name);
	}
}

static void complete_limit(const struct rules *rules, struct rule_entry *entry,
                           struct diag_list *diags)
{
	int figure = figure_named(entry->limit_figure);
	if (figure < 0) {
		diag_error(diags, entry->line, "no figure is called `%s`", entry->limit_figure);
		return;
	}
	entry->rule.limit = rules->figures[figure].value;
	entry->rule.unit = value_unit_word(&(struct value){.kind = figure_kinds[figure].kind});
}

static void complete_rule(struct rules *rules, struct rule_entry *entry, struct diag_list *diags)
{
	struct rule *rule = &entry->rule;
	const char *weight = entry->weight != NULL ? entry->weight : "";
	int index = index_of(weight, weights, sizeof weights / sizeof weights[0]);
	if (index < 0)
		diag_error(diags, entry->line, "rule `%s`: weight is note, ask or stop",
		           rule->name);
	else
		rule->weight = (enum rule_weight)index;
	if (rule->quantity == NULL || rule->who == NULL || rule->source == NULL ||
	    rule->message == NULL)
		diag_error(diags, entry->line,
		           "rule `%s` needs a quantity, a who, a source and a message", rule->name);
	if (entry->limit_figure != NULL)
		complete_limit(rules, entry, diags);
	int id = index_of(rule->name, rule_names, RULE_COUNT);
	if (id >= 0)
		rules->by_id[id] = rule;
}

static void complete(struct rules *rules, struct diag_list *diags)
{
	check_figures(rules, diags);
	for (size_t i = 0; i < rules->entries.count; i++)
		complete_rule(rules, &rules->entries.items[i], diags);
	for (int i = 0; i < RULE_COUNT; i++)
		if (rules->by_id[i] == NULL)
			diag_error(diags, 0, "rule `%s` is missing", rule_names[i]);
	if (rules->title == NULL)
		diag_error(diags, 0, "expected `table %s` with its title", rules->name);
}

const struct rules *rules_parse(struct arena *arena, const char *name, bool inches,
                                const char *text, struct diag_list *diags)
{
	size_t faults = diags->diags.count;
	struct rules *rules = ARENA_NEW(arena, struct rules);
	struct reading reading = {.rules = rules,
	                          .diags = diags,
	                          .lines = lines_of(arena, text),
	                          .inches = inches};
	rules->name = arena_strdup(arena, name);
	while (lines_next(&reading.lines)) {
		if (reading.lines.is_set_in)
			read_detail(&reading);
		else
			read_heading(&reading);
	}
	complete(rules, diags);
	return diags->diags.count == faults ? rules : NULL;
}

const struct rules *rules_load(struct arena *arena, const char *name, bool inches,
                               struct diag_list *diags)
{
	const struct embedded *file = embedded_find(arena_printf(arena, "rules/%s.rules", name));
	if (file == NULL) {
		diag_error(diags, 0, "no table of rules is called `%s`", name);
		return NULL;
	}
	struct diag_list faults = diag_list_in(arena, file->name);
	const struct rules *rules =
		rules_parse(arena, name, inches, (const char *)file->data, &faults);
	lines_pass_faults(&faults, diags);
	return rules;
}

/* ---- asking ---- */

double rules_figure(const struct rules *rules, enum figure figure)
{
	return rules->figures[figure].value;
}

const char *rules_figure_use(const struct rules *rules, enum figure figure)
{
	return rules->figures[figure].use;
}

const char *rules_figure_source(const struct rules *rules, enum figure figure)
{
	return rules->figures[figure].source;
}

const struct rule *rules_rule(const struct rules *rules, enum rule_id id)
{
	return rules->by_id[id];
}

const struct rule *rules_find(const struct rules *rules, const char *name)
{
	int id = index_of(name, rule_names, RULE_COUNT);
	return id < 0 ? NULL : rules->by_id[id];
}

const struct rule *rules_at(const struct rules *rules, size_t index)
{
	return index < rules->entries.count ? &rules->entries.items[index].rule : NULL;
}

const char *rules_name(const struct rules *rules)
{
	return rules->name;
}

const char *rules_title(const struct rules *rules)
{
	return rules->title;
}

bool rule_is_raised_by(const struct rule *rule, double measured, double limit)
{
	switch (rule->side) {
	case RULE_OVER:
		return number_order(measured, limit) > 0;
	case RULE_FROM:
		return number_order(measured, limit) >= 0;
	case RULE_UNDER:
		return number_order(measured, limit) < 0;
	case RULE_WHEN:
		return false;
	}
	return false;
}

bool rule_is_raised(const struct rule *rule, double measured)
{
	return rule_is_raised_by(rule, measured, rule->limit);
}

const char *rule_weight_word(enum rule_weight weight)
{
	return weights[weight];
}
