#!/bin/sh
# runner.sh - tests/run counts what passed and failed and hides no failure.
set -u
here=$(cd "$(dirname "$0")" && pwd)
programs=$(mktemp -d)
trap 'rm -rf "$programs"' EXIT

program() { # program NAME: its text is read here
	cat >"$programs/$1.sh"
}

# expects WHAT STATUS LAST-LINE PROGRAM...: what the runner says about them.
expects() {
	what=$1 status=$2 last=$3
	shift 3
	cd "$programs" && said=$(sh "$here/../run" "$@" 2>&1)
	if [ $? = "$status" ] && [ "$(echo "$said" | tail -n 1)" = "$last" ]; then
		echo "ok - $what"
	else
		echo "not ok - $what"
		echo "$said" | sed 's/^/# /'
	fi
}

program silent <<'END'
true
END
program two <<'END'
echo 'ok - one'
echo 'ok - two'
END
program bad <<'END'
echo 'ok - one'
echo 'not ok - two'
END
program status <<'END'
exit 4
END
program late <<'END'
echo 'ok - one'
exit 4
END
program crash <<'END'
echo 1..3
echo 'ok 1 - one'
kill -SEGV $$
END
program skip <<'END'
echo 'ok 1 - one # SKIP not today'
END
program folder <<'END'
[ -d "$TMPDIR" ] && [ -z "$(ls -A "$TMPDIR")" ] && touch "$TMPDIR/left"
END

p=$programs
expects 'one without lines counts once' 0 '1 passed, 0 failed' "$p/silent.sh"
expects 'lines are counted' 0 '3 passed, 0 failed' "$p/two.sh" "$p/silent.sh"
expects 'a failed line fails' 1 '3 passed, 1 failed' "$p/bad.sh" "$p/two.sh"
expects 'a status without lines fails' 1 '0 passed, 1 failed' "$p/status.sh"
expects 'a status after good lines fails' 1 '1 passed, 1 failed' "$p/late.sh"
expects 'lines that never came fail' 1 '1 passed, 2 failed' "$p/crash.sh"
expects 'a skipped line fails' 1 '0 passed, 1 failed' "$p/skip.sh"
expects 'a program that is not there fails' 1 '0 passed, 1 failed' "$p/none"
expects 'each has an empty folder' 0 '2 passed, 0 failed' "$p/folder.sh" "$p/folder.sh"
expects 'nothing to run is no success' 1 '0 passed, 0 failed'

# Where packages are missing and may not be installed, they are listed. The folder of
# programs holds all the script itself needs, and no compiler.
mkdir "$programs/bin"
for tool in sh cut tr id grep; do
	ln -s "$(command -v $tool)" "$programs/bin/$tool"
done
said=$(PATH=$programs/bin PACKAGES=list sh "$here/../../.ci/packages" build 2>&1)
status=$?
for expected in gcc libcairo2-dev libgeos-dev fonts-dejavu-extra; do
	case $said in
	*"$expected"*"apt-get install --no-install-recommends"*"$expected"*)
		[ $status = 1 ] && echo "ok - names $expected" && continue ;;
	esac
	echo "not ok - names $expected, exit $status: $said"
done
case $said in
*libcmocka-dev*) echo 'not ok - a build asks for no test package' ;;
*) echo 'ok - a build asks for no test package' ;;
esac
