# drawn_floors.sh - sheets of random floors, read back: no two texts touch, nothing stands outside
# the frame or under its least height, every element is named and its tag stands by it, chains
# add up, and the schedule of joints is the record's. 12 floors, or FLOORS of them from JURYSTICK_SEED on (with
# JURYSTICK_LONG 100). A floor that fails is kept in $BUILD/random/drawn-SEED.xml.
. tests/support/tap.sh
. tests/support/readback.sh

first=${JURYSTICK_SEED:-7001}
floors=${FLOORS:-$([ -n "${JURYSTICK_LONG:-}" ] && echo 100 || echo 12)}
plan=$TMPDIR/plan.xml folder=$TMPDIR/drawn
drawn=0

schedule_is_recorded() {
	! grep -q 'unit="mm"' "$plan" && return
	"$JURYSTICK" record "$plan" -o "$TMPDIR/record.xml" &&
		schedule_differs "$TMPDIR/record.xml" "$folder"/joints*.trace
}
read_back() {
	touching "$folder/set.pdf" && outside "$folder/set.pdf" && too_small "$folder/set.pdf" &&
		unnamed "$plan" "$folder/set.pdf" && small_on_plan "$folder"/*.trace &&
		untagged "$folder"/*.trace && misled "$folder"/*.trace && chains_off "$folder"/*.trace && schedule_is_recorded
}
# One that is turned down as no floor has no sheets.
draw_one() {
	rm -rf "$folder"
	"$RANDOM_FLOOR" "$1" >"$plan"
	status=0
	"$JURYSTICK" draw "$plan" -o "$folder" --as pdf,trace || status=$?
	case $status in
	0) read_back && return ;;
	2) return ;;
	esac
	mkdir -p "$BUILD/random" && cp "$plan" "$BUILD/random/drawn-$1.xml"
	return 1
}
for seed in $(seq "$first" $((first + floors - 1))); do
	check "floor $seed" draw_one "$seed"
	[ ! -e "$folder/set.pdf" ] || drawn=$((drawn + 1))
done
most() { [ $((drawn * 100)) -ge $((floors * 85)) ]; }
check "$drawn of $floors floors are drawn" most
added() { [ "$(awk '{ n += $1 } END { print n + 0 }' "$TMPDIR/added")" -ge "$floors" ]; }
check "chains were added up, one a floor and more" added
