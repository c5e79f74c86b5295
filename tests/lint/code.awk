# code.awk - what C code here does not do: banned calls ("calls"), fractions through printf
# ("fractions"), struct typedefs ("typedefs"); files and functions too long ("length").
# Input: C files, named from the root.

BEGIN {
	LONGEST_FILE = 500
	LONGEST_FUNCTION = 60
	WIDEST = 100
	TAB = 8
	unsafe = "no bound, or no way to see that it failed"
	ban("strcpy strcat sprintf vsprintf gets strtok atoi atol atoll atof alloca", unsafe)
	ban("tmpnam tempnam mktemp system popen signal", unsafe)
	locale = "the locale must not reach an output; use units/number.h"
	ban("setlocale strtod strtof strtold localeconv", locale)
	ban("time clock localtime gmtime gettimeofday clock_gettime getenv secure_getenv", "same input, same bytes")
	ban("rand srand random srandom drand48 gethostname getpid", "same input, same bytes")
	fused = "its last digit depends on the processor; see DEVELOPERS.md"
	ban("sin cos tan sincos asin acos atan atan2 exp exp2 expm1 pow log log2 log10 log1p fma", fused)
	ban("sinf cosf tanf atan2f expf powf logf fmaf", fused)
}

function ban(list, reason, words, n, i) {
	n = split(list, words, " ")
	for (i = 1; i <= n; i++)
		banned[words[i]] = reason
}

function report(check, word, text) {
	printf "%s:%d: %s: %s: %s\n", FILENAME, FNR, check, word, text
}

# Leaves the code of a line in `code` and its string literals in `literals`.
function split_line(line, at, c, stop) {
	code = literals = ""
	while (line != "") {
		if (in_comment) {
			at = index(line, "*/")
			if (!at)
				return
			in_comment = 0
			line = substr(line, at + 2)
		}
		if (!match(line, /["'\/]/)) {
			code = code line
			return
		}
		at = RSTART
		c = substr(line, at, 1)
		code = code substr(line, 1, at - 1)
		if (c == "/") {
			if (substr(line, at, 2) == "//")
				return
			in_comment = substr(line, at, 2) == "/*"
			if (!in_comment)
				code = code "/"
			line = substr(line, at + 1 + in_comment)
			continue
		}
		stop = closing(line, at, c)
		if (c == "\"")
			literals = literals substr(line, at, stop - at + 1)
		code = code c c
		line = substr(line, stop + 1)
	}
}

function closing(line, at, quote, c) {
	for (at++; at <= length(line); at++) {
		c = substr(line, at, 1)
		if (c == "\\")
			at++
		else if (c == quote)
			return at
	}
	return length(line)
}

function look_at_calls(rest, name) {
	rest = code
	while (match(rest, /[A-Za-z_][A-Za-z_0-9]*[ \t]*\(/)) {
		name = substr(rest, RSTART, RLENGTH - 1)
		sub(/[ \t]+$/, "", name)
		if (name in banned && substr(rest, RSTART - 1, 1) !~ /[.>]/)
			report("calls", name, banned[name])
		rest = substr(rest, RSTART + RLENGTH)
	}
}

function look_at_formats(text) {
	text = literals
	gsub(/%%/, "", text)
	if (match(text, /%[-+#0]*[0-9*]*([.][0-9*]*)?[lL]?[aefgAEFG]/))
		report("fractions", substr(text, RSTART, RLENGTH), "the locale would write the point")
}

function width(line, n, i, columns) {
	n = length(line)
	for (i = 1; i <= n && substr(line, i, 1) == "\t"; i++)
		columns += TAB
	return columns + n - i + 1
}

function end_of_file() {
	if (lines > LONGEST_FILE)
		printf "%s:%d: length: file: %d lines, %d are the most\n", last_file, last_line,
			lines, LONGEST_FILE
}

FNR == 1 {
	end_of_file()
	lines = in_comment = in_table = in_function = 0
	is_product = FILENAME ~ /(^|\/)src\//
	last_file = FILENAME
}

{
	last_line = FNR
	split_line($0)
	if (is_product && FILENAME !~ /src\/units\/number[.]c$/) {
		look_at_calls()
		look_at_formats()
	}
	if (code ~ /^typedef[ \t]+(struct|union|enum)/)
		report("typedefs", "typedef", "write the tag")
	if (width($0) > WIDEST)
		report("length", "line", width($0) " columns, " WIDEST " are the most")
}

# Tables are data: their lines do not count.
/^[a-z].*\[.*= *\{$/ { in_table = 1 }
!in_table { lines++ }
/^\};$/ { in_table = 0 }

/^\{$/ { in_function = FNR }
/^\}$/ {
	if (in_function && FNR - in_function - 1 > LONGEST_FUNCTION)
		report("length", "function", (FNR - in_function - 1) " lines, " LONGEST_FUNCTION \
			" are the most")
	in_function = 0
}

END { end_of_file() }
