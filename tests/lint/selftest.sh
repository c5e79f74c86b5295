#!/bin/sh
# selftest.sh - lint.sh refuses what it is there to refuse: a small good tree passes, and
# one wrong thing in it fails the check meant for it and no other.
set -u
here=$(cd "$(dirname "$0")" && pwd)
tree=$(mktemp -d)/tree
build=$tree/build
trap 'rm -rf "$tree"' EXIT

good_tree() {
	rm -rf "$tree"
	mkdir -p "$tree/src/base" "$tree/src/units" "$tree/src/plan" "$tree/tests/lint" "$tree/build"
	touch "$tree/Makefile" "$tree/README.md"
	cat >"$tree/src/base/one.h" <<-'END'
		/* one.h - a "header" with sprintf( in words. */
		#ifndef BASE_ONE_H
		#define BASE_ONE_H
		#include <stddef.h>
		size_t one_count(void);
		#endif
	END
	cat >"$tree/src/base/one.c" <<-'END'
		#include "base/one.h"

		static const char *const words[] = {
			"time(0) is said, not called: 100 %%f",
		};

		size_t one_count(void)
		{
			return sizeof words / sizeof *words; // gets(
		}
	END
	cat >"$tree/src/units/two.h" <<-'END'
		#ifndef UNITS_TWO_H
		#define UNITS_TWO_H
		#include "base/one.h"
		#endif
	END
}

lint() {
	SANITIZE= BUILD=$build sh "$here/lint.sh" "$tree" 2>&1
}

lines() { # lines COUNT TEXT
	awk -v n="$1" -v text="$2" 'BEGIN { while (n-- > 0) print text }'
}

# refused CHECK WHAT: the tree as it is fails CHECK, and CHECK alone.
refused() {
	failed=$(lint | sed -n 's/^not ok - //p' | tr '\n' ' ')
	if [ "$failed" = "$1 " ]; then
		echo "ok - refuses $2"
	else
		echo "not ok - refuses $2: expected $1, failed: ${failed:-none}"
		lint
	fi
	good_tree
}

good_tree
if lint >"$tree/../out"; then
	echo 'ok - a good tree passes'
else
	echo 'not ok - a good tree passes'
	cat "$tree/../out"
fi
rm -f "$tree/../out"

echo '#include "units/two.h"' >>"$tree/src/base/one.c"
refused layers 'a lower layer that includes a higher one'

echo '#include "one.h"' >>"$tree/src/base/one.c"
cp "$tree/src/base/one.h" "$tree/src/one.h"
rm "$tree/src/one.h"
refused layers 'an include without its layer'

mkdir "$tree/src/attic" && echo 'int attic_x;' >"$tree/src/attic/x.c"
refused layers 'a folder that is no layer'

printf '#ifndef BASE_TWO_H\n#define BASE_TWO_H\n#include "base/one.h"\n#endif\n' \
	>"$tree/src/base/two.h"
sed -i 's|#include <stddef.h>|&\n#include "base/two.h"|' "$tree/src/base/one.h"
refused cycles 'two headers that include each other'

for pair in 'a b' 'b c' 'c a'; do
	set -- $pair
	printf '#ifndef BASE_%s_H\n#define BASE_%s_H\n#endif\n' "$1" "$1" |
		tr 'abc' 'ABC' >"$tree/src/base/$1.h"
	printf '#include "base/%s.h"\n#include "base/%s.h"\n' "$1" "$2" >"$tree/src/base/$1.c"
done
refused cycles 'three files that call each other in a ring'

echo '#include <libxml/tree.h>' >>"$tree/src/plan/model.c"
refused fences 'libxml2 outside plan/*_xml.c'
echo '#include <cairo/cairo.h>' >>"$tree/src/base/one.c"
refused fences 'cairo outside the canvases'
echo '#include <unistd.h>' >>"$tree/src/base/one.c"
refused fences 'the operating system outside cli'
echo '#include <curl/curl.h>' >>"$tree/src/base/one.c"
refused fences 'a library that nobody agreed to'

echo 'void f(char *a) { sprintf (a, "x"); }' >>"$tree/src/base/one.c"
refused calls 'a call without a bound'
echo 'double f(double a) { return 2 / cos(a); }' >>"$tree/src/base/one.c"
refused calls 'a function that depends on the processor'
printf 'long f(void) { /* a\n*/ return time(0); }\n' >>"$tree/src/base/one.c"
refused calls 'the clock, behind a comment of two lines'

echo 'const char *f = "width %-8.3f mm";' >>"$tree/src/units/two.c"
refused fractions 'a fraction through printf'

echo 'typedef struct one one;' >>"$tree/src/base/one.h"
refused typedefs 'a struct typedef'

lines 501 'extern int x;' >"$tree/src/base/long.c"
refused length 'a file of 501 lines'
{
	echo 'static const int table[] = {'
	lines 600 '	1,'
	echo '};'
} >"$tree/src/base/table.c"
if lint >/dev/null; then
	echo 'ok - a long table is data'
else
	echo 'not ok - a long table is data'
fi
{
	printf 'void f(void)\n{\n'
	lines 61 '	;'
	echo '}'
} >"$tree/src/base/long.c"
refused length 'a function of 61 lines'
{
	printf '/* '
	lines 98 x | tr -d '\n'
} >"$tree/src/base/wide.c"
refused length 'a line of 101 columns'

sed -i '/#include/d' "$tree/src/base/one.h"
refused headers 'a header that does not compile alone'
sed -i 's/BASE_ONE_H/ONE_H/' "$tree/src/base/one.h"
refused headers 'a guard with another name'

printf 'int calls;\nint next(void);\nint next(void) { static int n = 3; return n++ + calls++; }\n' \
	>"$tree/src/base/count.c"
${CC:-gcc} -c "$tree/src/base/count.c" -o "$build/count.o"
ar rcs "$build/libjurystick.a" "$build/count.o"
refused globals 'data that changes'
printf 'extern int far; const int *const f[] = {&far};\n' >"$tree/src/base/table.c"
${CC:-gcc} -fPIC -c "$tree/src/base/table.c" -o "$build/table.o"
ar rcs "$build/libjurystick.a" "$build/table.o"
if lint >/dev/null; then
	echo 'ok - a table of addresses is constant'
else
	echo 'not ok - a table of addresses is constant'
fi
good_tree

printf 'See %shome/somebody/plan.xml\n' / >>"$tree/README.md"
refused paths 'a path of one machine'
echo 'blanks ' >>"$tree/README.md"
refused blanks 'blanks at the end of a line'
touch "$tree/notes.txt"
refused tree 'a stray file at the top'

echo 'calls src/base/one.c gets once upon a time' >"$tree/tests/lint/exceptions"
refused exceptions 'an exception that allows nothing'
echo 'void f(char *a) { gets(a); }' >>"$tree/src/base/one.c"
echo 'calls src/base/one.c gets because' >"$tree/tests/lint/exceptions"
if lint >/dev/null; then
	echo 'ok - an exception with a reason allows'
else
	echo 'not ok - an exception with a reason allows'
fi
