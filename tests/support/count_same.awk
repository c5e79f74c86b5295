# count_same.awk - two counts as CSV, STILL and MOVED: says which rows differ. Pieces are equal;
# amounts to the last digit printed, and sums of rows to the last digits of all of them.
BEGIN {
	FS = ","
	DIGIT = 0.011 # of one row: a last digit, and the last bit of it
	SHARE = 1e-4  # of what is told in three figures and more
}

function abs(x) { return x < 0 ? -x : x }

# A row by what and where it is; several of one name in their order.
function key_of(name) {
	seen[FILENAME, name]++
	return name " #" seen[FILENAME, name]
}

FILENAME == ARGV[1] {
	key = key_of($1 "," $2)
	still[key] = $3
	is_pieces[key] = $4 == "each" || $4 == "box" || $4 == "bag" || $4 == "roll"
	rows_of[$1]++
	what[key] = $1
}

FILENAME != ARGV[1] {
	moved[key_of($1 "," $2)] = $3
}

END {
	for (key in still) {
		room = is_pieces[key] ? 0 : DIGIT * rows_of[what[key]] + SHARE * still[key]
		if (!(key in moved))
			print key ": gone"
		else if (abs(still[key] - moved[key]) > room)
			print key ": " still[key] ", then " moved[key]
	}
	for (key in moved)
		if (!(key in still))
			print key ": new"
}
