#!/bin/sh
# Plans made to hurt: each is refused with its own message, within one second of work and 64 MiB.
# The limits are the system's, on the process; a sanitizer needs more of both and gets no limit.
. tests/support/tap.sh
HEAD='<?xml version="1.0"?>
<floor version="1" unit="mm">'
SLAB='<slab id="S1" thickness="150" support="ground" exposure="indoor"/>'
case $(nm -D "$JURYSTICK") in *__asan_*) is_sanitized=1 ;; *) is_sanitized= ;; esac

limited() {
	(
		if [ -z "$is_sanitized" ]; then
			ulimit -t 1
			ulimit -d 65536
		fi
		exec "$@"
	)
}

# refuses TEXT: the plan on standard input is refused, with a message that has TEXT in it.
refuses() {
	cat >"$TMPDIR/plan.xml"
	fails_with 2 "$1" limited "$JURYSTICK" check "$TMPDIR/plan.xml"
}

# hostile WHAT TEXT MAKER...: what the maker writes is refused.
hostile() {
	what=$1 text=$2
	shift 2
	"$@" >"$TMPDIR/made"
	check "$what" refuses "$text" <"$TMPDIR/made"
}

# many COUNT FORMAT: the format written COUNT times, each with its number.
many() {
	awk -v count="$1" -v format="$2" 'BEGIN { for (i = 1; i <= count; i++) printf format, i }'
}

bomb() {
	echo '<?xml version="1.0"?>'
	echo '<!DOCTYPE floor [<!ENTITY a0 "ha">'
	awk 'BEGIN { for (i = 1; i <= 12; i++) {
		printf "<!ENTITY a%d \"", i
		for (k = 0; k < 10; k++) printf "&a%d;", i - 1
		print "\">" } }'
	echo ']><floor version="1" unit="mm" title="&a12;"/>'
}

outside() {
	echo '<?xml version="1.0"?>'
	echo '<!DOCTYPE floor SYSTEM "plan.dtd">'
	echo '<floor version="1" unit="mm"/>'
}

attributes() { # NAME, with %d where each is to differ
	echo "$HEAD<slab"
	many 100000 " $1=\"1\""
	echo '/></floor>'
}

deep() {
	echo "$HEAD"
	many 100000 '<room id="r%d">'
}

# A square room of SIDE m, tiled with tile of WIDE mm.
square() {
	echo "$HEAD$SLAB<room id=\"r\" slab=\"S1\"><corners><corner x=\"0\" y=\"0\"/>"
	echo "<corner x=\"$1m\" y=\"0\"/><corner x=\"$1m\" y=\"$1m\"/><corner x=\"0\" y=\"$1m\"/>"
	echo "</corners></room><tile id=\"T\" kind=\"glass\" wide=\"$2\" thick=\"5\"/>"
	echo '<lay id="L" rooms="r" tile="T" joint="1" pattern="grid"/></floor>'
}

named() { # the bytes of an id, as printf writes them
	echo "$HEAD"
	printf "<slab id=\"S$1\" thickness=\"150\" support=\"ground\" exposure=\"indoor\"/></floor>"
}

comments() {
	echo "$HEAD"
	many "$1" '<!---->'
	echo '</floor>'
}

large() {
	echo "$HEAD<!--"
	head -c 17825792 /dev/zero | tr '\0' x
	echo '--></floor>'
}

# A tape run that winds up on itself.
wound() {
	echo "$HEAD$SLAB<room id=\"r\" slab=\"S1\"><walls x=\"0\" y=\"0\" heading=\"0\">"
	many 20000 '<wall length="1"/>'
	echo '</walls></room></floor>'
}

long_number() {
	echo "$HEAD<slab id=\"S1\" support=\"ground\" exposure=\"indoor\" thickness=\"$(many 50000 9)\"/>"
	echo '</floor>'
}

zeros() {
	head -c 1000000 /dev/zero
}

hostile 'entities within entities' 'a DOCTYPE; expected none' bomb
hostile 'a definition from outside' 'a DOCTYPE; expected none' outside
hostile '100,000 attributes' 'a tag longer than 64 kB' attributes 'a%d'
hostile '100,000 times one attribute' 'a tag longer than 64 kB' attributes id
hostile '100,000 levels' 'deeper than 16 levels' deep
hostile 'tile of 1 mm in a room of 10 km' 'expected a tile side from 5 mm to 5 m' square 10000 1
hostile 'tile of 5 mm in a room of 10 km' 'expected at most 1,000,000,000' square 10000 5
hostile 'a control character in a name' 'a control character' named '\001'
hostile 'a zero in a name' 'a control character' named '\000'
hostile 'a name that is not UTF-8' 'not UTF-8' named '\377\376'
hostile 'a million zeros' 'a control character' zeros
hostile 'an empty file' 'expected <floor>' true
hostile 'a file of 17 MiB' 'larger than 16 MiB' large
hostile 'a number of 50,000 digits' 'error' long_number
hostile 'walls wound up' 'touch only their neighbours' wound
hostile 'a million comments' 'without a <room>' comments 1000000
