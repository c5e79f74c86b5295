#include "findings/finding.h"

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

void findings_print(const struct findings *findings, const char *file, struct strbuf *out)
{
	for (size_t i = 0; i < findings->count; i++) {
		const struct finding *finding = &findings->items[i];
		strbuf_printf(out, "%s:%d: %s: %s [%s]\n", file, finding->line,
		              rule_weight_word(finding->weight), finding->text,
		              finding->rule->name);
	}
}
