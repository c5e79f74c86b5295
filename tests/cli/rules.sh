#!/bin/sh
# The tables of rules against their page and their sources; and, for each rule, a plan just
# inside its limit and one just outside it.
set -eu
cd "$(dirname "$0")/../.."
failed=0
ok() {
	echo "ok - $1"
}
not_ok() {
	echo "not ok - $1"
	failed=1
}

# ---- the page says what the tables say ----

tables=$(mktemp) page=$(mktemp)
trap 'rm -f "$tables" "$page"' EXIT
awk -f tests/support/rules_doc.awk src/rules/us.rules src/rules/uk.rules >"$tables"
sed '1,/^<!-- tables -->$/d' docs/rules.md >"$page"
if cmp -s "$tables" "$page"; then
	ok "docs/rules.md holds the tables"
else
	diff "$page" "$tables" | sed 's/^/# /' || true
	not_ok "docs/rules.md holds the tables"
fi

# ---- every id that a table cites is in docs/sources.md ----

for id in $(sed -n 's/^\tsource //p' src/rules/*.rules | grep -o '[REPD]-[0-9A-Z][0-9A-Za-z]*' |
	sort -u); do
	if grep -q "^| $id |" docs/sources.md; then
		ok "$id has its source"
	else
		not_ok "$id has its source"
	fi
done

# ---- two plans a rule ----

lines=$(mktemp)
trap 'rm -f "$tables" "$page" "$lines"' EXIT

# Runs `check` on plan $1; its status goes to $status.
check() {
	status=0
	"$JURYSTICK" check "$1" >"$lines" 2>&1 || status=$?
}

# The weight that the table gives rule $1.
weight_of() {
	sed -n "/^rule $1 /,/^\$/s/^\tweight //p" src/rules/us.rules
}

for rule in $(sed -n 's/^rule \([^ ]*\) .*/\1/p' src/rules/us.rules); do
	# Answers are not read yet: tests/unit/test_findings.c raises this one.
	[ "$rule" = answer-idle ] && continue
	check "tests/rules/$rule.inside.xml"
	if [ "$status" -le 1 ] && ! grep -qF "[$rule]" "$lines"; then
		ok "$rule is not raised inside its limit"
	else
		sed 's/^/# /' "$lines"
		not_ok "$rule is not raised inside its limit (exit $status)"
	fi
	check "tests/rules/$rule.outside.xml"
	weight=$(weight_of "$rule")
	if grep -q "^tests/rules/$rule.outside.xml:[0-9]*: $weight: .*\[$rule\]\$" "$lines" &&
		{ [ "$weight" = note ] || [ "$status" -eq 1 ]; }; then
		ok "$rule is raised outside its limit"
	else
		sed 's/^/# /' "$lines"
		not_ok "$rule is raised outside its limit (exit $status)"
	fi
done

check tests/rules/plain.xml
if [ "$status" -eq 0 ] && [ ! -s "$lines" ]; then
	ok "a plain small room raises nothing"
else
	sed 's/^/# /' "$lines"
	not_ok "a plain small room raises nothing (exit $status)"
fi
exit "$failed"
