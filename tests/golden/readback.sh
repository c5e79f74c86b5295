# What stands on the sheets, read back from their PDF: no two texts touch, nothing is outside
# the frame, and every element of the plan is named.
. tests/support/tap.sh
. tests/support/readback.sh

schedule_is_recorded() {
	"$JURYSTICK" record "$1" -o "$TMPDIR/record.xml" &&
		schedule_differs "$TMPDIR/record.xml" "$folder"/joints*.trace
}

# Draws plan $1 with the options that follow, and reads the sheets back.
read_back() {
	plan=$1 folder=$TMPDIR/drawn
	shift
	name="$(basename "$plan" .xml)${*:+ $*}"
	rm -rf "$folder"
	check "$name is drawn" "$JURYSTICK" draw "$plan" -o "$folder" --as pdf,trace "$@"
	pdf=$folder/set.pdf
	check "$name: no texts touch" touching "$pdf"
	check "$name: nothing outside the frame" outside "$pdf"
	check "$name: no lettering under its least height" too_small "$pdf"
	check "$name: every element is named" unnamed "$plan" "$pdf"
	check "$name: no lettering of a plan under 3.5 mm" small_on_plan "$folder"/*.trace
	check "$name: tags stand by what they name" untagged "$folder"/*.trace
	check "$name: leaders end on what they name" misled "$folder"/*.trace
	check "$name: chains add up" chains_off "$folder"/*.trace
	case "$* $(grep -c 'unit="mm"' "$plan")" in
	*--sheet*) ;;
	*1) check "$name: the schedule of joints is the record's" schedule_is_recorded "$plan" ;;
	esac
}

# The sheets a crew and an engineer work from, of rooms of every kind.
for plan in tests/rooms/*.xml; do
	read_back "$plan" --sheet install,slab
done
# Longer words.
for plan in demo-plans/*.xml; do
	read_back "$plan" --words es
done
for plan in demo-plans/*.xml tests/golden/*.xml; do
	read_back "$plan"
done
# A floor in parts: at a scale too large for its paper. Each match line names the part where
# the floor goes on, and that part names it back.
cross_referenced() {
	for page in $(seq 2 "$(pdfinfo "$1" | sed -n 's/^Pages: *//p')"); do
		pdftotext -raw -f "$page" -l "$page" "$1" - | tr '\n' ' ' |
			grep -o 'CONTINUED ON PART [0-9]*' | sed "s/.* /$page /"
	done >"$TMPDIR/references"
	awk '{ from[NR] = $1; to[NR] = $2; n = NR }
		END {
			for (i = 1; i <= n; i++)
				pair[from[i] - 1, to[i] + 0] = 1
			for (key in pair) {
				split(key, side, SUBSEP)
				if (!((side[2], side[1]) in pair)) { print "not back:", key; bad = 1 }
			}
			exit bad || n < 8
		}' "$TMPDIR/references"
}
read_back tests/rooms/two-rooms-one-doorway.xml --scale 1:20 --sheet install,slab
read_back tests/golden/pantry.xml --scale 1:10
read_back tests/golden/pantry.xml --sheet read-first,install --scale 1:10
check "match lines name each other's sheets" cross_referenced "$pdf"

many_added() { [ "$(awk '{ n += $1 } END { print n + 0 }' "$TMPDIR/added")" -ge 50 ]; }
check "fifty chains and more were added up" many_added

# The checks themselves see what they look for: one sheet printed over the other.
check "a page over another is seen to touch" sh -c '
	qpdf "$1" --pages . 1 -- "$1.one" && qpdf "$1" --pages . 2 -- "$1.two" &&
	qpdf "$1.one" --overlay "$1.two" -- "$1.both"' - "$pdf"
not_touching() { ! touching "$1"; }
check "so texts that touch are found" not_touching "$pdf.both"
check "a sheet on half its paper is seen to be too small" sh -c '
	pdftocairo -pdf -paperw 420 -paperh 300 "$1" "$1.half"' - "$pdf"
not_readable() { ! too_small "$1"; }
check "so small lettering is found" not_readable "$pdf.half"
small_found() { ! small_on_plan "$1"; }
sed 's/text tag level 3.500/text tag level 2.500/' "$TMPDIR/drawn/install-pantry.trace" >"$TMPDIR/small.trace"
check "and small tags on a plan" small_found "$TMPDIR/small.trace"
# The first tag with a mark of its own, moved to the corner of the sheet.
far_found() { ! untagged "$1"; }
sed '/ leader /d; s/\(labels [A-Z][^ ]* text tag level 3.500\) [^ ]*/\1 0.000,0.000/' \
	"$TMPDIR/drawn/install-pantry.trace" >"$TMPDIR/far.trace"
check "and tags far from what they name" far_found "$TMPDIR/far.trace"
# One member of the first chain that adds up, made longer.
off_found() { ! chains_off "$1"; }
"$JURYSTICK" draw demo-plans/reading-room.xml -o "$TMPDIR/off" --as trace --sheet slab
sed 's/ "1670"$/ "1671"/' "$TMPDIR/off/slab.trace" >"$TMPDIR/off.trace"
check "and chains that do not add up" off_found "$TMPDIR/off.trace"
# Its leaders, each ended elsewhere.
misled_found() { ! misled "$1"; }
awk '$3 == "stroke" && $4 == "leader" { split($NF, p, ","); $NF = p[1] + 47 "," p[2] + 31 } { print }' \
	"$TMPDIR/off/slab.trace" >"$TMPDIR/misled.trace"
check "and leaders past what they name" misled_found "$TMPDIR/misled.trace"
