#include "compare/change_text.h"

#include <string.h>

#include "count/decimal.h"
#include "units/number.h"

const char *change_kind_word(enum change_kind kind)
{
	static const struct {
		enum change_kind kind;
		const char *word;
	} words[] = {{CHANGE_ADDED, "added"},       {CHANGE_REMOVED, "removed"},
	             {CHANGE_MOVED, "moved"},       {CHANGE_WIDENED, "widened"},
	             {CHANGE_NARROWED, "narrowed"}, {CHANGE_RETYPED, "retyped"},
	             {CHANGE_ALTERED, "altered"}};
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (words[i].kind == kind)
			return words[i].word;
	return "";
}

const char *finding_fate_word(enum finding_fate fate)
{
	static const char *const words[] = {
		[FINDING_APPEARED] = "appeared",
		[FINDING_WENT] = "went",
		[FINDING_WAS_ANSWERED] = "answered",
		[FINDING_REOPENED] = "reopened",
		[FINDING_READS_OTHERWISE] = "reads-otherwise",
	};
	return words[fate];
}

static const char *word(struct arena *arena, const struct words *words, const char *area,
                        const char *name)
{
	return words_find(words, arena_printf(arena, "%s.%s", area, name));
}

/* ---- changes ---- */

static const char *kinds_of(struct arena *arena, const struct words *words,
                            const struct change *change)
{
	struct strbuf out = strbuf_in(arena);
	for (int i = 0; i < CHANGE_KINDS; i++) {
		enum change_kind kind = (enum change_kind)(1u << i);
		if (change->kinds & kind)
			strbuf_printf(&out, "%s%s", out.length > 0 ? ", " : "",
			              word(arena, words, "change.kind", change_kind_word(kind)));
	}
	if (change->id_was != NULL)
		strbuf_printf(&out, "%s%s", out.length > 0 ? ", " : "",
		              words_fill(arena, words, "change.kind.renumbered",
		                         {"was", change->id_was}));
	return out.length > 0 ? out.text : words_find(words, "change.kind.printed");
}

const char *change_text_what(struct arena *arena, const struct words *words,
                             const struct change *change)
{
	const char *element = word(arena, words, "change.element", change->element->name);
	const char *key = *change->id != '\0' ? "change.what" : "change.what-alone";
	return words_fill(arena, words, key, {"element", element}, {"id", change->id},
	                  {"kinds", kinds_of(arena, words, change)});
}

static const char *or_nothing(const struct words *words, const char *text)
{
	return text != NULL ? text : words_find(words, "change.nothing");
}

const char *change_text_edit(struct arena *arena, const struct words *words,
                             const struct edit *edit)
{
	const char *of = edit->of != NULL ? arena_printf(arena, "%s ", edit->of) : "";
	if (edit->what == NULL || (edit->before == NULL && edit->after == NULL)) {
		const char *kind = word(arena, words, "change.kind", change_kind_word(edit->kind));
		return arena_printf(arena, "%s%s", of, kind);
	}
	return words_fill(arena, words, "change.edit",
	                  {"what", arena_printf(arena, "%s%s", of, edit->what)},
	                  {"before", or_nothing(words, edit->before)},
	                  {"after", or_nothing(words, edit->after)});
}

const char *change_text_reason(struct arena *arena, const struct words *words,
                               const struct change *change)
{
	const char *reason = change->reason != NULL ? change->reason : "";
	if (change->found.day == 0)
		return reason;
	const char *on = arena_printf(arena, "%04d-%02d-%02d", change->found.year,
	                              change->found.month, change->found.day_of_month);
	return words_fill(arena, words, *reason != '\0' ? "change.reason" : "change.found",
	                  {"reason", reason}, {"on", on});
}

const char *change_text_where(const struct words *words, const struct change *change)
{
	return *change->where != '\0' ? change->where : words_find(words, "change.everywhere");
}

const char *change_text_finding(struct arena *arena, const struct words *words,
                                const struct finding_change *change)
{
	const struct finding *finding = change->finding;
	return words_fill(arena, words, "change.finding",
	                  {"fate",
	                   word(arena, words, "change.fate", finding_fate_word(change->fate))},
	                  {"weight",
	                   word(arena, words, "weight", rule_weight_word(finding->weight))},
	                  {"text", finding->text}, {"rule", finding->rule->name});
}

/* ---- quantities and money ---- */

const char *change_text_rate(struct arena *arena, const struct row_change *change)
{
	const char *before = change->before != NULL ? change->before->rate : "",
		   *after = change->after != NULL ? change->after->rate : "";
	if (*before != '\0' && *after != '\0' && strcmp(before, after) != 0)
		return arena_printf(arena, "%s; %s", before, after);
	return *after != '\0' ? after : before;
}

const char *change_text_amount(struct arena *arena, const struct row_change *change, double amount)
{
	return number_text(arena, amount, change->decimals);
}

const char *change_text_more(struct arena *arena, const struct row_change *change)
{
	const char *text = number_text(arena, change->amount_more, change->decimals);
	return change->amount_more > 0 ? arena_printf(arena, "+%s", text) : text;
}

const char *change_text_cents(struct arena *arena, const struct row_change *change, int64_t cents)
{
	return change->is_priced ? decimal_text(arena, cents) : "";
}

const char *change_text_cents_more(struct arena *arena, const struct row_change *change)
{
	int64_t more = change->cents_after - change->cents_before;
	const char *text = change_text_cents(arena, change, more);
	return change->is_priced && more > 0 ? arena_printf(arena, "+%s", text) : text;
}
