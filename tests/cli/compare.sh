# What changed between two plans, told by id and by geometry, with what follows from it.
. tests/support/tap.sh
nook=tests/golden/nook.xml

# made NAME SED...: the nook, edited.
made() {
	name=$1
	shift
	sed "$@" "$nook" >"$TMPDIR/$name.xml"
}

# tells NAME TEXT...: the comparison of the nook with NAME says each TEXT.
tells() {
	name=$1
	shift
	exits 0 "$JURYSTICK" compare "$nook" "$TMPDIR/$name.xml" -o "$TMPDIR/$name" || return
	for text in "$@"; do
		grep -q -e "$text" "$TMPDIR/out" && continue
		echo "not said: $text"
		cat "$TMPDIR/out"
		return 1
	done
}

# only NAME: nothing has changed, and no file is written.
nothing() {
	tells "$1" '^No change$' && [ ! -e "$TMPDIR/$1" ]
}

made same -e 's/none/none/'
check "a plan against itself: no change, no sheet" nothing same
made renumbered -e 's/"K1"/"C7"/; s/"north"/"n"/; s/"nook"/"alcove"/g'
check "other ids in the same places: no change" nothing renumbered
check "but they are told" tells renumbered 'Crack C7: called K1 before' 'Room alcove: called nook'
made rewritten -e 's|1/32in|0.03125in|; s|8ft 4in|100in|; s|wall="south" along="3ft"|x="36" y="0"|'
check "the same in other words: no change" nothing rewritten
made retitled -e 's/Nook/Corner/g'
check "another title: no work" nothing retitled
made turned -e 's|<at wall="south" along="3ft"/>\(<at x.*/>\)</crack>|\1<at wall="south" along="3ft"/></crack>|'
check "a crack from its other end: no change" nothing turned
made feet -e 's/unit="in"/unit="ft"/; s/x="0" y="0"/x="0ft" y="0ft"/'
check "the same in another unit: no change" nothing feet
check "which is told" tells feet 'unit: in, now ft'
# Defaults in millimetres are other gaps: what follows is told in one unit, each quantity once.
made metric -e 's/unit="in"/unit="mm"/'
once() {
	tells metric '^1 *Floor: altered' 'unit: in, now mm' 'tile laid, area .* m²$' &&
		! grep -q ' ft$\| sq ft$' "$TMPDIR/out"
}
check "a unit with other defaults" once

second='<crack id="K2" width="1/16in" found="2026-03-09" note="Under the old mortar">'
second="$second"'<at x="6ft" y="2ft"/><at x="7ft" y="4ft"/></crack>'
made added -e "s|<tile|$second<tile|"
check "a crack more" tells added '^1 *Crack K2: added. nook' 'Under the old mortar. 2026-03-09' \
	'soft joint  *nook K2.left  *0.00  *[1-9]' 'Appeared: .*K2:'
sed -e 's/"K1"/"K3"/; s/"K2"/"K1"/' "$TMPDIR/added.xml" >"$TMPDIR/shifted.xml"
check "a crack more, the others renumbered" tells shifted '^1 *Crack K1: added' \
	'Crack K3: called K1 before' 'soft joint  *nook K1.left  *0.00  *[1-9]'
made removed -e '/<crack/d'
check "a crack less" tells removed '^1 *Crack K1: removed' 'Went: .*K1:'
made moved -e 's|x="3ft 1in"|x="3ft 6in"|'
check "a crack moved" tells moved '^1 *Crack K1: moved'
made widened -e 's|1/32in|3/16in|'
check "a crack widened" tells widened '^1 *Crack K1: widened' 'width: 1/32in, now 3/16in'
made narrowed -e 's|1/32in|1/64in|'
check "a crack narrowed" tells narrowed '^1 *Crack K1: narrowed'
made longer -e 's|"south" length="8ft 4in"|"south" length="8ft 6in"|; s|"north" length="8ft 4in"|"north" length="8ft 6in"|'
check "walls moved" tells longer '^1 *Room nook: moved' "south length: 8'-4\", now 8'-6\"" 'east moved'
made door -e 's|from="2ft" width="30in"|from="2ft" width="36in"|'
check "a doorway widened is no room moved" tells door '^1 *Room nook: altered' 'D1 width: 30in, now 36in'
made retyped -e 's|kind="sheet"|kind="liquid"|'
check "a membrane of another kind" tells retyped 'Membrane M1: of another kind' \
	'kind: sheet, now liquid'
check "a crack widened is drawn" [ -e "$TMPDIR/widened/changes.svg" ]
check "where it is seen" [ -e "$TMPDIR/widened/slab.svg" ]
check "and not where it is not" [ ! -e "$TMPDIR/widened/setting-out.svg" ]
asked() {
	"$JURYSTICK" compare "$nook" "$TMPDIR/widened.xml" -o "$TMPDIR/asked" --sheet slab,changes \
		--as svg >"$TMPDIR/out" &&
		[ "$(ls "$TMPDIR/asked")" = "$(printf 'changes-2.svg\nchanges.svg\nslab.svg')" ]
}
check "sheets that are asked for, in one form" asked
check "its options are looked at" fails_with 2 'sheet frob: no such sheet' \
	"$JURYSTICK" compare "$nook" "$nook" --sheet frob
