# The same input gives the same bytes on another processor, in another locale, time zone,
# home, folder and umask.
. tests/support/tap.sh
root=$PWD
demo=$root/tests/support/demo.sh
mkdir -p "$TMPDIR/here" "$TMPDIR/far away/home"

here() {
	cp "$1" "$TMPDIR/here" && cd "$TMPDIR/here" && sh "$demo" "$JURYSTICK" "${1##*/}" out
}
far_away() {
	cp "$1" "$TMPDIR/far away" && cd "$TMPDIR/far away" && umask 077 &&
		env -i PATH="$PATH" HOME="$TMPDIR/far away/home" LC_ALL=de_DE.UTF-8 LANG=tr_TR.UTF-8 \
			LANGUAGE=de TZ=Pacific/Chatham XDG_CACHE_HOME="$TMPDIR/far away/cache" \
			GLIBC_TUNABLES=glibc.cpu.hwcaps=-AVX2,-AVX2_Usable,-FMA,-FMA4 \
			ASAN_OPTIONS="${ASAN_OPTIONS:-}" UBSAN_OPTIONS="${UBSAN_OPTIONS:-}" \
			LSAN_OPTIONS="suppressions=$root/tests/support/lsan.supp" \
			sh "$demo" "$JURYSTICK" "${1##*/}" out
}
in_subshell() {
	("$@")
}

for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml)
	check "$name here" in_subshell here "$plan"
	check "$name far away" in_subshell far_away "$plan"
	check "$name: the same bytes" same_folder "$TMPDIR/here/out/$name" "$TMPDIR/far away/out/$name"
done
