# includes.awk - who may include whom: layers one way (check "layers"), no cycle ("cycles"),
# foreign headers behind their fences ("fences").
# -v layers="lowest ... highest"; input: the files of src/, named from there.

BEGIN {
	count = split(layers, names, " ")
	for (i = 1; i <= count; i++)
		rank[names[i]] = i

	std("assert ctype errno fenv float inttypes iso646 limits locale math setjmp signal")
	std("strings stdalign stdarg stdatomic stdbool stddef stdint stdio stdlib stdnoreturn string")
	std("tgmath time wchar wctype")
	# Header prefix, files that may include it.
	fence("libxml/", "^plan/[a-z_]*_xml[.][ch]$")
	fence("geos_c.h", "^geometry/overlay[.]c$")
	drawn = "^(text/[a-z_0-9]*[.]c|text/[a-z_]*_(pango|ft)[.]h|drawing/canvas_[a-z]*[.][ch])$"
	fence("pango/", drawn)
	fence("cairo", drawn)
	fence("fontconfig/", drawn)
	fence("ft2build.h", drawn)
	fence("freetype", drawn)
	fence("hb", drawn)
	fence("png.h", drawn)
	fence("glib", drawn)
	# The operating system is met in cli alone: no producer opens a file.
	fence("unistd.h", "^cli/")
	fence("fcntl.h", "^cli/")
	fence("dirent.h", "^cli/")
	fence("sys/", "^cli/")
}

function std(list, words, n, i) {
	n = split(list, words, " ")
	for (i = 1; i <= n; i++)
		standard[words[i] ".h"] = 1
}

function fence(prefix, inside) {
	prefixes[++fences] = prefix
	insides[fences] = inside
}

function report(check, word, text) {
	printf "src/%s:%d: %s: %s: %s\n", file, FNR, check, word, text
}

function folder(path) {
	return path ~ /\// ? substr(path, 1, index(path, "/") - 1) : ""
}

function foreign(header, i) {
	if (header in standard)
		return
	for (i = 1; i <= fences; i++) {
		if (index(header, prefixes[i]) != 1)
			continue
		if (file !~ insides[i])
			report("fences", header, "only " insides[i] " may include it")
		return
	}
	report("fences", header, "no fence is known for this header")
}

function own(header) {
	if (!(folder(header) in rank)) {
		report("layers", header, "write it from src/, with its layer")
		return
	}
	if (rank[folder(header)] > rank[folder(file)])
		report("layers", header, folder(header) " lies above " folder(file))
	# Headers need headers; a .c needs the .c whose header it includes.
	if (file ~ /[.]h$/)
		edge(file, header)
	else
		edge(file, substr(header, 1, length(header) - 2) ".c")
}

function edge(from, to) {
	if (from != to) {
		edges[from] = edges[from] " " to
		where[from, to] = FNR
	}
}

FNR == 1 {
	file = FILENAME
	if (!(folder(file) in rank))
		report("layers", folder(file), "no layer has this name")
	if (!(file in known)) {
		known[file] = 1
		order[++files] = file
	}
}

/^[ \t]*#[ \t]*include[ \t]*"/ {
	split($0, part, "\"")
	own(part[2])
}

/^[ \t]*#[ \t]*include[ \t]*</ {
	split($0, part, /[<>]/)
	foreign(part[2])
}

# Depth first; `trail` is the way here.
function visit(node, trail, next_ones, n, i, to) {
	state[node] = 1
	n = split(edges[node], next_ones, " ")
	for (i = 1; i <= n; i++) {
		to = next_ones[i]
		if (!(to in known))
			continue
		if (state[to] == 1)
			printf "src/%s:%d: cycles: %s: back to it by%s %s\n", node, where[node, to], to,
				trail, node
		else if (!state[to])
			visit(to, trail " " node)
	}
	state[node] = 2
}

END {
	for (f = 1; f <= files; f++)
		if (!state[order[f]])
			visit(order[f], "")
}
