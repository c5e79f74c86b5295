# Ended from outside at some moment, while sheets are placed, drawn or written: each file is
# the old one or the new one, and there is nothing else. each_call.sh goes through the moments
# of writing one by one.
. tests/support/tap.sh
plan=$PWD/tests/golden/nook.xml
cd "$TMPDIR" || exit 1

mkdir new old
"$JURYSTICK" draw "$plan" -o new --as svg,pdf,png || echo 'not ok - draws at all'
for name in $(ls new); do
	echo "older $name" >"old/$name"
done

# A third thing, or a name that is in neither, is a temporary left behind.
is_old_or_new() {
	[ "$(ls -A work)" = "$(ls -A old)" ] || return 1
	for name in $(ls work); do
		cmp -s "work/$name" "old/$name" || cmp -s "work/$name" "new/$name" || return 1
	done
}

stopped() {
	rm -rf work
	cp -r old work
	timeout -s "$1" "$2" "$JURYSTICK" draw "$plan" -o work --as svg,pdf,png
	is_old_or_new
}
for seconds in 0.01 0.05 0.1 0.2 0.3 0.5; do
	check "TERM after $seconds s" stopped TERM $seconds
	check "INT after $seconds s" stopped INT $seconds
done
