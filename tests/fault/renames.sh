# A file that cannot be put in place keeps all the others from it; modes are ordinary.
. tests/support/tap.sh
plan=$PWD/tests/golden/nook.xml
cd "$TMPDIR" || exit 1

mkdir new
"$JURYSTICK" draw "$plan" -o new --as svg,pdf,png || echo 'not ok - draws at all'

# Each name in turn is taken by a folder that is not empty.
refused() {
	rm -rf old work
	mkdir old
	for name in $(ls new); do
		echo "older $name" >"old/$name"
	done
	rm "old/$1"
	mkdir "old/$1"
	touch "old/$1/inside"
	cp -r old work
	fails_with 3 "$1" "$JURYSTICK" draw "$plan" -o work --as svg,pdf,png && same_folder old work
}
for name in $(ls new); do
	check "$name is a folder" refused "$name"
done

mode() {
	ls -l "$1" | cut -c 1-10
}
mode_is() { # mode_is UMASK MODE: of a new file
	rm -f placed.xml
	(umask "$1" && "$JURYSTICK" record "$plan" -o placed.xml) && [ "$(mode placed.xml)" = "$2" ]
}
check 'umask 022' mode_is 022 -rw-r--r--
check 'umask 077' mode_is 077 -rw-------
keeps_mode() {
	chmod 640 placed.xml
	(umask 022 && "$JURYSTICK" record "$plan" -o placed.xml) && [ "$(mode placed.xml)" = -rw-r----- ]
}
check 'an old file keeps its mode' keeps_mode
