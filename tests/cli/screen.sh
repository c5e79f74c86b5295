# The page for the screen, looked at without a browser: well formed, whole, led from every
# finding to its place, and safe whatever a plan's texts hold. `make check-browser` uses it.
. tests/support/tap.sh

attributes() { # NAME FILE: the values of all attributes of that name, one a line.
	grep -o " $1=\"[^\"]*\"" "$2" | sed 's/^[^"]*"//; s/"$//'
}

unique_ids() {
	attributes id "$1" | sort >"$TMPDIR/ids"
	[ -s "$TMPDIR/ids" ] && [ -z "$(uniq -d "$TMPDIR/ids" | tee "$TMPDIR/check.out")" ]
}

# Every link of the page itself leads to something that is there.
links_lead() {
	attributes href "$1" | sed -n 's/^#//p' | sort -u >"$TMPDIR/links"
	attributes id "$1" | sort -u >"$TMPDIR/ids"
	[ -s "$TMPDIR/links" ] && [ -z "$(comm -23 "$TMPDIR/links" "$TMPDIR/ids" | tee /dev/stderr)" ]
}

# Names of namespaces are no addresses: nothing fetches them.
nothing_outside() {
	! grep -n -E -o '(src|srcset|action|data|poster)="|@import|url\(|href="[^#"][^"]*"' "$1" &&
		! grep -o -E '[a-z]+://[^" ]*' "$1" |
		grep -v -x -E 'http://www.w3.org/(1999/xhtml|2000/svg|1999/xlink)'
}

# What `check` prints, found again: as many findings, each text as it is, each led somewhere.
every_finding() {
	"$JURYSTICK" check "$1" >"$TMPDIR/findings"
	count=$(wc -l <"$TMPDIR/findings")
	xmllint --xpath '//*[@class="finding stop" or @class="finding ask" or @class="finding note"][@id]/*[local-name()="p"][1]/text()' \
		"$2" | sort >"$TMPDIR/listed"
	sed 's/^[^:]*:[0-9]*: [a-z]*: //; s/ \[[a-z-]*\]$//; s/&/\&amp;/g; s/</\&lt;/g; s/>/\&gt;/g' \
		"$TMPDIR/findings" | sort >"$TMPDIR/printed"
	[ "$count" -gt 0 ] && diff "$TMPDIR/printed" "$TMPDIR/listed" || return
	for number in $(seq "$count"); do
		grep -q "href=\"#place-$number-[^\"]*\"" "$2" || { echo "finding $number has no place"; return 1; }
	done
}

# Every sheet as its own file has it, but for ids that are its own here.
every_sheet() {
	attributes id "$2" | sed -n 's/^sheet-//p' | sort >"$TMPDIR/on-page"
	(cd "$1" && ls *.svg) | sed 's/\.svg$//' | sort | diff - "$TMPDIR/on-page" || return
	while read -r sheet; do
		sed -n "/<section class=\"sheet\" id=\"sheet-$sheet\"/,/^<\/svg>/p" "$2" |
			sed "s/.*<svg /<svg /; 1,/<svg /{/<svg /!d}
				s/\( id=\"\| xlink:href=\"#\| aria-labelledby=\"\)$sheet\./\1/; s/ $sheet\.about\"/ about\"/
				s/xlink:href=\"#$sheet\./xlink:href=\"#/g; s/ data-layer=\"[a-z]*\"//" >"$TMPDIR/sheet.svg"
		cmp "$TMPDIR/sheet.svg" "$1/$sheet.svg" || return
	done <"$TMPDIR/on-page"
}

# Whatever is drawn can be read about, and so can all that the record names.
every_element() {
	{
		attributes data-id "$1"
		"$JURYSTICK" record "$2" | grep -E '<(crack|control|panel|strip|hold|joint) ' |
			grep -o ' id="[^"]*"' | cut -d'"' -f2
	} | sort -u >"$TMPDIR/named"
	attributes id "$1" | sed -n 's/^about-//p' | sort -u >"$TMPDIR/about"
	[ -s "$TMPDIR/named" ] && [ -z "$(comm -23 "$TMPDIR/named" "$TMPDIR/about" | tee /dev/stderr)" ]
}

# The length of each joint as the record has it, to the millimetre, is among its facts.
lengths_agree() {
	"$JURYSTICK" record "$2" | sed -n 's/.*<joint id="\([^"]*\)".* length="\([0-9.]*\)".*/\1 \2/p' \
		>"$TMPDIR/lengths"
	[ -s "$TMPDIR/lengths" ] || return
	while read -r id length; do
		sed -n "/<details id=\"about-$id\"/,/<\/details>/p" "$1" | tr -d '\n' |
			grep -q -F "<dt>Length</dt><dd>$(printf '%.0f' "$length") mm</dd>" ||
			{ echo "$id: not $length long"; return 1; }
	done <"$TMPDIR/lengths"
}

for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml) out=$TMPDIR/$name
	check "$name: drawn" "$JURYSTICK" draw "$plan" -o "$out" --as svg,html
	page=$out/set.html
	check "$name: well-formed" xmllint --noout "$page"
	check "$name: every id is there once" unique_ids "$page"
	check "$name: every link leads somewhere" links_lead "$page"
	check "$name: nothing from outside" nothing_outside "$page"
	check "$name: every finding, with its place" every_finding "$plan" "$page"
	check "$name: every sheet as in its own file" every_sheet "$out" "$page"
	check "$name: every element" every_element "$page" "$plan"
