# Random floors compared: each with itself is no change; one crack more or less is one line, and
# what it adds one way it takes away the other.
. tests/support/tap.sh
seeds='1 6 15 20 24'
[ -z "${JURYSTICK_LONG:-}" ] || seeds=$(seq 1 60)

same() {
	exits 0 "$JURYSTICK" compare "$1" "$1" -o "$TMPDIR/same" && [ ! -e "$TMPDIR/same" ] &&
		[ "$(cat "$TMPDIR/out")" = 'No change' ]
}

# Differences of quantities of the only line: differences BASE REVISED NAME SIGN.
differences() {
	"$JURYSTICK" compare "$1" "$2" -o "$TMPDIR/$3" --as csv >"$TMPDIR/$3.txt" || return
	[ "$(grep -c '^[1-9][0-9]* ' "$TMPDIR/$3.txt")" = 1 ] || return
	awk -F, -v sign="$4" '$2 == "quantity" && $1 == "1" { print $3, $4, $8, sign * $7 }' \
		"$TMPDIR/$3/changes.csv" | sort >"$TMPDIR/$3.list"
	[ -s "$TMPDIR/$3.list" ]
}

there_and_back() {
	awk '/<crack/ && !gone { skip = 1 } !skip { print } /<\/crack>/ && skip { skip = 0; gone = 1 }' \
		"$1" >"$TMPDIR/fewer.xml"
	differences "$TMPDIR/fewer.xml" "$1" there 1 &&
		differences "$1" "$TMPDIR/fewer.xml" back -1 &&
		diff "$TMPDIR/there.list" "$TMPDIR/back.list"
}

for seed in $seeds; do
	plan=$TMPDIR/$seed.xml
	"$RANDOM_FLOOR" "$seed" >"$plan"
	check "floor $seed against itself" same "$plan"
	check "floor $seed with a crack less" there_and_back "$plan"
done
