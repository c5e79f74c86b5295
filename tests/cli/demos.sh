# Every demo plan is drawn, counted and recorded, and what comes out is well formed.
. tests/support/tap.sh

demo() {
	tests/support/demo.sh "$JURYSTICK" "$1" "$TMPDIR/demo"
}
sheets() { # FOLDER NAME: how many sheets of that name.
	find "$1" -name "$2*.svg" | grep -c .
}
larger_needs_more() { # FOLDER PLAN NAME SCALE: that scale divides the floor into more parts.
	"$JURYSTICK" draw "$2" --sheet "$3" --scale "$4" --as svg -o "$TMPDIR/larger" &&
		[ "$(sheets "$TMPDIR/larger" "$3")" -gt "$(sheets "$1" "$3")" ]
}
corner_rows() { # FILES: the rows of their tables of strip corners, each after its letter.
	sed -n 's/.*<text[^>]*>\([^<]*\)<.*/\1/p' "$@" |
		awk '/^[0-9]+ \/ [0-9]+$/ && before ~ /^[A-Z][0-9]*$/ { print before, $0 }
			{ before = $0 }' | sort -u
}
same_corners() { # FOLDER: what a crew's sheet says of a corner, the membrane sheet says too.
	corner_rows "$1"/install-*.svg >"$TMPDIR/crew"
	corner_rows "$1"/membrane*.svg >"$TMPDIR/membrane"
	[ -s "$TMPDIR/crew" ] && [ -z "$(comm -23 "$TMPDIR/crew" "$TMPDIR/membrane")" ]
}
for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml)
	check "$name: as docs/floor.xsd has it" xmllint --noout --schema docs/floor.xsd "$plan"
	check "$name is drawn" demo "$plan"
	out=$TMPDIR/demo/$name
	check "$name: PDF structure" qpdf --check "$out/set.pdf"
	check "$name: well-formed XML" xmllint --noout "$out/placed.xml" "$out"/*.svg
	case $name in
	saltgate-hall)
		# worked by hand from the plan: from the west wall and the south wall
		check "$name: the slab's list says where a crack lies" \
			grep -q '>5000 / 2100 to 10000 / 2050<' "$out"/slab*.svg
		check "$name: and a column" grep -q '>9800 to 10200 / 8050 to 8450<' "$out"/slab*.svg
		check "$name: a part names the one where it goes on" \
			grep -q 'CONTINUED ON PART 4,' "$out/install-hall-2.svg"
		check "$name: parts are as large as so many sheets show" \
			grep -q '>1:40<' "$out/joints.svg"
		check "$name: a larger standard scale needs more of them" \
			larger_needs_more "$out" "$plan" joints 1:25
		;;
	larkmoor-school)
		check "$name: a strip's corner has one letter on all sheets" same_corners "$out"
		check "$name: a crew is told what is asked of its own ground" \
			grep -q '>Open questions about S1, R2:' "$out/install-wash.svg"
		check "$name: and nothing of another room's" \
			grep -q '>Open questions about S1:' "$out/install-class-1.svg"
		;;
	ferry-lobby)
		# the same mark as on the crew's sheet, where a chain along the wall has it
		check "$name: a slanted line is told by its marks on two walls" \
			grep -q '>LINE 1: from SOUTH 733[^<]*mm from its' "$out/setting-out.svg"
		check "$name: as on the crew's sheet" grep -q '>733<' "$out/install-lobby.svg"
		;;
	esac
	for svg in "$out"/*.svg; do
		check "$name: ${svg##*/} is drawn by another program" \
			rsvg-convert -w 1200 -a -o "$TMPDIR/seen.png" "$svg"
	done
done
