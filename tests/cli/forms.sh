# The SVG and PDF of every demo as people work in them: true size, named layers, words that can
# be searched and are the same in both; outline, labels, links that lead somewhere, structure.
. tests/support/tap.sh

# ---- SVG ----

sized_in_mm() { # FILE PDF: the width and height of the first page, in mm to a tenth.
	pdfinfo "$2" | sed -n 's/^Page size: *\([0-9.]*\) x \([0-9.]*\).*/\1 \2/p' |
		awk -v svg="$(xmllint --xpath 'concat(/*/@width, " ", /*/@height, " ", /*/@viewBox)' "$1")" '
			{
				split(svg, s, " ")
				bad = s[1] !~ /mm$/ || s[2] !~ /mm$/
				x = $1 * 25.4 / 72 - s[1]; y = $2 * 25.4 / 72 - s[2]
				u = s[5] / 100 - s[1]; v = s[6] / 100 - s[2]
				if (bad || x * x > 0.01 || y * y > 0.01 || u * u > 1e-6 || v * v > 1e-6) {
					print svg, "on", $0
					exit 1
				}
			}'
}

layered() { # Every group right under the root is a layer by name, each once, in order.
	order='sheet slab cuts membrane tile cracks holds joints control dimensions labels notes changes'
	xmllint --xpath '/*/*[local-name()="g"]/@id' "$1" | grep -o '"[a-z]*"' | tr -d '"' |
		awk -v order="$order" '
			BEGIN { n = split(order, o, " "); for (i = 1; i <= n; i++) rank[o[i]] = i }
			!($1 in rank) || rank[$1] <= last { print "layer", $1; bad = 1 }
			{ last = rank[$1] }
			END { exit bad || NR == 0 }'
}

told() { # A title and a description, and the root says that they are its name.
	[ "$(xmllint --xpath 'count(/*/*[1][local-name()="title"][@id="title"][string-length() > 3])' "$1")" = 1 ] &&
		[ "$(xmllint --xpath 'count(/*/*[2][local-name()="desc"][@id="about"][string-length() > 20])' "$1")" = 1 ] &&
		[ "$(xmllint --xpath 'string(/*/@aria-labelledby)' "$1")" = 'title about' ]
}

# All texts of a sheet, from both of its forms. What reads a PDF parts words where it sees a gap,
# so blanks do not count.
same_words() {
	xmllint --xpath '//*[local-name()="text"]/text()' "$1" | sed 's/\xc2\xa0//g' | tr -d ' ' |
		sed 's/&lt;/</g; s/&gt;/>/g; s/&amp;/\&/g; s/&quot;/"/g' >"$TMPDIR/svg.words"
	pdftotext -raw -f "$3" -l "$3" "$2" - | sed 's/\xc2\xa0//g' | tr -d ' \f\n' >"$TMPDIR/pdf.words"
	awk 'NR == FNR { all = $0; next }
		!index(all, $0) { print "not in the PDF:", $0; bad = 1 }
		{ n++; length_of_all += length($0) }
		END {
			if (length_of_all != length(all)) { print length_of_all, "signs, in the PDF", length(all); bad = 1 }
			exit bad || n < 20
		}' "$TMPDIR/pdf.words" "$TMPDIR/svg.words"
}

look_at_svgs() { # FOLDER PLAN: of every sheet; the first that fails is told.
	number=0
	xmllint --xpath '//*[local-name()="section"][@class="sheet"]/@id' "$1/set.html" |
		grep -o 'sheet-[^"]*' | sed 's/^sheet-//' >"$TMPDIR/sheets"
	while read -r sheet; do
		number=$((number + 1))
		svg=$1/$sheet.svg
		sized_in_mm "$svg" "$1/set.pdf" && layered "$svg" && told "$svg" &&
			same_words "$svg" "$1/set.pdf" "$number" || { echo "sheet $sheet"; return 1; }
	done <"$TMPDIR/sheets"
	[ "$number" -gt 5 ]
}

