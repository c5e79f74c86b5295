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

# ---- two plans a rule, under each table ----

lines=$(mktemp) plan=$(mktemp)
trap 'rm -f "$tables" "$page" "$lines" "$plan"' EXIT

# Runs `check` on plan $1 under table $2; its status goes to $status.
check() {
	sed "s/ rules=\"[a-z]*\"//; s/<floor /<floor rules=\"$2\" /" "$1" >"$plan"
	status=0
	"$JURYSTICK" check "$plan" >"$lines" 2>&1 || status=$?
}

# The weight that table $2 gives rule $1.
weight_of() {
	sed -n "/^rule $1 /,/^\$/s/^\tweight //p" "src/rules/$2.rules"
}

# The plan $2 (inside, outside) of rule $1: under table $3 its own, where the limits differ.
plan_of() {
	own=tests/rules/$3/$1.$2.xml
	if [ -e "$own" ]; then echo "$own"; else echo "tests/rules/$1.$2.xml"; fi
}

# Rule $1 under table $2.
two_plans() {
	check "$(plan_of "$1" inside "$2")" "$2"
	if [ "$status" -le 1 ] && ! grep -qF "[$1]" "$lines"; then
		ok "$1 is not raised inside its limit ($2)"
	else
		sed 's/^/# /' "$lines"
		not_ok "$1 is not raised inside its limit ($2, exit $status)"
	fi
	check "$(plan_of "$1" outside "$2")" "$2"
	weight=$(weight_of "$1" "$2")
	if grep -q "^$plan:[0-9]*: $weight: .*\[$1\]\$" "$lines" &&
		{ [ "$weight" = note ] || [ "$status" -eq 1 ]; }; then
		ok "$1 is raised outside its limit ($2)"
	else
		sed 's/^/# /' "$lines"
		not_ok "$1 is raised outside its limit ($2, exit $status)"
	fi
}

# What an answer decides: a crack that is held stays held, of a strip or a joint one goes on.
decision_on() {
	case $1 in crack-step | crack-moving) echo hold ;; *) echo proceed ;; esac
}

# Rule $1 under table $2, outside its limit, answered by two people: a note, and nothing is open.
answered() {
	check "$(plan_of "$1" outside "$2")" "$2"
	about=$("$JURYSTICK" record "$plan" |
		sed -n "s/.*<finding rule=\"$1\" .* about=\"\([^\"]*\)\".*/\1/p" | head -n 1)
	case $1 in # what is derived is answered at what it derives from
	soft-path-*) about=${about%%.*} ;;
	field-joint-stepped) about=L1 ;;
	esac
	for by in One Other; do
		answer="<answer about=\"$about\" rule=\"$1\" decision=\"$(decision_on "$1")\""
		answer="$answer by=\"$by\" on=\"2026-03-20\"/>"
		sed "s|</floor>|$answer</floor>|" "$plan" >"$lines" && cp "$lines" "$plan"
	done
	status=0
	"$JURYSTICK" check "$plan" >"$lines" 2>&1 || status=$?
	if [ "$status" -le 1 ] && grep -q ": note: .*[12][0-9][0-9][0-9]-[0-9-]* \[$1\]\$" "$lines" &&
		! grep -q ": \(ask\|stop\): .*\[$1\]\$" "$lines"; then
		ok "$1 is answered ($2)"
	else
		sed 's/^/# /' "$lines"
		not_ok "$1 is answered ($2, exit $status)"
	fi
}

for table in us uk; do
	for rule in $(sed -n 's/^rule \([^ ]*\) .*/\1/p' "src/rules/$table.rules"); do
		two_plans "$rule" "$table"
		[ "$(weight_of "$rule" "$table")" = note ] || answered "$rule" "$table"
	done
	check tests/rules/plain.xml "$table"
	if [ "$status" -eq 0 ] && [ ! -s "$lines" ]; then
		ok "a plain small room raises nothing ($table)"
	else
		sed 's/^/# /' "$lines"
		not_ok "a plain small room raises nothing ($table, exit $status)"
	fi
done
exit "$failed"
