#!/bin/sh
# moved_floors.sh - E-T3: random floors counted, then moved, turned a quarter and turned by an odd
# angle, and counted again: the same rows, the same numbers of pieces, the same amounts as far as
# they are printed. Floors with curves are not turned oddly: their polygons have other corners
# then. Wings of tests/random/seeds too; with JURYSTICK_LONG a hundred of each kind.
set -eu
cd "$(dirname "$0")/../.."
build=${BUILD:-build}
program=${JURYSTICK:-build/jurystick}
draw=${RANDOM_FLOOR:-$build/tests/random/floor}
work=$(mktemp -d "${TMPDIR:-/tmp}/moved.XXXXXX")
trap 'rm -rf "$work"' EXIT

first=${JURYSTICK_SEED:-100}
rooms=24 wings=8
[ -z "${JURYSTICK_LONG:-}" ] || rooms=100 wings=100
odd_turn=53.13010235 # a 3-4-5 turn, degrees
least_odd=4          # floors of some turned so: else the odd turn is not tried at all

failed=0 compared=0 turned_down=0 odd=0

# count_floor NAME: draws nothing and counts nothing of a plan that is turned down.
count_floor() {
	"$program" count "$work/$1.xml" --as csv >"$work/$1.csv" 2>"$work/$1.err"
}

# compare KIND SEED POSE: against the floor as it lay.
compare() {
	"$draw" $1 "$2" $3 >"$work/moved.xml"
	compared=$((compared + 1))
	if count_floor moved; then
		awk -f tests/support/count_same.awk "$work/still.csv" "$work/moved.csv" >"$work/out"
	else
		cp "$work/moved.err" "$work/out"
	fi
	[ -s "$work/out" ] || return 0
	failed=$((failed + 1))
	echo "not ok - floor $1 $2 posed $3"
	head -n 5 "$work/out" | sed 's/^/# /'
}

try() { # KIND SEED
	"$draw" $1 "$2" >"$work/still.xml"
	count_floor still || {
		turned_down=$((turned_down + 1))
		return 0
	}
	compare "$1" "$2" '0 40 -17'
	compare "$1" "$2" '90 13 5'
	grep -q 'across=\|rise=' "$work/still.xml" && return 0
	odd=$((odd + 1))
	compare "$1" "$2" "$odd_turn -200 31"
}

for seed in $(seq "$first" $((first + rooms - 1))); do
	try '' "$seed"
done
for seed in $(seq "$first" $((first + wings - 1))) $(sed -n 's/^moved-wing //p' tests/random/seeds); do
	try wing "$seed"
done

# It must be able to fail: a floor is not the same as another.
"$draw" "$first" >"$work/still.xml"
"$draw" "$((first + 1))" >"$work/moved.xml"
count_floor still && count_floor moved
verdict=ok
[ -n "$(awk -f tests/support/count_same.awk "$work/still.csv" "$work/moved.csv")" ] ||
	verdict='not ok'
echo "$verdict - another floor is told from the first"
verdict=ok
[ $odd -ge $least_odd ] || verdict='not ok'
echo "$verdict - $odd floors turned by an odd angle"
verdict=ok
[ $failed = 0 ] || verdict='not ok'
echo "$verdict - $compared counts of moved floors, $turned_down floors turned down, $failed differ"
