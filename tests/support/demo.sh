#!/bin/sh
# demo.sh JURYSTICK PLAN FOLDER - draws, checks, counts and records one plan into
# FOLDER/<plan>/; of NAME.revised.xml the change order against the NAME.xml beside it
# too.
set -eu
jurystick=$1 plan=$2
out=$3/$(basename "$plan" .xml)
mkdir -p "$out"

"$jurystick" draw "$plan" -o "$out" --as svg,pdf,png,html
"$jurystick" record "$plan" -o "$out/placed.xml" --points "$out/points.csv"
"$jurystick" count "$plan" >"$out/count.txt"
# 1: the floor has open questions, which a demo may.
status=0
"$jurystick" check "$plan" >"$out/findings.txt" || status=$?
[ "$status" -le 1 ] || exit "$status"
base=${plan%.revised.xml}.xml
if [ "$base" != "$plan.xml" ] && [ -e "$base" ]; then
	"$jurystick" compare "$base" "$plan" -o "$out/changes" >"$out/changes.txt"
fi
echo "$plan: $out/"
