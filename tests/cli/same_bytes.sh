# The same input gives the same bytes on another processor, in another locale, time zone,
# home, folder and umask.
. tests/support/tap.sh
root=$PWD
demo=$root/tests/support/demo.sh
mkdir -p "$TMPDIR/here" "$TMPDIR/far away/home"

# A revised floor is compared with its base, which goes along.
bring() {
	base=${1%.revised.xml}.xml
	cp "$1" "$2" || return
	[ ! -e "$base" ] || cp "$base" "$2"
}
here() {
	bring "$1" "$TMPDIR/here" && cd "$TMPDIR/here" && sh "$demo" "$JURYSTICK" "${1##*/}" out
}
# A processor without these chooses other code for sines and their kin, whose last digits are
# others. Names of several versions of the C library.
OTHER_PROCESSOR=glibc.cpu.hwcaps=-AVX2,-AVX2_Usable,-FMA,-FMA_Usable,-FMA4,-FMA4_Usable
far_away() {
	bring "$1" "$TMPDIR/far away" && cd "$TMPDIR/far away" && umask 077 &&
		env -i PATH="$PATH" HOME="$TMPDIR/far away/home" LC_ALL=de_DE.UTF-8 LANG=tr_TR.UTF-8 \
			LANGUAGE=de TZ=Pacific/Chatham XDG_CACHE_HOME="$TMPDIR/far away/cache" \
			SOURCE_DATE_EPOCH=86400 GLIBC_TUNABLES=$OTHER_PROCESSOR \
			ASAN_OPTIONS="${ASAN_OPTIONS:-}" UBSAN_OPTIONS="${UBSAN_OPTIONS:-}" \
			LSAN_OPTIONS="suppressions=$root/tests/support/lsan.supp" \
			sh "$demo" "$JURYSTICK" "${1##*/}" out
}
in_subshell() {
	("$@")
}

# The second run is another processor indeed, where this one can fuse a multiplication.
sines() {
	cat >"$TMPDIR/sines.c" <<-'END'
		#include <math.h>
		#include <stdio.h>
		int main(void)
		{
			for (volatile double x = 0.1; x < 5000; x += 0.7)
				printf("%a %a\n", sin(x), exp(x / 100));
		}
	END
	${CC:-cc} -O1 -o "$TMPDIR/sines" "$TMPDIR/sines.c" -lm &&
		"$TMPDIR/sines" >"$TMPDIR/sines.here" &&
		GLIBC_TUNABLES=$OTHER_PROCESSOR "$TMPDIR/sines" >"$TMPDIR/sines.far" &&
		! cmp -s "$TMPDIR/sines.here" "$TMPDIR/sines.far"
}
if grep -qw fma /proc/cpuinfo; then
	check 'sines of the other processor differ' sines
fi

for plan in demo-plans/*.xml tests/rooms/drain-angle-30.xml; do
	name=$(basename "$plan" .xml)
	check "$name here" in_subshell here "$plan"
	check "$name far away" in_subshell far_away "$plan"
	check "$name: the same bytes" same_folder "$TMPDIR/here/out/$name" "$TMPDIR/far away/out/$name"
done
