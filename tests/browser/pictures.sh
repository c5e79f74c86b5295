# Every sheet of every demo: the same picture in a browser, in librsvg and in the PDF.
. tests/support/tap.sh
for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml)
	check "$name: drawn" "$JURYSTICK" draw "$plan" -o "$TMPDIR/$name" --as svg,pdf,html
	node tests/browser/pictures.js "$TMPDIR/$name" | sed "s/^\(ok\|not ok\) - /&$name: /"
	rm -rf "${TMPDIR:?}/$name"
done
