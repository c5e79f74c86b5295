# count_sums.awk - what a count says, worked out again from the record of the same plan: lengths,
# areas, tile, sealant and packages; by room, by element and in all (E-Q1); prices and their sums.
#   awk [-v thick=MM] -f count_sums.awk RECORD.xml COUNT.csv
# `thick`: of the tile, where there is one kind in one lay, and grout of 1.6 kg to a litre.
# Prints what differs, and at the end how many figures were compared; 1 when any differs.
# A figure may be off by the rounding of the rows it is made of: each prints a hundredth.
BEGIN {
	FS = ","
	per_unit["m"] = 1000; per_unit["ft"] = 304.8
	per_unit["m2"] = 1; per_unit["sqft"] = 0.09290304
	per_unit["ml"] = 1; per_unit["floz"] = 29.5735295625
	per_unit["kg"] = 1; per_unit["lb"] = 0.45359237
	per_unit["each"] = per_unit["hour"] = 1
}

function attribute(name) {
	if (!match($0, " " name "=\"[^\"]*\""))
		return ""
	return substr($0, RSTART + length(name) + 3, RLENGTH - length(name) - 4)
}

# Adds what the record holds of one element, in mm, m2, ml or pieces.
function hold(what, element, amount) {
	wanted[what, element] += amount
	wanted[what, "total"] += amount
	is_wanted[what] = 1
}

function complain(text) {
	print text
	bad++
}

function compare(name, counted, expected, room) {
	compared++
	if (counted - expected > room || expected - counted > room)
		complain(name ": counted " counted ", worked out " expected)
}

function cents(text) { return sprintf("%.0f", text * 100) + 0 }

# ---- the record ----

FILENAME ~ /\.xml$/ && /<room / { is_room[attribute("id")] = 1 }
FILENAME ~ /\.xml$/ && /<field / {
	hold("field", "", attribute("area"))
	lays++
}
FILENAME ~ /\.xml$/ && /<tiles / {
	hold("tile-whole", "", attribute("whole"))
	hold("tile-cut", "", attribute("cut"))
	hold("tile-laid", "", attribute("area"))
	hold("tile-whole-held", "", attribute("held-whole"))
	hold("tile-cut-held", "", attribute("held-cut"))
	lost += attribute("lost")
}
FILENAME ~ /\.xml$/ && /<hold / { hold("hold", attribute("id"), attribute("area")) }
FILENAME ~ /\.xml$/ && /<strip / {
	pending = attribute("pending") == "yes" ? "-pending" : ""
	hold("membrane-strip" pending, attribute("id"), attribute("area"))
	hold("membrane-strip-length", attribute("id"), attribute("length"))
}
FILENAME ~ /\.xml$/ && /<cover / {
	hold("primer", "", attribute("area"))
	if (attribute("scope") == "full")
		hold("membrane-full", "", attribute("area"))
}
FILENAME ~ /\.xml$/ && /<joint / {
	id = attribute("id"); kind = attribute("kind")
	size = attribute("width") * attribute("depth") / 1000
	open = kind == "perimeter" && attribute("depth") + 0 == 0 ? "-open" : ""
	hold("joint-" kind open, id, attribute("length"))
	if (size > 0)
		hold("sealant", id, attribute("length") * size)
	if (attribute("back") == "rod")
		hold("rod", id, attribute("length"))
	if (attribute("back") == "tape")
		hold("tape", id, attribute("length"))
	if (kind == "soft" || kind == "movement")
		soft += attribute("length") * attribute("width") / 1e6
}

# ---- the count ----

FILENAME ~ /\.csv$/ && FNR > 1 {
	what = $1; where = $2; amount = $3; unit = $4; rate = $5; price = $6
	sub(/^rod-.*/, "rod", what)
	split(where, words, " ")
	element = where == "total" ? "total" : substr(where, length(words[1]) + 2)
	if (where == "total") {
		stated[$1] = amount
		is_package[$1] = !($1 in summed)
		if (what != "rod" && $1 in summed)
			compare($1 " in all", amount, summed[$1], 1e-6)
		if ($1 in priced && price != "")
			compare($1 ", prices in all", cents(price), priced[$1], 0)
		total_price[$1] = price
		if (what == "grout")
			grout_kg = amount * per_unit[unit]
	} else {
		summed[$1] += amount
		priced[$1] += cents(price)
	}
	if (where != "total" || !($1 in summed))
		lines[++line_count] = $1 SUBSEP amount SUBSEP unit SUBSEP rate SUBSEP price
	if (!(what in is_wanted) || where == "total")
		next
	if (!(words[1] in is_room))
		complain(what " at " where ": names no room")
	counted[what, "total"] += amount * per_unit[unit]
	rows[what, "total"]++
	by_room[what, words[1]] += amount
	step[what] = unit == "each" ? 0 : 0.00501 * per_unit[unit]
	if (element != "") {
		counted[what, element] += amount * per_unit[unit]
		rows[what, element]++
		by_element[what] += amount
	}
}

# Ground less holds, tile, what is too narrow for tile, soft and field joints.
function check_grout(    area, off) {
	if (!thick || lays != 1)
		return
	area = wanted["field", "total"] - wanted["hold", "total"] - wanted["tile-laid", "total"] - lost - soft
	off = 0.00501
	for (room in is_room)
		off += 0.00501
	compare("grout", grout_kg, area * thick * 1.6, off)
}

function is_instead(what) { return what ~ /^(full|partial)-/ || what ~ /^price-/ }

function check_prices(    i, cell, right, material, labour, markups) {
	for (i = 1; i <= line_count; i++) {
		split(lines[i], cell, SUBSEP)
		if (cell[5] == "")
			continue
		if (cell[4] ~ /^[0-9.]+$/) {
			right = int(sprintf("%.0f", cell[2] * 100) * sprintf("%.0f", cell[4] * 1000000) / 1000000 + 0.5)
			compare("price of " cell[1], cents(cell[5]), right, 0)
		}
		if (cell[1] == "labour")
			labour += cents(cell[5])
		else if (cell[1] == "price-markup")
			markups += cents(cell[5])
		else if (!is_instead(cell[1]))
			material += cents(cell[5])
	}
	if (!("price-total" in stated))
		return
	compare("price-material", cents(total_price["price-material"]), material, 0)
	if ("price-labour" in stated)
		compare("price-labour", cents(total_price["price-labour"]), labour, 0)
	compare("price-total", cents(total_price["price-total"]), material + labour + markups, 0)
}

END {
	for (key in wanted) {
		split(key, part, SUBSEP)
		if (part[2] == "" || wanted[key] == 0)
			continue
		compare(part[1] " of " part[2], counted[key] + 0, wanted[key],
			(rows[key] > 1 ? rows[key] : 1) * step[part[1]] + 1e-6)
	}
	for (what in is_wanted) {
		sum = 0
		for (key in by_room) {
			split(key, part, SUBSEP)
			if (part[1] == what)
				sum += by_room[key]
		}
		if (what in by_element)
			compare(what ": by room and by element", sum, by_element[what], 1e-6)
		if (what in stated)
			compare(what ": by room and in all", sum, stated[what], 1e-6)
	}
	check_grout()
	check_prices()
	print compared + 0 " figures compared"
	exit bad > 0 || compared == 0
}
