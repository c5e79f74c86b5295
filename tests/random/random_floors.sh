#!/bin/sh
# random_floors.sh - random floors recorded, and each record recomputed by the independent
# checker: rooms, wings of several, rooms with groups of cracks that branch, cross, close or run
# side by side; those of tests/random/seeds, or FLOORS of each from
# JURYSTICK_SEED on (with JURYSTICK_LONG 400 from a seed of its own). A floor that fails is kept
# in $BUILD/random/KIND-SEED.xml, and its kind and seed draw it again.
set -eu
cd "$(dirname "$0")/../.."
build=${BUILD:-build}
program=${JURYSTICK:-build/jurystick}
recount=${ORACLE:-$build/tests/oracle/recount}
draw=${RANDOM_FLOOR:-$build/tests/random/floor}
work=$(mktemp -d "${TMPDIR:-/tmp}/random.XXXXXX")
trap 'rm -rf "$work"' EXIT

# seeds_of KIND: those to draw.
seeds_of() {
	if [ -n "${JURYSTICK_SEED:-}${JURYSTICK_LONG:-}" ]; then
		first=${JURYSTICK_SEED:-20260402}
		seq "$first" $((first + ${FLOORS:-400} - 1))
	else
		sed -n "s/^$1 //p" tests/random/seeds
	fi
}
seconds=30        # a floor that takes longer hangs
least_compared=85 # of a hundred drawn: the rest is turned down as no floor
least_cases=30    # single comparisons a floor, on average

plan=$work/plan.xml record=$work/record.xml out=$work/out
library=
compared=0 refused=0 failed=0 cases=0

# complain FLOOR TEXT: keeps the plan and what was said of it.
complain() {
	failed=$((failed + 1))
	mkdir -p "$build/random"
	cp "$plan" "$build/random/$1.xml"
	echo "not ok - floor $1: $2; kept in $build/random/$1.xml"
	grep -v '^ok' "$out" | head -n 20 | sed 's/^/# /'
}

recompute() { # FLOOR
	status=0
	"$recount" "$plan" "$record" >"$out" 2>&1 || status=$?
	compared=$((compared + 1))
	library=$(sed -n 's/.* cases compared, with \(.*\)/\1/p' "$out" | tail -n 1)
	cases=$((cases + $(sed -n 's/.* failed, \([0-9]*\) cases compared.*/\1/p' "$out" | tail -n 1)))
	[ $status = 0 ] || complain "$1" "the checker disagrees (exit $status)"
}

try() { # FLOOR: its plan is drawn
	status=0
	timeout $seconds "$program" record "$plan" -o "$record" >"$out" 2>&1 || status=$?
	case $status in
	0) recompute "$1" ;;
	2) refused=$((refused + 1)) ;;
	124) complain "$1" "not recorded in $seconds seconds" ;;
	*) complain "$1" "record ends with exit $status" ;;
	esac
}

floors=0
for kind in room wing groups; do
	word=$kind
	[ $kind != room ] || word=
	for seed in $(seeds_of $kind); do
		floors=$((floors + 1))
		"$draw" $word "$seed" >"$plan"
		try "$kind-$seed"
	done
done

verdict=ok
[ $((compared * 100)) -ge $((floors * least_compared)) ] || verdict='not ok'
echo "$verdict - $floors floors: $compared compared, $refused turned down"
verdict=ok
[ $cases -ge $((compared * least_cases)) ] || verdict='not ok'
echo "$verdict - $cases single comparisons with ${library:-no library}"
verdict=ok
[ $failed = 0 ] || verdict='not ok'
echo "$verdict - $failed floors failed"
