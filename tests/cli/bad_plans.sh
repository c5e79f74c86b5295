#!/bin/sh
# Broken plans: each NAME.xml of tests/bad-plans/ is refused with just the lines of NAME.lines
# (what follows `FILE:`), exit 2, nothing on standard output. GOLDEN_UPDATE=1 accepts what it
# sees: read the difference.
. tests/support/tap.sh

# refuses NAME: the errors of a plan, all of them and no other.
refuses() {
	plan=tests/bad-plans/$1.xml lines=tests/bad-plans/$1.lines
	exits 2 timeout 10 "$JURYSTICK" check "$plan" || return
	[ ! -s "$TMPDIR/out" ] || { echo "standard output is not empty"; return 1; }
	sed "s|^$plan:||" "$TMPDIR/err" >"$TMPDIR/lines"
	[ -z "${GOLDEN_UPDATE:-}" ] || cp "$TMPDIR/lines" "$lines"
	diff "$lines" "$TMPDIR/lines"
}

# draws_nothing NAME: no output, not even a part of one, from a plan with an error.
draws_nothing() {
	mkdir "$TMPDIR/drawn"
	exits 2 "$JURYSTICK" draw "tests/bad-plans/$1.xml" -o "$TMPDIR/drawn" || return
	[ -z "$(ls "$TMPDIR/drawn")" ]
}

for plan in tests/bad-plans/*.xml; do
	name=${plan##*/}
	check "${name%.xml}" refuses "${name%.xml}"
done
check "at least ninety broken plans" [ "$(ls tests/bad-plans/*.xml | wc -l)" -ge 90 ]
check "twelve faults on twelve lines" [ "$(cut -d: -f1 tests/bad-plans/twelve.lines | sort -u | wc -l)" = 12 ]
check "and no thirteenth" [ "$(wc -l <tests/bad-plans/twelve.lines)" -eq 12 ]
check "a broken plan draws nothing" draws_nothing twelve
