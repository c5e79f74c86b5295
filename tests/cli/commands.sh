# Commands and options: what is wrong is said at once, with the exit code of its kind, and
# then nothing is written.
. tests/support/tap.sh
plan=tests/golden/nook.xml

check "help lists the commands" exits 0 "$JURYSTICK" help
check "help of a command" exits 0 "$JURYSTICK" help draw
check "help of none" fails_with 2 "frob: no such command" "$JURYSTICK" help frob
check "version" exits 0 "$JURYSTICK" --version
check "unknown command" fails_with 2 "frob: no such command" "$JURYSTICK" frob
check "no plan" fails_with 2 "file name missing" "$JURYSTICK" check
check "two plans" fails_with 2 "one word too many" "$JURYSTICK" check "$plan" "$plan"
check "plan that is not there" fails_with 2 "cannot be read" "$JURYSTICK" check "$TMPDIR/none.xml"
check "option of another command" fails_with 2 "option --as" "$JURYSTICK" check --as csv "$plan"
check "option without value" fails_with 2 "value missing" "$JURYSTICK" draw "$plan" --paper
check "option given twice" fails_with 2 "given twice" "$JURYSTICK" draw "$plan" -o a -o b
check "form that there is not" fails_with 2 "is no form of a sheet, expected svg, pdf, png or html" \
	"$JURYSTICK" draw "$plan" --as htm

# All faults of one line, and no file.
all_faults() {
	exits 2 "$JURYSTICK" draw "$plan" -o "$TMPDIR/faults" --paper b5 --scale 3x --style nope \
		--words xx --sheet changes,frob --as gif || return
	for fault in 'paper `b5`' 'scale `3x`' '"nope"' '`xx`' 'sheet changes: only compare draws it' \
		'sheet frob: no such sheet' '`gif`'; do
		says "$fault" || return
	done
	[ "$(wc -l <"$TMPDIR/err")" = 7 ] && [ ! -e "$TMPDIR/faults" ]
}
check "seven faults are said, no eighth, and nothing is written" all_faults
check "a scale that does not fit" fails_with 2 "does not fit" \
	"$JURYSTICK" draw "$plan" -o "$TMPDIR/faults" --scale 1:1
check "wrong form of a count" fails_with 2 "no form of a count" \
	"$JURYSTICK" count "$plan" --as pdf

from_input() {
	"$JURYSTICK" draw - -o "$TMPDIR/input" --sheet slab --as svg <"$plan" &&
		[ "$(ls "$TMPDIR/input")" = slab.svg ]
}
check "a plan from standard input, one sheet in one form" from_input
quiet() {
	exits 0 "$JURYSTICK" draw "$plan" -o "$TMPDIR/quiet" && [ ! -s "$TMPDIR/out" ] &&
		[ ! -s "$TMPDIR/err" ]
}
check "drawing says nothing where nobody watches" quiet

# Each paper holds each sheet, if need be on more of them.
for paper in letter tabloid ansi-c ansi-d arch-d a4 a3 a2 a1 a0; do
	check "$paper paper" "$JURYSTICK" draw demo-plans/lamplighter-bakery.xml \
		-o "$TMPDIR/$paper" --paper $paper --as svg
	check "$paper paper, metric" "$JURYSTICK" draw demo-plans/reading-room.xml \
		-o "$TMPDIR/$paper" --paper $paper --as svg
done
check "notes go on on a second sheet" [ -e "$TMPDIR/letter/install-shop-2.svg" ]
