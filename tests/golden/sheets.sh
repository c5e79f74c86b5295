# The sheets of small plans, one drawn thing a line, are as they were last accepted.
# `make golden-update` accepts what is drawn now; look at the difference before.
. tests/support/tap.sh

# golden PLAN: draws it and compares every trace with the stored one.
golden() {
	name=$(basename "$1" .xml)
	stored=tests/golden/$name
	"$JURYSTICK" draw "$1" -o "$TMPDIR/$name" --as trace || return
	if [ "${GOLDEN_UPDATE:-}" ]; then
		mkdir -p "$stored"
		diff -r "$stored" "$TMPDIR/$name"
		rm -f "$stored"/*.trace
		cp "$TMPDIR/$name"/*.trace "$stored"
		return
	fi
	diff -r "$stored" "$TMPDIR/$name"
}
for plan in tests/golden/*.xml; do
	check "$(basename "$plan" .xml) is drawn as before" golden "$plan"
done
