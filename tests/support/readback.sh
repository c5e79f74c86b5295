# readback.sh - what stands on sheets, read back from their PDF and from their traces: each
# function names what it finds wrong and fails. A test sources it after tap.sh.

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

# Texts of a trace as "cap role layer element x y text".
trace_texts() {
	awk '$3 == "text" { print $6, $4, $1, $2, $7, $0 }' "$@"
}

# On a plan every text is at least 3.5 mm high, and on every sheet every dimension is; 2.5 mm is
# for tables, legends, the title block and the references of the frame. $@: traces.
small_on_plan() {
	for trace in "$@"; do
		awk -v name="$(basename "$trace")" '
			$3 != "text" { next }
			{ role = $4; cap = $6 + 0 }
			role ~ /^(table|table-head|frame)$/ { next }
			cap < 3.2 - 0.3 * (role != "dimension") {
				print name ": small:", $0
				found = 1
			}
			END { exit found }' "$trace" || return
	done
}

# From a point to a stretch of line, for the checks below.
near_line='
	function near(x, y, a, b, c, d,   t, l) {
		l = (c - a) * (c - a) + (d - b) * (d - b)
		t = l > 0 ? ((x - a) * (c - a) + (y - b) * (d - b)) / l : 0
		t = t < 0 ? 0 : t > 1 ? 1 : t
		return sqrt((x - a - t * (c - a)) ^ 2 + (y - b - t * (d - b)) ^ 2)
	}'

