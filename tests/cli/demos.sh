# Every demo plan is drawn, counted and recorded, and what comes out is well formed.
. tests/support/tap.sh

demo() {
	tests/support/demo.sh "$JURYSTICK" "$1" "$TMPDIR/demo"
}
for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml)
	check "$name is drawn" demo "$plan"
	out=$TMPDIR/demo/$name
	check "$name: PDF structure" qpdf --check "$out/set.pdf"
	check "$name: well-formed XML" xmllint --noout "$out/placed.xml" "$out"/*.svg
	for svg in "$out"/*.svg; do
		check "$name: ${svg##*/} is drawn by another program" \
			rsvg-convert -w 1200 -a -o "$TMPDIR/seen.png" "$svg"
	done
done
