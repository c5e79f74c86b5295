#!/bin/sh
# oracle.sh - records recomputed by a program that shares nothing with the one under test.
# First the checker proves itself on records made by hand: it accepts the sound ones, and of
# each broken one it fails the named checks and no other. Then every demo plan and every
# small room is recorded and recomputed.
set -eu
cd "$(dirname "$0")/../.."
recount=${ORACLE:-${BUILD:-build}/tests/oracle/recount}
program=${JURYSTICK:-build/jurystick}
work=$(mktemp -d "${TMPDIR:-/tmp}/oracle.XXXXXX")
trap 'rm -rf "$work"' EXIT
samples=tests/oracle/samples

number=0
result() { # STATUS TEXT
	number=$((number + 1))
	if [ "$1" = 0 ]; then echo "ok $number - $2"; else echo "not ok $number - $2"; fi
}

for record in "$samples"/*.record.xml; do
	base=${record%.record.xml}
	status=0
	"$recount" "$base.plan.xml" "$record" --penalty 150 >"$work/out" || status=$?
	result $status "sound: ${base##*/}: $(tail -n 1 "$work/out")"
	grep '^FAIL' "$work/out" || true
done

grep -v '^#' "$samples/broken.txt" >"$work/broken"
while IFS='|' read -r base change expected; do
	base=$(echo $base) expected=$(printf '%s\n' $expected | sort -u | tr '\n' ' ')
	printf '%s\n' "$change" | sed 's/^ *//; s/ *$//' >"$work/change"
	sed -f "$work/change" "$samples/$base.record.xml" >"$work/broken.xml"
	status=0
	"$recount" "$samples/$base.plan.xml" "$work/broken.xml" --penalty 150 >"$work/out" || status=$?
	found=$(sed -n 's/^FAIL \([^:]*\):.*/\1/p' "$work/out" | sort -u | tr '\n' ' ')
	wrong=0
	[ "$found" = "$expected" ] && [ "$status" = 1 ] || wrong=1
	result $wrong "broken: $base: $(cat "$work/change") -> $found"
	[ $wrong = 0 ] || echo "# expected: $expected"
done <"$work/broken"

for plan in tests/rooms/*.xml demo-plans/*.xml; do
	status=0
	if "$program" record "$plan" -o "$work/record.xml" >"$work/out" 2>&1; then
		"$recount" "$plan" "$work/record.xml" >"$work/out" || status=$?
	else
		status=$?
	fi
	result $status "recorded: ${plan#tests/}: $(tail -n 1 "$work/out" | sed 's/^[^:]*: //')"
	[ $status = 0 ] || grep -v '^ok' "$work/out" | sed 's/^/# /'
done
echo "1..$number"
