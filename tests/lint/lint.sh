#!/bin/sh
# lint.sh [ROOT] - the rules of the house, one TAP line a check. Findings read
# `FILE:LINE: CHECK: WORD: text`. What is allowed all the same stands, with its reason, in
# tests/lint/exceptions.
set -u

here=$(cd "$(dirname "$0")" && pwd)
cd "${1:-$here/../..}" || exit 2
found=$(mktemp) || exit 2
trap 'rm -f "$found" "$found".*' EXIT

layers='base units geometry text drawing rules words plan site pattern layout findings count
	record compare sheets screen cli'

# Every file that is, or would be, committed; without git every file outside build/.
git ls-files -co --exclude-standard >"$found.files" 2>/dev/null && [ -s "$found.files" ] ||
	find . -path ./build -prune -o -path ./.git -prune -o -type f -print |
	sed 's|^\./||' >"$found.files"
sort "$found.files" | while read -r file; do [ ! -f "$file" ] || echo "$file"; done >"$found.all"

files() {
	grep -E "$1" "$found.all"
}

on() { # on PATTERN COMMAND...: the command with all files that match.
	pattern=$1
	shift
	files "$pattern" >"$found.list" || return 0
	xargs "$@" <"$found.list"
}

look_at_includes() {
	[ -d src ] || return 0
	files '^src/.*\.[ch]$' | sed 's|^src/||' >"$found.list"
	(cd src && xargs awk -v layers="$(echo $layers)" -f "$here/includes.awk" <"$found.list")
}

# Each header compiles alone and has the guard of its name.
look_at_headers() {
	files '^src/.*\.h$' | sed 's|^src/||' | while read -r header; do
		guard=$(echo "$header" | tr 'a-z/.' 'A-Z__')
		grep -q "^#ifndef $guard\$" "src/$header" ||
			echo "src/$header:1: headers: guard: $guard is expected"
		printf '#include "%s"\n' "$header" |
			${CC:-gcc} -std=c11 -D_XOPEN_SOURCE=700 -Isrc ${PKG_CFLAGS:-} -Wall -Wextra -Werror \
				-fsyntax-only -x c - >"$found.cc" 2>&1 ||
			echo "src/$header:1: headers: alone: $(grep -m 1 error "$found.cc")"
	done
}

look_at_tree() {
	sed 's|/.*||' "$found.all" | sort -u | while read -r entry; do
		case $entry in
		README.md | DEVELOPERS.md | Makefile | src | styles | tests | demo-plans | docs | .*) ;;
		*) echo "$entry:0: tree: top: not one of the entries of the top level" ;;
		esac
	done
}

# Nothing in the library changes while it runs: no writable data. A sanitizer adds its own.
look_at_globals() {
	library=${BUILD:-build}/libjurystick.a
	[ -z "${SANITIZE:-}" ] && [ -f "$library" ] || return 0
	objdump -t "$library" | awk '
		/:  *file format/ { file = $1; sub(/:$/, "", file) }
		$3 == "O" && $4 ~ /^\.(data|bss|tdata|tbss)/ || $4 == "O" && $5 ~ /^\.(data|bss)/ {
			section = $3 == "O" ? $4 : $5
			if (section !~ /^\.data\.rel\.ro/)
				printf "%s:0: globals: %s: changes while the program runs\n", file, $NF
		}'
}

{
	look_at_includes
	on '^(src|tests)/.*\.(c|h|cpp|hpp)$' awk -f "$here/code.awk"
	on '(\.(c|h|cpp|hpp|sh|awk|md|rules|words|style|css|js)|^Makefile|^\.ci/.*|^tests/run)$' \
		awk -f "$here/text.awk"
	look_at_headers
	look_at_tree
	look_at_globals
} >"$found"

# Takes the exceptions out; one that meets nothing is itself a finding.
[ ! -f tests/lint/exceptions ] || cp tests/lint/exceptions "$found.allowed"
touch "$found.allowed"
awk '
	FILENAME == ARGV[1] {
		if ($0 !~ /^(#|$)/) {
			key = $1 " " $2 " " $3
			allowed[key] = FNR
			if (NF < 4)
				printf "tests/lint/exceptions:%d: exceptions: %s: no reason given\n", FNR, $2
		}
		next
	}
	{
		split($0, part, ": ")
		path = part[1]
		sub(/:[0-9]+$/, "", path)
		key = part[2] " " path " " part[3]
		if (key in allowed)
			used[key] = 1
		else
			print
	}
	END {
		for (key in allowed)
			if (!(key in used))
				printf "tests/lint/exceptions:%d: exceptions: %s: allows nothing\n",
					allowed[key], key
	}' "$found.allowed" "$found" | sort >"$found.left"

status=0
for check in layers cycles fences calls fractions typedefs length headers globals paths blanks \
	tree exceptions; do
	if grep -E "^[^ ]*: $check: " "$found.left"; then
		echo "not ok - $check"
		status=1
	else
		echo "ok - $check"
	fi
done
exit $status
