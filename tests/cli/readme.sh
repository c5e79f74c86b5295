# README.md keeps its word: its plan is drawn, its commands are there, so are its targets.
. tests/support/tap.sh

awk '/^```xml$/ { inside = 1; next } /^```$/ { inside = 0 } inside' README.md >"$TMPDIR/plan.xml"
check 'the plan is drawn' "$JURYSTICK" draw "$TMPDIR/plan.xml" -o "$TMPDIR/sheets" --as svg
check 'as sheets' [ -n "$(ls "$TMPDIR/sheets")" ]

for command in $(sed -n 's/^| `jurystick \([a-z]*\) .*/\1/p' README.md); do
	check "jurystick $command" "$JURYSTICK" help $([ "$command" = help ] || echo "$command")
done
for plan in $(grep -o 'demo-plans/[^ ]*\.xml' README.md); do
	check "$plan is there" [ -f "$plan" ]
done
for target in $(cat README.md DEVELOPERS.md | grep -o 'make [a-z][a-z-]*`' | tr -d '`' | cut -c 6- |
	sort -u); do
	check "make $target is in the Makefile" grep -q "^\.PHONY:.* $target\( \|\$\)" Makefile
done
