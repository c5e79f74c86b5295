# The page for the screen of a demo, in a browser without a window; and its print.
. tests/support/tap.sh
out=$TMPDIR/drawn
check 'drawn' "$JURYSTICK" draw demo-plans/reading-room.xml -o "$out" --as html,pdf
node tests/browser/page.js "$out/set.html" "$out" || echo 'not ok - the page in the browser'

pages() {
	pdfinfo "$1" | sed -n 's/^Pages: *//p'
}
check 'a print has every sheet on a page of its own' [ "$(pages "$out/printed.pdf")" = "$(pages "$out/set.pdf")" ]
# A3, to a point: the browser rounds the size of a page to its own pixels.
sizes() {
	pdfinfo -l 99 "$1" | awk '/^Page.* size:/ {
		n++
		if ($4 < 1189.5 || $4 > 1191.6 || $6 < 840.8 || $6 > 842.9) { print; bad = 1 }
	} END { exit bad || !n }'
}
check 'each of the size of its sheet' sizes "$out/printed.pdf"