# Each tag stands within 40 mm of what it names, or has a leader that ends there (R-D14). Of a tag
# with an element: the nearest mark of that element which is no lettering of it. $@: traces.
untagged() {
	for trace in "$@"; do
		awk -v name="$(basename "$trace")" "$near_line"'
			# least distance of the text from x on to the lines that stand from field 5 on
			function distance(line, x, y, wide,   least, k, d) {
				least = 1e9
				for (k = 0; k <= 4; k++) {
					d = point_distance(line, x + k * wide / 4, y)
					if (d < least) least = d
				}
				return least
			}
			function point_distance(line, x, y,   n, f, i, p, q, least, has, d) {
				n = split(line, f, " "); least = 1e9; has = 0
				for (i = 5; i <= n; i++) {
					if (f[i] !~ /^-?[0-9.]+,-?[0-9.]+$/) { has = 0; continue }
					split(f[i], q, ",")
					d = has ? near(x, y, p[1], p[2], q[1], q[2]) : near(x, y, q[1], q[2], q[1], q[2])
					if (d < least) least = d
					p[1] = q[1]; p[2] = q[2]; has = 1
				}
				return least
			}
			$2 == "-" { next }
			$3 == "stroke" && $4 == "leader" { leader[$2, ++leaders[$2]] = $0; next }
			$3 != "text" && $1 != "labels" { mark[$2, ++marks[$2]] = $0 }
			$3 == "text" && $1 == "labels" && $4 == "tag" { tag[++tags] = $0 }
			END {
				for (i = 1; i <= tags; i++) {
					split(tag[i], f, " "); split(f[7], at, ",")
					text = tag[i]; sub(/^[^"]*"/, "", text)
					# a sign of the font is about 0.62 capitals wide
					wide = f[5] == "level" ? 0.62 * f[6] * length(text) : 0
					least = 1e9
					for (k = 1; k <= leaders[f[2]]; k++) {
						d = distance(leader[f[2], k], at[1], at[2], wide)
						if (d < least) least = d
					}
					for (k = 1; k <= marks[f[2]]; k++) {
						d = distance(mark[f[2], k], at[1], at[2], wide)
						if (d < least) least = d
					}
					if (marks[f[2]] > 0 && least > 40) {
						print name ": far from what it names:", least, tag[i]
						found = 1
					}
				}
				exit found
			}' "$trace" || return
	done
}

# A leader ends on what it names: on a line of it, or in an area of it. $@: traces.
misled() {
	for trace in "$@"; do
		awk -v name="$(basename "$trace")" "$near_line"'
			function edge(a, b,   p, q, d) {
				split(a, p, ","); split(b, q, ",")
				d = near(x, y, p[1], p[2], q[1], q[2])
				if (d < least) least = d
				if ((p[2] > y) != (q[2] > y) &&
				    x < p[1] + (q[1] - p[1]) * (y - p[2]) / (q[2] - p[2]))
					crossed++
			}
			# sets least and crossed for the point (x, y) against a line of the trace
			function against(line,   n, f, i, start, before, is_open) {
				n = split(line, f, " ")
				start = before = ""
				for (i = 5; i <= n; i++) {
					if (f[i] !~ /^-?[0-9.]+,-?[0-9.]+$/) {
						if (before != "" && !is_open) edge(before, start)
						is_open = f[i] == "open"; start = before = ""
						continue
					}
					if (before != "") edge(before, f[i])
					else { start = f[i]; edge(f[i], f[i]) }
					before = f[i]
				}
				if (before != "" && !is_open) edge(before, start)
			}
			$2 == "-" { next }
			$3 == "stroke" && $4 == "leader" { leader[++leaders] = $0; next }
			$3 != "text" && $1 != "labels" { mark[$2, ++marks[$2]] = $0 }
			END {
				for (i = 1; i <= leaders; i++) {
					n = split(leader[i], f, " "); split(f[n], at, ",")
					x = at[1]; y = at[2]; least = 1e9; is_in = 0
					for (k = 1; k <= marks[f[2]]; k++) {
						crossed = 0
						against(mark[f[2], k])
						is_in = is_in || crossed % 2
					}
					if (marks[f[2]] > 0 && !is_in && least > 1.5) {
						print name ": leads past what it names:", least, leader[i]
						found = 1
					}
				}
				exit found
			}' "$trace" || return
	done
}

# The printed members of a chain add up to its overall as printed, to the printed unit: of chains
# whose values all stand between their ticks, where the same element has a line of one member
# between the same ends. Adds to $TMPDIR/added how many were added up. $@: traces.
chains_off() {
	for trace in "$@"; do
		awk -v name="$(basename "$trace")" -v out="$TMPDIR/added" '
			# of 64ths of an inch, or mm
			function value(text,   feet, part, whole) {
				feet = 0
				if (text !~ /["\047]/) return text + 0
				if (match(text, /^[0-9]+\047-?/)) {
					feet = substr(text, 1, RLENGTH) + 0
					text = substr(text, RLENGTH + 1)
				}
				sub(/"$/, "", text)
				whole = 0
				if (text ~ /^[0-9]+( |$)/) { whole = text + 0; sub(/^[0-9]+ ?/, "", text) }
				if (split(text, part, "/") == 2) whole += part[1] / part[2]
				return 64 * (12 * feet + whole)
			}
			function near(a, b) { return a - b < 0.02 && b - a < 0.02 }
			$1 == "dimensions" && $3 == "stroke" && $4 == "tick" {
				count = 0
				for (i = 5; i + 2 <= NF; i += 3) {
					split($(i + 1), a, ","); split($(i + 2), b, ",")
					x[count] = (a[1] + b[1]) / 2; y[count++] = (a[2] + b[2]) / 2
				}
				if (count < 2) next
				level = near(y[0], y[count - 1])
				if (!level && !near(x[0], x[count - 1])) next
				chain[++chains] = count; element[chains] = $2; is_level[chains] = level
				for (i = 0; i < count; i++) {
					along[chains, i] = level ? x[i] : -y[i]
					across[chains] = level ? y[0] : x[0]
				}
			}
			$1 == "dimensions" && $3 == "text" && $4 == "dimension" {
				split($7, a, ","); text = $0; sub(/^[^"]*"/, "", text); sub(/"$/, "", text)
				lay[++texts] = $5; of[texts] = $2; amount[texts] = value(text)
				at[texts] = $5 == "level" ? a[1] : -a[2]
				off[texts] = $5 == "level" ? a[2] : a[1]
			}
			# the value over the member from the i-th tick on; -1: it is not there
			function member(c, i,   t, clear) {
				for (t = 1; t <= texts; t++) {
					clear = across[c] - off[t]
					if (of[t] == element[c] && lay[t] == (is_level[c] ? "level" : "upright") &&
						clear > 0 && clear < 3 && at[t] > along[c, i] &&
						at[t] < along[c, i + 1]) return amount[t]
				}
				return -1
			}
			END {
				for (c = 1; c <= chains; c++) {
					if (along[c, 0] > along[c, chain[c] - 1]) continue
					sum = 0
					for (i = 0; i + 1 < chain[c]; i++) {
						m = member(c, i)
						sum = m < 0 || sum < 0 ? -1 : sum + m
					}
					if (sum < 0 || chain[c] < 3) continue
					for (k = 1; k <= chains; k++) {
						if (chain[k] != 2 || element[k] != element[c] ||
							is_level[k] != is_level[c] || !near(along[k, 0], along[c, 0]) ||
							!near(along[k, 1], along[c, chain[c] - 1])) continue
						whole = member(k, 0)
						if (whole < 0) continue
						added++
						if (sum != whole) {
							print name ": a chain of", element[c], "adds up to", sum, "of", whole
							found = 1
						}
					}
				}
				print added + 0 >>out
				exit found
			}' "$trace" || return
	done
}

# The schedule of joints says what the record says: tag, width, depth, length, turns. $1: record,
# others: traces of the joints sheets, of a plan in mm.
schedule_differs() {
	record=$1
	shift
	sed -n 's/.*<joint id="\([^"]*\)" kind="\([^"]*\)".* width="\([^"]*\)" depth="\([^"]*\)" back="\([^"]*\)" length="\([^"]*\)" turns="\([^"]*\)".*/\1 \3 \4 \6 \7/p' "$record" |
		tr a-z A-Z | awk '{ print $1, $4, int($5) + ($5 > int($5)) }' | sort >"$TMPDIR/recorded"
	for trace in "$@"; do
		awk '$3 == "text" && $1 == "notes" && $4 ~ /^table/ {
			split($7, at, ","); text = $0; sub(/^[^"]*"/, "", text); sub(/"$/, "", text)
			if ($4 == "table-head") { head[++heads] = at[1]; next }
			column = 0
			while (column < heads && head[column + 1] <= at[1] + 0.5) column++
			# A long table stands several times side by side, with ten columns each time.
			block = int((column - 1) / 10); column = (column - 1) % 10 + 1
			cell[block, at[2], column] = text
			if (column == 1) row[block, at[2]] = text
		}
		END {
			# Tag is the first column, Length the seventh, Turns the eighth.
			if (heads > 0 && heads % 10 == 0)
				for (y in row) print row[y], cell[y, 7] + 0, cell[y, 8] + 0
		}' "$trace"
	done | sort >"$TMPDIR/scheduled"
	join -a 1 -a 2 -e missing -o 0,1.2,1.3,2.2,2.3 "$TMPDIR/recorded" "$TMPDIR/scheduled" | awk '
		{ off = $2 - $4 }
		# to the printed mm; the record has six decimals more
		off > 0.500001 || off < -0.500001 || $3 != $5 { print; found = 1 }
		END { exit found || NR == 0 }'
}
