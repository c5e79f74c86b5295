# The styles a user names, and the style files a user writes.
. tests/support/tap.sh

plan=tests/golden/pantry.xml
draw() {
	"$JURYSTICK" draw "$plan" --sheet install,slab,details -o "$TMPDIR/$1" --style "$2" \
		--as svg,pdf
}
for style in paper copier screen; do
	check "$style draws" draw "$style" "$style"
done
differ() { ! cmp -s "$1" "$2"; }
check "paper is not copier" differ "$TMPDIR/paper/slab.svg" "$TMPDIR/copier/slab.svg"
check "paper is not screen" differ "$TMPDIR/paper/set.pdf" "$TMPDIR/screen/set.pdf"

# Every colour that a picture names.
colours_of_svg() {
	grep -o -h -E '(fill|stroke|color):?=?"?#?[a-z0-9]+' "$@" | sed 's/.*[:="]//' | sort -u
}
black_and_white() {
	colours_of_svg "$TMPDIR"/copier/*.svg >"$TMPDIR/colours"
	! grep -v -i -x -E '#(000|000000|fff|ffffff)|none|inherit' "$TMPDIR/colours" && [ -s "$TMPDIR/colours" ]
}
check "copier: every SVG is black and white" black_and_white
# Operators of colour in the pages' streams: all components 0 or 1, all the same.
black_and_white_pdf() {
	qpdf --qdf --object-streams=disable "$TMPDIR/copier/set.pdf" "$TMPDIR/plain.pdf"
	LC_ALL=C grep -a -E '^(.* )?([01](\.[0-9]+)?|0?\.[0-9]+) ([0-9.]+) ([0-9.]+) (rg|RG)( |$)' "$TMPDIR/plain.pdf" |
		sed -E 's/.*(^| )([0-9.]+) ([0-9.]+) ([0-9.]+) (rg|RG).*/\2 \3 \4/' | sort -u >"$TMPDIR/colours"
	! grep -v -x -E '0 0 0|1 1 1' "$TMPDIR/colours" && [ -s "$TMPDIR/colours" ]
}
check "copier: so is the PDF" black_and_white_pdf
colourful() { colours_of_svg "$TMPDIR"/screen/*.svg | grep -q -i '#2040c0'; }
check "screen has its blue" colourful

# A style of one's own, and what is wrong with another.
cat >"$TMPDIR/mine.style" <<'END'
like = copier
[colours]
spot = #005500
[pens]
soft-joint = 2 spot
END
check "a style of one's own draws" draw mine "$TMPDIR/mine.style"
green() { colours_of_svg "$TMPDIR"/mine/*.svg | grep -q -i '#005500'; }
check "in its colour" green
cat >"$TMPDIR/bad.style" <<'END'
like = paper
[pens]
wall = 0.6 ink
soft-joint = 1 purple
[areas]
hold = lines 45 pitch 1 width 0.25 ink
END
refused() {
	"$JURYSTICK" draw "$plan" -o "$TMPDIR/bad" --style "$TMPDIR/bad.style" 2>"$TMPDIR/said"
	[ $? = 2 ] && [ ! -e "$TMPDIR/bad" ]
}
check "a faulty style is refused, nothing written" refused
for line in 3 4 6; do
	check "line $line is told" grep -q "^$TMPDIR/bad.style:$line: error: " "$TMPDIR/said"
done
three() { [ "$(grep -c 'bad.style:' "$TMPDIR/said")" = 3 ]; }
check "and no more" three
unknown() {
	"$JURYSTICK" draw "$plan" -o "$TMPDIR/bad" --style fancy 2>"$TMPDIR/said"
	[ $? = 2 ] && grep -q 'copier paper screen' "$TMPDIR/said"
}
check "a style that is not there names those that are" unknown
for style in styles/*.style; do
	name=$(basename "$style" .style)
	check "$name is in docs/drawing-language.md" grep -q "\`$name\`" docs/drawing-language.md
done

# The specimen that `make demo` draws, in every style.
for style in styles/*.style; do
	name=$(basename "$style" .style)
	check "specimen of $name" "$BUILD/tests/specimen/draw_specimen" "$name" "$TMPDIR"
	check "specimen of $name: PDF structure" qpdf --check "$TMPDIR/specimen-$name.pdf"
	check "specimen of $name: well-formed" xmllint --noout "$TMPDIR/specimen-$name.svg"
done
