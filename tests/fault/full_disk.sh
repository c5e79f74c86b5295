# A disk that fills up, at any byte: older files stay as they were, temporaries go. The
# limit on the size of a file stands in for the disk; SIGXFSZ is ignored, so that the write
# fails as it does on a full disk.
. tests/support/tap.sh
plan=$PWD/tests/golden/nook.xml
cd "$TMPDIR" || exit 1

# Limits count blocks of 512 bytes.
limited() {
	blocks=$1
	shift
	(
		trap '' XFSZ
		ulimit -f "$blocks"
		exec "$@"
	)
}

mkdir old new
"$JURYSTICK" draw "$plan" -o new --as svg,pdf,png || echo 'not ok - draws at all'
for name in $(ls new); do
	echo "older $name" >"old/$name"
done
cp -r old work

# fails_at BLOCKS: drawing fails and leaves the folder as it was.
fails_at() {
	fails_with 3 error: limited "$1" "$JURYSTICK" draw "$plan" -o work --as svg,pdf,png &&
		same_folder old work
}

largest=$(ls -l new | awk '$5 > most { most = $5 } END { print int(most) }')
check 'something was drawn' [ "$largest" -gt 1024 ]
# Not a byte for the message either.
silent() {
	exits 3 limited 0 "$JURYSTICK" draw "$plan" -o work --as svg,pdf,png && same_folder old work
}
check 'full at the first byte' silent
check 'full after 512 bytes' fails_at 1
check 'full half way' fails_at $((largest / 1024))
check 'full in the last kilobyte' fails_at $(((largest - 1) / 512))

drawn() {
	exits 0 limited $((largest / 512 + 1)) "$JURYSTICK" draw "$plan" -o work --as svg,pdf,png &&
		same_folder new work
}
check 'with just enough room all is new' drawn

# A record and its points are one set, whichever of them lacks its last kilobyte.
mkdir old.pair
echo older >old.pair/placed.xml
echo older >old.pair/points.csv
cp -r old.pair pair
"$JURYSTICK" record "$plan" -o new.xml --points new.csv || echo 'not ok - records at all'
pair_fails() { # pair_fails BLOCKS
	fails_with 3 error: limited "$1" \
		"$JURYSTICK" record "$plan" -o pair/placed.xml --points pair/points.csv &&
		same_folder old.pair pair
}
last_kilobyte() {
	echo $((($(wc -c <"$1") - 1) / 512))
}
check 'a record that lacks its last kilobyte' pair_fails "$(last_kilobyte new.xml)"
check 'points that lack their last kilobyte' pair_fails "$(last_kilobyte new.csv)"