# Each crack, slab joint, obstacle, doorway and room of the plan is a group by its id somewhere.
named_groups() {
	grep -o -E '<(room|obstacle|doorway|crack|slab-joint) id="[^"]*"' "$2" | cut -d'"' -f2 |
		while read -r id; do
			grep -q -F "<g data-id=\"$id\">" "$1"/*.svg || { echo "no group for $id"; exit 1; }
		done
}

# ---- PDF ----

plain() {
	qpdf --qdf --object-streams=disable "$1" - | tr -d '\000'
}
labels_are() { # Page labels in order are the sheets' names.
	# install-bay-2 is kept as a prefix and a number.
	plain "$1" | sed -n '/\/PageLabels/,/endobj/p; /\/Nums \[/,/\]/p' >"$TMPDIR/labels"
	while read -r sheet; do
		prefix=$(echo "$sheet" | sed 's/[0-9]*$//')
		grep -q -a -F "/P ($prefix" "$TMPDIR/labels" || { echo "no label of $sheet"; return 1; }
	done <"$TMPDIR/sheets"
}
outline_is() { # One entry a sheet.
	[ "$(plain "$1" | grep -a -c '^  /Parent .*$')" -gt 0 ] &&
		[ "$(qpdf --json --json-key=outlines "$1" | grep -c '"title"')" = "$(wc -l <"$TMPDIR/sheets")" ]
}
# Where a link leads is among the named places, and the list of sheets links to each of them.
links_lead() {
	plain "$1" >"$TMPDIR/plain"
	# Each link, and each entry of the outline, has a place.
	links=$(grep -a -c '/Subtype /Link' "$TMPDIR/plain") to=$(grep -a -c '/Dest [[(]' "$TMPDIR/plain")
	[ "$to" = $((links + $(wc -l <"$TMPDIR/sheets"))) ] || { echo "$links links, $to places"; return 1; }
	pdfinfo -dests "$1" | grep -o '"[^"]*"' | tr -d '"' | sort >"$TMPDIR/places"
	sort "$TMPDIR/sheets" | comm -23 - "$TMPDIR/places" >"$TMPDIR/missing"
	[ ! -s "$TMPDIR/missing" ] || { cat "$TMPDIR/missing"; return 1; }
	# First sheets of a kind stand in the list: those without a number at the end.
	listed=$(pdfinfo -struct "$1" 2>/dev/null | awk -v pages="$(grep -c '^read-first' "$TMPDIR/sheets")" '
		/^  Sect/ { page++ }
		page <= pages && /Link/ { n++ }
		END { print n + 0 }')
	[ "$listed" -ge "$(($(grep -c -v -E -e '-[0-9]+$' "$TMPDIR/sheets") - 1))" ] ||
		{ echo "links in the list of sheets: $listed"; return 1; }
}
metadata_is() { # PDF PLAN
	title=$(xmllint --xpath 'string(/floor/@title)' "$2") date=$(xmllint --xpath 'string(/floor/job/@date)' "$2")
	pdfinfo -isodates "$1" >"$TMPDIR/info"
	grep -q -F "Title:           $title" "$TMPDIR/info" && grep -q 'Subject:  *Shop drawings' "$TMPDIR/info" &&
		grep -q 'Tagged:  *yes' "$TMPDIR/info" && grep -q "CreationDate:  *$date" "$TMPDIR/info" &&
		plain "$1" | grep -q -a '/Lang (en)' && plain "$1" | grep -q -a '/DisplayDocTitle true'
}
fonts_are() { # Embedded, subset, with the meaning of each sign.
	pdffonts "$1" | awk 'NR > 2 { n++; if ($0 !~ /^[A-Z]+\+/ || $0 !~ / yes yes yes /) { print; bad = 1 } }
		END { exit bad || n < 2 }'
}
# One document, a part with a title a sheet; notes come as whole sentences, words apart. The reader
# has nothing to say against it.
structured() {
	pdfinfo -struct-text "$1" >"$TMPDIR/structure" 2>"$TMPDIR/said"
	[ ! -s "$TMPDIR/said" ] && [ "$(grep -c '^Document' "$TMPDIR/structure")" = 1 ] &&
		[ "$(grep -c '^  Sect' "$TMPDIR/structure")" = "$(wc -l <"$TMPDIR/sheets")" ] &&
		[ "$(grep -c 'H1 (block)' "$TMPDIR/structure")" = "$(wc -l <"$TMPDIR/sheets")" ] &&
		grep -q -F "Makers' instructions, local code and licensed practice come first. \"" "$TMPDIR/structure"
}

# Each figure says what it shows: its sheet's title, and a layer of it.
figures_are_told() {
	qpdf --qdf --object-streams=disable "$1/set.pdf" "$TMPDIR/plain.pdf"
	while read -r sheet; do
		xmllint --xpath 'string(/*/*[local-name()="title"])' "$1/$sheet.svg"
	done <"$TMPDIR/sheets" >"$TMPDIR/titles"
	qpdf --show-pages "$TMPDIR/plain.pdf" | sed -n 's/^page [0-9]*: \([0-9]* 0 R\)$/\1/p' >"$TMPDIR/pages"
	tr -d '\000' <"$TMPDIR/plain.pdf" | awk -v titles="$TMPDIR/titles" -v pages="$TMPDIR/pages" '
		BEGIN { while ((getline t <titles) > 0 && (getline p <pages) > 0) title[p] = t }
		/^[0-9]+ 0 obj$/ { alt = page = "" }
		/^  \/Alt \(.*\)$/ { alt = substr($0, 9, length($0) - 9); gsub(/\\/, "", alt) }
		/^  \/Pg / { page = substr($0, 7) }
		/^  \/S \/Figure$/ {
			n++
			if (title[page] == "" || index(alt, title[page] ": ") != 1 || length(alt) < length(title[page]) + 5) {
				print "page", page, title[page], "figure:", alt
				bad = 1
			}
		}
		END { exit bad || n < 20 }'
}

for plan in demo-plans/*.xml; do
	name=$(basename "$plan" .xml) out=$TMPDIR/$name
	check "$name: drawn" "$JURYSTICK" draw "$plan" -o "$out" --as svg,pdf,html
	check "$name: every SVG at true size, in layers, told, with the words of the PDF" look_at_svgs "$out" "$plan"
	check "$name: every element is a group of its own" named_groups "$out" "$plan"
	check "$name: PDF structure" qpdf --check "$out/set.pdf"
	check "$name: an outline of the sheets" outline_is "$out/set.pdf"
	check "$name: pages are called as the sheets are" labels_are "$out/set.pdf"
	check "$name: links lead to places that are there" links_lead "$out/set.pdf"
	check "$name: title, subject, date, language" metadata_is "$out/set.pdf" "$plan"
	check "$name: fonts are embedded as subsets" fonts_are "$out/set.pdf"
	check "$name: it can be read aloud" structured "$out/set.pdf"
	check "$name: its figures are told" figures_are_told "$out"
done
