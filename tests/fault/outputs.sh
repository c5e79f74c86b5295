# Where an output cannot be written: said so, exit 3, nothing half done.
. tests/support/tap.sh
plan=$PWD/tests/golden/nook.xml
cd "$TMPDIR" || exit 1

to_full() { "$JURYSTICK" "$@" >/dev/full; }
to_closed() { "$JURYSTICK" "$@" >&-; }
nothing_at() { [ ! -e "$1" ]; }

for command in "record $plan" "count $plan" "check $plan" "compare $plan $plan" help "help draw" --version; do
	# $command is split into words on purpose.
	check "standard output full: ${command%% *}" fails_with 3 error: to_full $command
	check "standard output closed: ${command%% *}" fails_with 3 error: to_closed $command
done

check 'record to a full device' fails_with 3 /dev/full "$JURYSTICK" record "$plan" -o /dev/full
check 'points to a full device' fails_with 3 /dev/full \
	"$JURYSTICK" record "$plan" -o placed.xml --points /dev/full
# What stood before stays, and nothing comes to stand beside it.
mkdir pair
echo older >pair/placed.xml
stays() {
	"$@" && [ "$(ls -A pair)" = placed.xml ] && [ "$(cat pair/placed.xml)" = older ]
}
check 'points to a full device, an older record' stays fails_with 3 /dev/full \
	"$JURYSTICK" record "$plan" -o pair/placed.xml --points /dev/full
check 'record to a full device, older points' stays fails_with 3 /dev/full \
	"$JURYSTICK" record "$plan" -o /dev/full --points pair/placed.xml
check 'record to a full standard output, older points' stays fails_with 3 error: \
	to_full record "$plan" --points pair/placed.xml
check 'record to a closed standard output, older points' stays fails_with 3 error: \
	to_closed record "$plan" --points pair/placed.xml
check 'points into a missing folder, an older record' stays fails_with 3 nowhere/points.csv \
	"$JURYSTICK" record "$plan" -o pair/placed.xml --points nowhere/points.csv
check 'record into a missing folder' fails_with 3 nowhere/placed.xml \
	"$JURYSTICK" record "$plan" -o nowhere/placed.xml
check 'points into a missing folder' fails_with 3 nowhere/points.csv \
	"$JURYSTICK" record "$plan" -o other.xml --points nowhere/points.csv
check 'and the record beside them is not there either' nothing_at other.xml
check 'draw below a missing folder' fails_with 3 nowhere "$JURYSTICK" draw "$plan" -o nowhere/deep
check 'which is not made' nothing_at nowhere

sed 's|1/32in|1/8in|' "$plan" >wider.xml
check 'compare below a missing folder' fails_with 3 nowhere \
	"$JURYSTICK" compare "$plan" wider.xml -o nowhere/deep
mkdir order
echo older >order/changes.csv
order_stays() {
	"$@" && [ "$(ls -A order)" = changes.csv ] && [ "$(cat order/changes.csv)" = older ]
}
check 'change order to a full standard output, an older one' order_stays fails_with 3 error: \
	to_full compare "$plan" wider.xml -o order --as csv
check 'change order to a closed standard output, an older one' order_stays fails_with 3 error: \
	to_closed compare "$plan" wider.xml -o order --as csv

touch file
check 'draw into a file' fails_with 3 file "$JURYSTICK" draw "$plan" -o file
check 'record into a folder that is a file' fails_with 3 file/placed.xml \
	"$JURYSTICK" record "$plan" -o file/placed.xml
check 'a file system that takes no files' fails_with 3 /proc/self \
	"$JURYSTICK" record "$plan" -o /proc/self/placed.xml

mkdir folder
check 'record over a folder' fails_with 3 folder "$JURYSTICK" record "$plan" -o folder
