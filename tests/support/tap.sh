# tap.sh - sourced by shell tests: one TAP line a check. $JURYSTICK is the program, $TMPDIR a
# folder of the test's own; both come from tests/run.
set -u
case $JURYSTICK in /*) ;; *) JURYSTICK=$PWD/$JURYSTICK ;; esac
export JURYSTICK

# check WHAT COMMAND...: passes when the command does; shows what it printed when not.
check() {
	what=$1
	shift
	if "$@" >"$TMPDIR/check.out" 2>&1; then
		echo "ok - $what"
	else
		echo "not ok - $what (exit $?): $*"
		sed 's/^/# /' "$TMPDIR/check.out"
	fi
}

# exits STATUS COMMAND...: the command ends with this status; its output stays in
# $TMPDIR/out and $TMPDIR/err.
exits() {
	expected=$1
	shift
	status=0
	"$@" >"$TMPDIR/out" 2>"$TMPDIR/err" || status=$?
	[ "$status" = "$expected" ] && return
	echo "exit $status, expected $expected"
	cat "$TMPDIR/out" "$TMPDIR/err"
	return 1
}

# says TEXT: the last `exits` had TEXT on standard error.
says() {
	grep -F -e "$1" "$TMPDIR/err" && return
	echo "standard error lacks: $1"
	cat "$TMPDIR/err"
	return 1
}

# fails_with STATUS TEXT COMMAND...: both at once.
fails_with() {
	expected=$1 text=$2
	shift 2
	exits "$expected" "$@" && says "$text"
}

# same_folder A B: the same names with the same bytes.
same_folder() {
	diff -r "$1" "$2"
}