check "its forms too" fails_with 2 'no form of a sheet, expected svg, pdf, png, html or csv' \
	"$JURYSTICK" compare "$nook" "$nook" --as odt
check "draw has no such sheet" fails_with 2 'sheet changes: only compare draws it' \
	"$JURYSTICK" draw "$nook" --sheet changes
check "in Spanish" exits 0 "$JURYSTICK" compare "$nook" "$TMPDIR/widened.xml" --words es \
	-o "$TMPDIR/es"
check "which says so" grep -q 'Fisura K1: se ensancha' "$TMPDIR/out"
same_again() {
	mkdir -p "$TMPDIR/again" && cd "$TMPDIR/again" &&
		LC_ALL=C.UTF-8 TZ=Asia/Tokyo "$JURYSTICK" compare "$OLDPWD/$nook" ../widened.xml >/dev/null &&
		cd "$OLDPWD" && same_folder "$TMPDIR/widened" "$TMPDIR/again"
}
check "the same bytes once more, elsewhere" same_again

# By another program: every line's prices less markups are its rows, lines make up the total,
# and the totals are those that count gives of each plan.
sums() {
	base=demo-plans/fernhill-wing.xml revised=demo-plans/fernhill-wing.revised.xml
	"$JURYSTICK" compare "$base" "$revised" -o "$TMPDIR/sums" --as csv >"$TMPDIR/out" || return
	before=$("$JURYSTICK" count "$base" --as csv | awk -F, '$1 == "price-total" { print $6 }')
	after=$("$JURYSTICK" count "$revised" --as csv | awk -F, '$1 == "price-total" { print $6 }')
	awk -v before="$before" -v after="$after" '
		function cents(text) { return sprintf("%.0f", text * 100) + 0 }
		{
			# The cells before `how` hold no comma: ids, words, numbers.
			split($0, cell, ",")
		}
		cell[2] == "quantity" && cell[3] == "labour" { labour[cell[1]] += cents(cell[12]) }
		cell[2] == "quantity" && cell[3] != "labour" { material[cell[1]] += cents(cell[12]) }
		cell[3] == "price-material" { told[cell[1]] = cents(cell[12]) }
		cell[3] == "price-labour" { hours[cell[1]] = cents(cell[12]) }
		cell[3] == "price-total" {
			if (cell[1] == "total") {
				if (cell[10] != before || cell[11] != after)
					bad = bad "\ntotals of the counts"
				if (cents(cell[12]) != sum || cents(after) - cents(before) != sum)
					bad = bad "\nsum of the lines"
			} else {
				lines++
				sum += cents(cell[12])
			}
		}
		END {
			for (line in told)
				if (told[line] != material[line] || hours[line] != labour[line])
					bad = bad "\nrows of " line
			if (lines != 4)
				bad = bad "\nlines: " lines
			print bad
			exit bad != ""
		}' "$TMPDIR/sums/changes.csv"
}
check "prices add up by another program" sums

# Of the hall's parts those that show the new crack, and the first, which has the notes of all.
parts() {
	sed '0,/<tile id/s|<tile id|<crack id="KX" width="1mm"><at x="2200" y="2200"/><at x="2600" y="3400"/></crack>&|' \
		demo-plans/saltgate-hall.xml >"$TMPDIR/hall.xml"
	"$JURYSTICK" compare demo-plans/saltgate-hall.xml "$TMPDIR/hall.xml" -o "$TMPDIR/hall" \
		--as svg >"$TMPDIR/out" || return
	[ -e "$TMPDIR/hall/slab.svg" ] && [ -e "$TMPDIR/hall/slab-3.svg" ] &&
		[ ! -e "$TMPDIR/hall/slab-2.svg" ] && [ ! -e "$TMPDIR/hall/slab-4.svg" ]
}
check "of a floor in parts only those with a change" parts
check "what is wrong with either plan is said" fails_with 2 "none.xml: cannot be read" \
	"$JURYSTICK" compare "$TMPDIR/none.xml" "$nook"
check "one plan is not enough" fails_with 2 "file name missing" "$JURYSTICK" compare "$nook"
check "standard input twice" fails_with 2 "both plans from standard input" \
	"$JURYSTICK" compare - -
both_wrong() {
	made wrong -e 's/width="1.32in"/width="wide"/'
	exits 2 "$JURYSTICK" compare "$TMPDIR/wrong.xml" "$TMPDIR/wrong.xml" &&
		[ "$(grep -c 'wrong.xml:13: error: <crack> width=' "$TMPDIR/err")" = 2 ] && [ ! -s "$TMPDIR/out" ]
}
check "errors of both plans" both_wrong
