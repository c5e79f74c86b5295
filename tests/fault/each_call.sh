# Every call that puts outputs in place fails once, and a signal comes just before each: the
# folder holds the old set or the new one, whole, and nothing else.
. tests/support/tap.sh
plan=$PWD/tests/rules/plain.xml
# Of what the program stands on under a sanitizer, nothing comes before this library.
export ASAN_OPTIONS="${ASAN_OPTIONS:-}:verify_asan_link_order=0"
check 'the library of faults is built' ${CC:-cc} -shared -fPIC -O1 -o "$TMPDIR/fault_at.so" \
	tests/fault/fault_at.c -ldl
cd "$TMPDIR" || exit 1

ENOSPC=28 EPERM=1

draw() {
	"$JURYSTICK" draw "$plan" -o work --as svg,trace
}
record() {
	"$JURYSTICK" record "$plan" -o work/placed.xml --points work/points.csv
}

# with_fault FUNCTION N FAULT COMMAND: on a folder of old files; $status is how it ended, the
# file `calls` has one byte for each call of the function.
with_fault() {
	rm -rf work calls
	cp -r old work
	status=0
	(
		export FAULT_AT="$1 $2 $3" FAULT_CALLS="$TMPDIR/calls" LD_PRELOAD="$TMPDIR/fault_at.so"
		$4
	) >out 2>err || status=$?
}

# fails_whole FUNCTION N COMMAND, ends_whole SIGNAL FUNCTION N COMMAND
fails_whole() {
	with_fault "$1" "$2" $ENOSPC "$3"
	[ $status = 3 ] && grep -q error: err && same_folder old work
}
# Every rename fails from N on: what cannot be put back is still there under another name.
keeps_old() {
	with_fault rename "$1" "$ENOSPC on" "$2"
	[ $status = 3 ] || return 1
	for name in $(ls old); do
		find work -type f -exec cmp -s "old/$name" {} \; -print | grep -q . || return 1
	done
}
ends_whole() {
	with_fault "$2" "$3" -"$1" "$4"
	[ $status = $((128 + $1)) ] && { same_folder old work || same_folder new work; }
}
# Where the file system has no second names the old file is moved.
goes_on() {
	with_fault "$1" "$2" $EPERM "$3"
	[ $status = 0 ] && same_folder new work
}

# each COMMAND FUNCTION CHECK...: CHECK FUNCTION N COMMAND for every N there is.
each() {
	command=$1 function=$2
	shift 2
	with_fault "$function" 0 0 "$command"
	calls=$(($(cat calls | wc -c)))
	check "$command: $function is called" [ $calls -gt 0 ]
	number=1
	while [ $number -le $calls ]; do
		check "$command: $* at $function $number" "$@" "$function" $number "$command"
		number=$((number + 1))
	done
}

for command in draw record; do
	rm -rf old new work
	mkdir work
	check "$command: works" $command
	mv work new
	mkdir old
	for name in $(ls new); do
		echo "older $name" >"old/$name"
	done
	for function in write fsync fchmod mkstemp rename; do
		each $command $function fails_whole
	done
	each $command link goes_on
	check "$command: what cannot be put back is kept" keeps_old 2 $command
	each $command rename ends_whole 15
	each $command fsync ends_whole 2
	each $command write ends_whole 1
done

# What is seen: an end that nobody can hold leaves a mixture.
killed() {
	ends_whole 9 rename 2 record
	[ $status = 137 ] && ! same_folder old work && ! same_folder new work
}
check 'a mixture is seen' killed
