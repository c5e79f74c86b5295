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

second='<crack id="K2" width="1/16in" found="2026-03-09" note="Under the old mortar">'
second="$second"'<at x="6ft" y="2ft"/><at x="7ft" y="4ft"/></crack>'
made added -e "s|<tile|$second<tile|"
check "a crack more" tells added '^1 *Crack K2: added. nook' 'Under the old mortar. 2026-03-09' \
	'soft joint  *K2.left  *0.00  *[1-9]' 'Appeared: .*K2 is'
sed -e 's/"K1"/"K3"/; s/"K2"/"K1"/' "$TMPDIR/added.xml" >"$TMPDIR/shifted.xml"
check "a crack more, the others renumbered" tells shifted '^1 *Crack K1: added' \
	'Crack K3: called K1 before' 'soft joint  *K1.left  *0.00  *[1-9]'
made removed -e '/<crack/d'
check "a crack less" tells removed '^1 *Crack K1: removed' 'Went: .*K1 is'
made moved -e 's|x="3ft 1in"|x="3ft 6in"|'
check "a crack moved" tells moved '^1 *Crack K1: moved'
made widened -e 's|1/32in|3/16in|'
check "a crack widened" tells widened '^1 *Crack K1: widened' 'width: 1/32in, now 3/16in'
made narrowed -e 's|1/32in|1/64in|'
check "a crack narrowed" tells narrowed '^1 *Crack K1: narrowed'
made retyped -e 's|kind="sheet"|kind="liquid"|'
check "a membrane of another kind" tells retyped 'Membrane M1: of another kind' \
	'kind: sheet, now liquid'
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
