// tap.js - one line a check, as tests/support/tap.sh has them.
'use strict';
let failed = 0;

function check(what, passes, seen) {
	if (!passes)
		failed++;
	console.log((passes ? 'ok - ' : 'not ok - ') + what +
		(passes || seen === undefined ? '' : ' (' + JSON.stringify(seen) + ')'));
}

// A browser that does not answer fails the test instead of holding it up.
function run(test) {
	const most = setTimeout(() => {
		console.log('not ok - the browser answers');
		process.exit(1);
	}, 600000);
	test().then(() => {
		clearTimeout(most);
		process.exitCode = failed ? 1 : 0;
	}, (error) => {
		console.log('not ok - ' + error.stack);
		process.exit(1);
	});
}

module.exports = { check, run };
