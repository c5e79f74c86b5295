# Prints the tables of docs/rules.md from tables of rules: awk -f rules_doc.awk us.rules uk.rules
function base(path) { sub(/.*\//, "", path); sub(/\.rules$/, "", path); return path }
FNR == 1 { table = base(FILENAME); tables[++table_count] = table }
/^figure / {
	name = $2; sub(/^figure [^ ]+ = /, ""); kind = "figure"
	if (!((kind, name) in seen)) { figures[++figure_count] = name; seen[kind, name] = 1 }
	value[table, name] = $0; next
}
/^rule / {
	name = $2; sub(/^rule [^ ]+ /, ""); kind = "rule"
	if (!((kind, name) in seen)) { rules[++rule_count] = name; seen[kind, name] = 1 }
	value[table, name] = $0; next
}
/^\t/ {
	key = $1; sub(/^\t[^ ]+ /, "")
	if (!((name, key) in detail)) detail[name, key] = $0
	sources[table, name] = key == "source" ? $0 : sources[table, name]
}
END {
	print "### Figures\n"
	row = "| figure |"; line = "|---|"
	for (t = 1; t <= table_count; t++) { row = row " " tables[t] " |"; line = line "---|" }
	print row " what it is for | source (" tables[1] ") |"
	print line "---|---|"
	for (i = 1; i <= figure_count; i++) {
		n = figures[i]; row = "| `" n "` |"
		for (t = 1; t <= table_count; t++) row = row " " value[tables[t], n] " |"
		print row " " detail[n, "use"] " | " sources[tables[1], n] " |"
	}
	print "\n### Rules\n"
	row = "| rule |"
	for (t = 1; t <= table_count; t++) row = row " " tables[t] " |"
	print row " what is measured | weight | who | source (" tables[1] ") |"
	print line "---|---|---|---|"
	for (i = 1; i <= rule_count; i++) {
		n = rules[i]; row = "| `" n "` |"
		for (t = 1; t <= table_count; t++) row = row " " value[tables[t], n] " |"
		print row " " detail[n, "quantity"] " | " detail[n, "weight"] " | " detail[n, "who"] " | " sources[tables[1], n] " |"
	}
}
