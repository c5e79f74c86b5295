# What stands on the sheets, read back from their PDF: no two texts touch, nothing is outside
# the frame, and every element of the plan is named.
. tests/support/tap.sh

# Words of a PDF as "page x0 y0 x1 y1 word", boxes in points without the white over capitals
# and under the baseline that the font's box has.
words() {
	pdftotext -bbox "$1" - | awk '
		/<page / { page++ }
		/<word / {
			split($0, part, "\"")
			word = $0
			sub(/^[^>]*>/, "", word)
			sub(/<.*/, "", word)
			gsub(/&quot;/, "\"", word)
			gsub(/&amp;/, "+", word)
			print page, part[2], part[4], part[6], part[8], word
		}'
}

# The height of a capital lies between these shares of the word box, from its top.
touching() {
	words "$1" | awk '
		{
			page[NR] = $1; word[NR] = $6
			w = $4 - $2; h = $5 - $3
			# One sign is narrower than its box is high, three are wider; two may be either.
			level = length($6) == 1 ? h >= w : w >= h
			both = length($6) == 2
			x0[NR] = $2; x1[NR] = $4; y0[NR] = $3; y1[NR] = $5
			if (level || both) { y0[NR] += 0.24 * h; y1[NR] -= 0.24 * h }
			if (!level || both) { x0[NR] += 0.24 * w; x1[NR] -= 0.24 * w }
		}
		END {
			if (NR == 0) { print "no text at all"; exit 1 }
			for (i = 1; i <= NR; i++)
				for (k = i + 1; k <= NR && page[k] == page[i]; k++)
					if (x0[i] < x1[k] && x0[k] < x1[i] && y0[i] < y1[k] && y0[k] < y1[i]) {
						print "page", page[i] ":", word[i], "touches", word[k]
						found = 1
					}
			exit found
		}'
}

# Inside the strip of grid references, 5 mm outside the frame: 15 mm at the left, 5 elsewhere.
outside() {
	size=$(pdfinfo "$1" | sed -n 's/^Page size: *\([0-9.]*\) x \([0-9.]*\).*/\1 \2/p')
	words "$1" | awk -v size="$size" '
		BEGIN { split(size, paper, " "); mm = 72 / 25.4 }
		$2 < 15 * mm || $3 < 4 * mm || $4 > paper[1] - 5 * mm || $5 > paper[2] - 4 * mm {
			print "page", $1 ":", $6, "is outside"
			found = 1
		}
		END { exit found || NR == 0 }'
}

# The box of a word is 1.59 capitals high: of 2.5 mm, the least height of lettering, 3.98 mm.
# Words of a few narrow signs may be narrower than they are high, and cannot tell.
too_small() {
	words "$1" | awk '
		length($6) < 6 { next }
		{ seen = 1; w = $4 - $2; h = $5 - $3; least = w < h ? w : h }
		least < 3.97 * 72 / 25.4 { print "page", $1 ":", $6, "is too small"; found = 1 }
		END { exit found || !seen }'
}

# Every id of the plan in capitals; of rooms the name, where there is one.
unnamed() {
	pdftotext "$2" "$TMPDIR/text" || return
	status=0
	kinds='wall|corner|obstacle|doorway|crack|slab-joint|slab|tile|lay|membrane'
	for id in $(grep -o -E "<($kinds) id=\"[^\"]*\"" "$1" | cut -d'"' -f2 | tr a-z A-Z); do
		grep -q -F -e "$id" "$TMPDIR/text" || { echo "not on the sheets: $id"; status=1; }
	done
	return $status
}

# Draws plan $1 with the options that follow, and reads the sheets back.
read_back() {
	plan=$1 folder=$TMPDIR/drawn
	shift
	name="$(basename "$plan" .xml)${*:+ $*}"
	rm -rf "$folder"
	check "$name is drawn" "$JURYSTICK" draw "$plan" -o "$folder" --as pdf "$@"
	pdf=$folder/set.pdf
	check "$name: no texts touch" touching "$pdf"
	check "$name: nothing outside the frame" outside "$pdf"
	check "$name: no lettering under its least height" too_small "$pdf"
	check "$name: every element is named" unnamed "$plan" "$pdf"
}

# The sheets a crew and an engineer work from, of rooms of every kind.
for plan in tests/rooms/*.xml; do
	read_back "$plan" --sheet install,slab
done
# Longer words.
for plan in demo-plans/*.xml; do
	read_back "$plan" --words es
done
for plan in demo-plans/*.xml tests/golden/*.xml; do
	read_back "$plan"
done
# A floor in parts: at a scale too large for its paper. Each match line names the sheet where
# the floor goes on, and that sheet names it back.
cross_referenced() {
	for page in $(seq 2 "$(pdfinfo "$1" | sed -n 's/^Pages: *//p')"); do
		pdftotext -raw -f "$page" -l "$page" "$1" - | tr '\n' ' ' |
			grep -o 'GOES ON ON install-[a-z0-9-]*' | sed "s/.* /$page /"
	done >"$TMPDIR/references"
	awk '{ from[NR] = $1; to[NR] = $2; n = NR }
		END {
			for (i = 1; i <= n; i++) {
				part = to[i] ~ /-[0-9]+$/ ? to[i] : to[i] "-1"
				sub(/.*-/, "", part)
				pair[from[i] - 1, part + 0] = 1
			}
			for (key in pair) {
				split(key, side, SUBSEP)
				if (!((side[2], side[1]) in pair)) { print "not back:", key; bad = 1 }
			}
			exit bad || n < 8
		}' "$TMPDIR/references"
}
read_back tests/rooms/two-rooms-one-doorway.xml --scale 1:20 --sheet install,slab
read_back tests/golden/pantry.xml --scale 1:10
read_back tests/golden/pantry.xml --sheet read-first,install --scale 1:10
check "match lines name each other's sheets" cross_referenced "$pdf"

# The checks themselves see what they look for: one sheet printed over the other.
check "a page over another is seen to touch" sh -c '
	qpdf "$1" --pages . 1 -- "$1.one" && qpdf "$1" --pages . 2 -- "$1.two" &&
	qpdf "$1.one" --overlay "$1.two" -- "$1.both"' - "$pdf"
not_touching() { ! touching "$1"; }
check "so texts that touch are found" not_touching "$pdf.both"
check "a sheet on half its paper is seen to be too small" sh -c '
	pdftocairo -pdf -paperw 420 -paperh 300 "$1" "$1.half"' - "$pdf"
not_readable() { ! too_small "$1"; }
check "so small lettering is found" not_readable "$pdf.half"
