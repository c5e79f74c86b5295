# Ended from outside at any moment: each folder holds the old set or the new one, and
# nothing else.
. tests/support/tap.sh
plan=$PWD/$(ls demo-plans/*.xml | head -n 1)
cd "$TMPDIR" || exit 1

mkdir new old
"$JURYSTICK" draw "$plan" -o new --as svg,pdf,png || echo 'not ok - draws at all'
for name in $(ls new); do
	echo "older $name" >"old/$name"
done

# Renames come one after another, so a file is old or new each for itself; a third thing,
# or a name that is in neither, is a temporary left behind.
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
for signal in TERM INT; do
	for seconds in 0.005 0.02 0.05 0.1 0.2 0.3 0.4 0.5 0.7 1; do
		check "$signal after $seconds s" stopped $signal $seconds
	done
done
