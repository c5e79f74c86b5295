# The page for the screen of every demo, in a browser without a window; and its print.
. tests/support/tap.sh

# Pages of a print that are not of the size of their sheet, to a point and a half: the browser
# rounds the size of a page to its own pixels.
sizes() {
	pdfinfo -l 999 "$1" | awk '/^Page.* size:/ { print $4, $6 }'
}
same_sizes() { # PRINT SET
	sizes "$1" >"$TMPDIR/printed"
	sizes "$2" | paste -d' ' "$TMPDIR/printed" - | awk '
		NF != 4 || ($1 - $3) ^ 2 > 2.25 || ($2 - $4) ^ 2 > 2.25 { print "page", NR, $0; bad = 1 }
		END { exit bad || !NR }'
}

for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml) out=$TMPDIR/$name
	check "$name: drawn" "$JURYSTICK" draw "$plan" -o "$out" --as html,pdf
	node tests/browser/page.js "$out/set.html" "$out" | sed "s/^\(ok\|not ok\) - /&$name: /"
	check "$name: a print has every sheet on a page of its own, of its size" same_sizes "$out/printed.pdf" "$out/set.pdf"
	rm -rf "${TMPDIR:?}/$name"
done