done
check "joints are as long as the record says" lengths_agree \
	"$TMPDIR/larkmoor-school/set.html" demo-plans/larkmoor-school.xml
check "no word is missing" sh -c '! grep -o -E ">(page|who|question|joints|status)\.[a-z.-]+<" "$1"' - \
	"$TMPDIR/reading-room/set.html"

# Whatever a title or note holds stays text.
hostile='</title></script><script>x()</script> & "double" '"'single'"' ]]> --> */ {}'
sed -e 's|title="[^"]*"|title="'"$(printf '%s' "$hostile" |
	sed 's/&/\&amp;/g; s/</\&lt;/g; s/"/\&quot;/g; s/[&|]/\\&/g')"'"|' \
	-e 's|note="Diagonal[^"]*"|note="\&lt;img src=x onerror=y()>"|' \
	demo-plans/reading-room.xml >"$TMPDIR/hostile.xml"
check "a hostile plan is drawn" "$JURYSTICK" draw "$TMPDIR/hostile.xml" -o "$TMPDIR/h" --as html
page=$TMPDIR/h/set.html
title_is() { [ "$(xmllint --xpath 'string(//*[local-name()="title"][1])' "$1")" = "$2" ]; }
one_script() { [ "$(grep -c -i '<script' "$1")" = 1 ] && [ "$(grep -c -i '</script' "$1")" = 1 ]; }
check "it is well-formed all the same" xmllint --noout "$page"
check "its title is the text it is" title_is "$page" "$hostile"
check "no script but the page's own" one_script "$page"
check "no picture of a plan's making" sh -c '! grep -i "<img" "$1"' - "$page"

# One sheet alone: what it does not show leads to it all the same.
check "a page of one sheet" "$JURYSTICK" draw demo-plans/reading-room.xml -o "$TMPDIR/one" --as html \
	--sheet count --words es
check "its links lead somewhere" links_lead "$TMPDIR/one/set.html"
check "it is in Spanish" grep -q '<html .*lang="es"' "$TMPDIR/one/set.html"

# The change order has its page too, of the revised floor.
check "a page of changes" "$JURYSTICK" compare demo-plans/fernhill-wing.xml \
	demo-plans/fernhill-wing.revised.xml -o "$TMPDIR/changed" --as svg,html
page=$TMPDIR/changed/set.html
check "it is well-formed" xmllint --noout "$page"
check "its links lead somewhere" links_lead "$page"
check "it has every sheet of the change order" every_sheet "$TMPDIR/changed" "$page"

# Colours that are read against each other: 4.5 to 1 for text, 3 to 1 for lines (docs/sources.md R-D23).
contrast() { # FORE BACK LEAST
	awk -v fore="$1" -v back="$2" -v least="$3" '
		function part(c) { c /= 255; return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ^ 2.4 }
		function digit(c) { return index("0123456789abcdef", c) - 1 }
		function byte(h, i) { return 16 * digit(substr(h, i, 1)) + digit(substr(h, i + 1, 1)) }
		function light(h) { return 0.2126 * part(byte(h, 2)) + 0.7152 * part(byte(h, 4)) + 0.0722 * part(byte(h, 6)) }
		$1 ~ /^--/ { name = substr($1, 3, length($1) - 3); value[name] = substr($2, 1, 7) }
		END {
			a = light(value[fore]); b = light(value[back])
			ratio = a > b ? (a + 0.05) / (b + 0.05) : (b + 0.05) / (a + 0.05)
			printf "%s on %s: %.2f\n", fore, back, ratio
			exit !(value[fore] && value[back] && ratio >= least)
		}' src/screen/page.css
}
for pair in ink/panel ink/ground soft/panel soft/ground lead/panel lead/ground stop/panel ask/panel; do
	check "text is legible: $pair" contrast "${pair%/*}" "${pair#*/}" 4.5
done
check "lines are seen: line/panel" contrast line panel 3
check "the focus is seen: focus/panel" contrast focus panel 3
check "the focus is seen: focus/ground" contrast focus ground 3
not_seen() { ! contrast ground panel 3; }
check "and what is too pale is found" not_seen
