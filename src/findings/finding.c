#include "findings/finding.h"

#include <string.h>

bool findings_is_open(const struct findings *findings)
{
	for (size_t i = 0; i < findings->count; i++) {
		const struct finding *finding = &findings->items[i];
		if (finding->state == FINDING_OPEN && finding->weight != RULE_NOTE)
			return true;
	}
	return false;
}

bool findings_is_stopped(const struct findings *findings)
{
	for (size_t i = 0; i < findings->count; i++) {
		const struct finding *finding = &findings->items[i];
		if (finding->state == FINDING_OPEN && finding->weight == RULE_STOP)
			return true;
	}
	return false;
}

bool findings_fail_reading(const struct findings *findings, const char *id)
{
	static const char *const rules[] = {"slab-damp", "slab-sealed", "slab-uneven"};
	for (size_t i = 0; i < findings->count; i++)
		for (size_t k = 0; k < sizeof rules / sizeof rules[0]; k++)
			if (strcmp(findings->items[i].about, id) == 0 &&
			    strcmp(findings->items[i].rule->name, rules[k]) == 0)
				return true;
	return false;
}

void findings_print(const struct findings *findings, const char *file, struct strbuf *out)
{
	for (size_t i = 0; i < findings->count; i++) {
		const struct finding *finding = &findings->items[i];
		strbuf_printf(out, "%s:%d: %s: %s [%s]\n", file, finding->line,
		              rule_weight_word(finding->weight), finding->text,
		              finding->rule->name);
	}
}
