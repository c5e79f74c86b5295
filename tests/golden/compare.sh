# The change order of a small plan, as it was last accepted: what is said, the table for
# spreadsheets, the sheets one drawn thing a line. `make golden-update` accepts what comes now.
. tests/support/tap.sh
stored=tests/golden/compare

golden() {
	"$JURYSTICK" compare tests/golden/nook.xml "$stored/nook.revised.xml" \
		-o "$TMPDIR/nook" --as trace,csv >"$TMPDIR/said" || return
	mv "$TMPDIR/said" "$TMPDIR/nook/said.txt"
	cp "$stored/nook.revised.xml" "$TMPDIR/nook"
	if [ "${GOLDEN_UPDATE:-}" ]; then
		diff -r "$stored" "$TMPDIR/nook"
		rm -f "$stored"/*.trace "$stored"/*.txt "$stored"/*.csv
		cp "$TMPDIR/nook"/* "$stored"
		return
	fi
	diff -r "$stored" "$TMPDIR/nook"
}
check "the nook's change order is as before" golden
