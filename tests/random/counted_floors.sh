# Counts of random floors and of the demo plans, worked out again from their records by another
# program: by room = by strip and joint = total (E-Q1), and every price and sum of prices.
. tests/support/tap.sh
seeds='1 6 15 20 24 31 40 52 147' # 147: a hold round a hole in a tile
[ -z "${JURYSTICK_LONG:-}" ] || seeds=$(seq 1 200)
least=20 # figures of a floor, at least

# Rates of everything, so that every sum is worked out.
grout='<grout id="GR9" density="1.6kg/L" bag="5kg"/>'
rates='<rates currency="EUR"><rate of="tile" each="31.455" per="m2" hours="0.55"/>'
rates="$rates"'<rate of="membrane" each="14.2" per="m2" hours="0.25"/><rate of="grout" each="16.205" per="bag"/>'
rates="$rates"'<rate of="mortar" each="18.75" per="bag"/><rate of="sealant" each="9.6" per="m" hours="0.1"/>'
rates="$rates"'<rate of="perimeter" each="2.335" per="m"/><rate of="rod" each="0.855" per="m"/>'
rates="$rates"'<rate of="cutting" each="1.1" per="m"/><rate of="labour" each="46" per="hour"/>'
rates="$rates"'<markup of="material" share="8%" name="Freight"/><markup of="all" share="12.5%" name="Site"/></rates>'

sums() { # PLAN [MM]: thickness of its tile
	"$JURYSTICK" record "$1" -o "$TMPDIR/record.xml" &&
		"$JURYSTICK" count "$1" --as csv >"$TMPDIR/count.csv" &&
		awk -v thick="${2:-}" -f tests/support/count_sums.awk "$TMPDIR/record.xml" \
			"$TMPDIR/count.csv" >"$TMPDIR/sums"
	status=$?
	cat "$TMPDIR/sums"
	[ $status = 0 ] && [ "$(sed -n 's/ figures compared//p' "$TMPDIR/sums")" -ge $least ]
}

counted=0
for seed in $seeds; do
	plan=$TMPDIR/$seed.xml
	"$RANDOM_FLOOR" "$seed" | sed "s|</floor>|$grout$rates</floor>|" >"$plan"
	thick=$(sed -n 's/.*<tile [^>]*thick="\([0-9.]*\)".*/\1/p' "$plan" | head -n 1)
	grep -q 'unit="in"' "$plan" && thick=$(awk "BEGIN { print $thick * 25.4 }")
	if "$JURYSTICK" check "$plan" >/dev/null 2>&1 || [ $? = 1 ]; then
		check "floor $seed" sums "$plan" "$thick"
		counted=$((counted + 1))
	fi
done
check "most floors are counted" [ $((counted * 2)) -gt "$(printf '%s\n' $seeds | wc -l)" ]
for plan in demo-plans/*.xml; do
	check "$plan" sums "$plan"
done

# A figure that is off is seen: the test can fail.
off() {
	"$JURYSTICK" record demo-plans/quay-kitchen.xml -o "$TMPDIR/record.xml" &&
		"$JURYSTICK" count demo-plans/quay-kitchen.xml --as csv |
		sed 's/^joint-soft,kitchen K1.left,2.04/joint-soft,kitchen K1.left,2.06/' >"$TMPDIR/off.csv"
	! awk -f tests/support/count_sums.awk "$TMPDIR/record.xml" "$TMPDIR/off.csv" >"$TMPDIR/said" &&
		grep -q 'joint-soft of K1.left: counted 2060' "$TMPDIR/said" &&
		grep -q 'joint-soft in all' "$TMPDIR/said"
}
check "a figure that is off is told" off
