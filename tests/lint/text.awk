# text.awk - what no file here holds: absolute paths ("paths"), blanks at line ends
# ("blanks"). Input: text files, named from the root.

function report(check, word, text) {
	printf "%s:%d: %s: %s: %s\n", FILENAME, FNR, check, word, text
}

{
	line = $0
	# The two places where such a path is a default that the caller may change.
	gsub(/\$[{]TMPDIR:-[\/]tmp[}]/, "", line)
	gsub(/PREFIX *[?]= *[\/]usr[\/]local/, "", line)
	gsub(/PREFIX=[\/]usr[\/]local/, "", line)
	if (match(" " line, /[^A-Za-z0-9_.$})*\/~-]\/(usr|home|work|tmp|opt|root|var|etc|mnt|srv)([^A-Za-z0-9_]|$)/))
		report("paths", substr(line, RSTART, RLENGTH), "a path of one machine")
}

/[ \t]$/ { report("blanks", "end", "blanks at the end of the line") }
