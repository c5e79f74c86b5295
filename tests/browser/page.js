// page.js PAGE FOLDER - the page for the screen as people use it: keys, mouse, fingers, printer.
// Of any set with a slab sheet that has a crack with a finding on it.
'use strict';
const { Chromium } = require('./chromium');
const { check, run } = require('./tap');

const [file, folder] = process.argv.slice(2);
const DESK = { width: 1600, height: 1000 };
const PHONE = { width: 390, height: 844, scale: 2, touch: true };

// Two frames: what was asked for is laid out and scrolled.
const settled = (page) => page.ask(
	'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 20))))');

const HELPERS = `
	window.seen = () => document.querySelector('.sheet.shown').id;
	window.middle = (element) => {
		const box = element.getBoundingClientRect();
		return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
	};
	window.stageBox = () => {
		const box = document.querySelector('.sheet.shown .stage').getBoundingClientRect();
		return { x: box.left, y: box.top, width: box.width, height: box.height };
	};
	window.paperBox = () => {
		const box = document.querySelector('.sheet.shown .paper').getBoundingClientRect();
		return { x: box.left, y: box.top, width: box.width, height: box.height };
	};
	window.isInStage = (p) => {
		const box = stageBox();
		return p.x > box.x && p.x < box.x + box.width && p.y > box.y && p.y < box.y + box.height;
	};
	// True where within 10 px nothing but the element and the ground can be meant.
	window.isAlone = (p, id) => {
		for (let x = -10; x <= 10; x++)
			for (let y = -10; y <= 10; y += 2) {
				const at = document.elementFromPoint(p.x + x, p.y + y), other = at.closest('[data-id]');
				const about = other && document.getElementById('about-' + other.getAttribute('data-id'));
				if (at.closest('.pin') || (about && about.getAttribute('data-of') !== id && !about.hasAttribute('data-ground')))
					return false;
			}
		return true;
	};
	// A point on the screen that lies on a line of the element.
	window.pointOn = (id) => {
		for (const path of document.querySelectorAll('.sheet.shown [data-layer=cracks] [data-id="' + id + '"] path')) {
			const matrix = path.getScreenCTM(), length = path.getTotalLength();
			for (let share = 0.02; share < 1; share += 0.02) {
				const at = path.getPointAtLength(length * share);
				const p = { x: matrix.a * at.x + matrix.e, y: matrix.d * at.y + matrix.f };
				if (isInStage(p) && isAlone(p, id))
					return p;
			}
		}
		return null;
	};
	1`;

// What is looked at: a crack drawn on the slab sheet, its rule, a tag there, the sheet after it.
let crack, rule, tag, next;

async function choose(browser) {
	const page = await browser.open(file, DESK);
	({ crack, rule, tag, next } = await page.ask(`(() => {
		const slab = document.getElementById('sheet-slab'), sheets = [...document.querySelectorAll('.sheet')];
		const about = [...slab.querySelectorAll('[data-layer=cracks] [data-id]')]
			.map((group) => document.getElementById('about-' + group.getAttribute('data-id')))
			.find((about) => about && about.querySelector('.rule-of') && about.querySelector('[href="#sheet-slab"]'));
		return { crack: about.getAttribute('data-of'), rule: about.querySelector('.rule-of').textContent.trim(),
			tag: slab.querySelector('[data-layer=labels] text').textContent.trim(), next: sheets[sheets.indexOf(slab) + 1].id };
	})()`));
	await page.close();
}

async function open(browser, screen) {
	const page = await browser.open(file, screen);
	if (!screen.noScript)
		await page.ask(HELPERS);
	return page;
}

async function withoutScript(browser) {
	const page = await open(browser, { ...DESK, noScript: true });
	await page.send('Emulation.setScriptExecutionDisabled', { value: false });
	const { sheets, high, buttons } = await page.ask(`({
		sheets: document.querySelectorAll('.sheet').length,
		high: [...document.querySelectorAll('.sheet svg')].filter((s) => s.getBoundingClientRect().height > 500).length,
		buttons: [...document.querySelectorAll('button')].filter((b) => b.offsetHeight > 0).length })`);
	check('without scripts every sheet is seen', sheets > 0 && high === sheets, { sheets, high });
	check('without scripts no button is there that does nothing', buttons === 0, buttons);
	await page.close();
}

async function alone(page) {
	check('no fault in the program', page.faults.length === 0, page.faults);
	check('nothing is fetched but the page', page.requests.length === 1 &&
		page.requests[0].startsWith('file://'), page.requests);
}

// ---- by keys alone ----

// Presses Tab until the focused element meets the condition; how many presses, 0: never.
async function tabTo(page, condition, most) {
	for (let i = 1; i <= (most || 400); i++) {
		await page.press('Tab');
		if (await page.ask('((e) => ' + condition + ')(document.activeElement)'))
			return i;
	}
	return 0;
}

const focus = (page, what) => page.ask('((e) => ' + what + ')(document.activeElement)');

async function byKeys(browser) {
	const page = await open(browser, DESK);
	check('the first stop leads to the sheet', await tabTo(page, "e.classList.contains('skip')", 1) === 1);
	check('the list of sheets is reached', await tabTo(page, "e.closest('#sheets') && e.getAttribute('href') === '#sheet-slab'") > 0);
	await page.press('Enter');
	await settled(page);
	check('Enter shows the sheet', await page.ask('seen()') === 'sheet-slab');
	check('the focus is on it', await focus(page, "e.classList.contains('stage')"));
	const before = await page.ask('paperBox()');
	await page.press('+');
	await page.press('+');
	await page.press('+');
	await settled(page);
	const after = await page.ask('paperBox()');
	check('+ makes it larger', after.width > before.width * 2, { before, after });
	await page.press('ArrowDown');
	await new Promise((done) => setTimeout(done, 400));
	check('an arrow moves it', (await page.ask('paperBox()')).y < after.y);
	await page.press('0');
	await settled(page);
	check('0 shows all of it', Math.abs((await page.ask('paperBox()')).width - before.width) < 2);
	await page.press('.');
	await settled(page);
	check('a full stop turns to the next', await page.ask('seen()') === next, await page.ask('seen()'));
	check('and the focus goes along', await focus(page, "e.classList.contains('stage') && e.closest('.shown') !== null"));
	await page.press(',');
	await settled(page);
	check('a comma back', await page.ask('seen()') === 'sheet-slab');
	await questionsByKeys(page);
	await elementsByKeys(page);
	await alone(page);
	await page.close();
}

async function questionsByKeys(page) {
	check('the first question is reached', await tabTo(page, "e.closest('#questions') && e.className === 'number'") > 0);
	const number = await focus(page, 'e.textContent');
	await page.press('Enter');
	await settled(page);
	check('its number leads to its mark', await focus(page, "e.classList.contains('pin') && e.textContent") === number);
	check('the mark is in sight', await page.ask('isInStage(middle(document.activeElement))'));
	check('close enough to look at', (await page.ask('paperBox()')).width > 2 * (await page.ask('stageBox()')).width);
	await page.press('Enter');
	await settled(page);
	check('the mark leads back to its question', await focus(page, "e.closest('.finding').id") === 'finding-' + number);
}

async function elementsByKeys(page) {
	check('the elements are reached', await tabTo(page, `e.matches('#about-${crack} > summary')`, 3000) > 0);
	await page.press('Enter');
	await settled(page);
	check('Enter opens what is known of it', await page.ask(`document.getElementById('about-${crack}').open`));
	check('it is told', (await page.ask("document.getElementById('told').textContent")).toLowerCase().startsWith(crack.toLowerCase()));
	check('where it is shown is reached', await tabTo(page, `e.getAttribute('data-show') === '${crack}' && e.getAttribute('href') === '#sheet-slab'`, 40) > 0);
	await page.press('Enter');
	await settled(page);
	const place = await page.ask(`(() => {
		const halo = document.querySelector('.shown .halo').getBoundingClientRect();
		const line = document.querySelector('.shown [data-layer=cracks] [data-id="${crack}"]').getBoundingClientRect();
		return { sheet: seen(), framed: halo.left <= line.left + 1 && halo.right >= line.right - 1 &&
			halo.top <= line.top + 1 && halo.bottom >= line.bottom - 1, inSight: isInStage(middle(document.querySelector('.shown .halo'))) };
	})()`);
	check('it is framed, in sight, on that sheet', place.sheet === 'sheet-slab' && place.framed && place.inSight, place);
	await page.press('Escape');
	check('Escape leaves it', await page.ask(`document.querySelector('.shown .halo').hidden && !document.getElementById('about-${crack}').open`));
}

// ---- by mouse ----

async function byMouse(browser) {
	const page = await open(browser, DESK);
	await page.ask("location.hash = '#sheet-slab'");
	await settled(page);
	const line = await page.ask(`pointOn('${crack}')`);
	await page.click(line.x + 3, line.y);
	await settled(page);
	check('a press beside a line reads about it', await page.ask(`document.getElementById('about-${crack}').open`));
	check('its rule is there', (await page.ask(`document.getElementById('about-${crack}').innerText`)).includes(rule));
	const stage = await page.ask('stageBox()');
	const at = { x: stage.x + stage.width * 0.6, y: stage.y + stage.height * 0.6 };
	const old = await page.ask('paperBox()');
	await page.send('Input.dispatchMouseEvent', { type: 'mouseWheel', ...at, deltaX: 0, deltaY: -300, modifiers: 2 });
	await settled(page);
	const now = await page.ask('paperBox()');
	check('Ctrl and wheel make it larger', now.width > old.width * 2, { old, now });
	const apart = Math.hypot((at.x - old.x) / old.width - (at.x - now.x) / now.width,
		((at.y - old.y) / old.height - (at.y - now.y) / now.height) * old.height / old.width) * now.width;
	check('what is under the pointer stays there', apart < 3, apart);
	await page.mouse('mousePressed', at.x, at.y, { buttons: 1, clickCount: 1 });
	await page.mouse('mouseMoved', at.x - 90, at.y - 60, { buttons: 1 });
	await page.mouse('mouseReleased', at.x - 90, at.y - 60, { clickCount: 1 });
	await settled(page);
	const dragged = await page.ask('paperBox()');
	check('dragging moves it', Math.abs(dragged.x - now.x + 90) < 2 && Math.abs(dragged.y - now.y + 60) < 2, { now, dragged });
	await layers(page);
	await places(page);
	await page.ask("document.querySelector('.tabs') && (document.getElementById('noted').open = true)");
	await page.ask("location.hash = document.querySelector('#noted .number').getAttribute('href')");
	await settled(page);
	check('the place of a note is shown when it is asked for', await page.ask(
		"document.activeElement.classList.contains('pin') && isInStage(middle(document.activeElement))"));
	check('text on a sheet is found', await page.ask("location.hash = '#sheet-slab', new Promise((done) => setTimeout(done, 100)).then(() => window.find(" + JSON.stringify(tag) + ", true))"));
	await alone(page);
	await page.close();
}

async function layers(page) {
	const drawn = "document.querySelector('.shown [data-layer=cracks]').getBoundingClientRect().width";
	const box = await page.ask("middle(document.querySelector('[data-switch=cracks]'))");
	await page.click(box.x, box.y);
	check('a layer is switched off', await page.ask(drawn) === 0);
	await page.send('Emulation.setEmulatedMedia', { media: 'print' });
	check('a print has it all the same', await page.ask(drawn) > 0);
	check('a print has no marks', await page.ask("document.querySelector('.shown .pin').offsetHeight") === 0);
	await page.send('Emulation.setEmulatedMedia', { media: '' });
	await page.click(box.x, box.y);
	check('and on again', await page.ask(drawn) > 0);
}

// Each number in the list of questions and notes leads to its mark on each sheet that it names, in
// sight; each element is framed, in sight, where its facts say that it is shown.
async function places(page) {
	const asked = await page.ask(`[...document.querySelectorAll('#questions .finding a[href^="#place-"]')].map((a) => a.getAttribute('href'))`);
	const lost = [];
	for (const place of asked) {
		await page.ask(`location.hash = '${place}'`);
		await settled(page);
		if (!await page.ask(`document.activeElement.id === '${place.slice(1)}' && isInStage(middle(document.activeElement))`))
			lost.push(place);
	}
	check(`${asked.length} links of questions lead to their marks`, asked.length > 0 && lost.length === 0, lost.slice(0, 5));
	const shown = await page.ask(`[...document.querySelectorAll('#elements .about')].map((about, i) => {
		const a = about.querySelector('[data-show]');
		return a && { i, of: about.getAttribute('data-of'), sheet: a.getAttribute('href').slice(1) };
	}).filter(Boolean)`);
	const unseen = [];
	for (const { i, of, sheet } of shown) {
		await page.ask(`document.querySelectorAll('#elements .about')[${i}].querySelector('[data-show]').click()`);
		await settled(page);
		if (!await page.ask(`(() => { const halo = document.querySelector('.shown .halo');
			return seen() === '${sheet}' && halo && !halo.hidden && isInStage(middle(halo)); })()`))
			unseen.push(of);
	}
	check(`${shown.length} elements are framed where they are shown`, shown.length > 5 && unseen.length === 0, unseen.slice(0, 5));
}

// ---- by finger, on a narrow screen ----

async function byFinger(browser) {
	const page = await open(browser, PHONE);
	check('nothing is wider than the screen', await page.ask('document.documentElement.scrollWidth <= innerWidth'));
	const small = await page.ask(`[...document.querySelectorAll('.tabs button, .tools button')].map((b) => {
		const box = b.getBoundingClientRect();
		return { name: b.textContent, width: box.width, height: box.height }; }).filter((b) => b.width < 44 || b.height < 44)`);
	check('buttons are large enough for a finger', small.length === 0, small);
	const stage = await page.ask('stageBox()');
	const x = stage.x + stage.width / 2, y = stage.y + stage.height / 2;
	const old = await page.ask('paperBox()');
	await page.touch('touchStart', [{ x: x - 40, y }, { x: x + 40, y }]);
	for (let spread = 50; spread <= 120; spread += 10)
		await page.touch('touchMove', [{ x: x - spread, y }, { x: x + spread, y }]);
	await page.touch('touchEnd', []);
	await settled(page);
	const now = await page.ask('paperBox()');
	check('two fingers make it larger', now.width / old.width > 2.5 && now.width / old.width < 3.5, now.width / old.width);
	await page.touch('touchStart', [{ x, y }]);
	for (let moved = 10; moved <= 100; moved += 10)
		await page.touch('touchMove', [{ x: x - moved, y }]);
	await page.touch('touchEnd', []);
	await settled(page);
	check('one finger moves it', (await page.ask('paperBox()')).x < now.x - 50);
	for (const panel of ['sheets', 'layers', 'questions', 'elements']) {
		await page.ask(`document.querySelector('[aria-controls=${panel}]').click()`);
		const open = await page.ask(`[...document.querySelectorAll('.panel')].filter((p) => p.offsetHeight > 0).map((p) => p.id)`);
		check('one panel at a time: ' + panel, open.length === 1 && open[0] === panel, open);
	}
	await page.ask("document.querySelector('[aria-controls=questions]').click()");
	await page.ask("location.hash = document.querySelector('#questions .number').getAttribute('href')");
	await settled(page);
	check('a question and its mark are in sight together', await page.ask(`isInStage(middle(document.activeElement)) &&
		document.querySelector('#questions').offsetHeight > 100`));
	await alone(page);
	await page.close();
}

// ---- for those who do not see it, and on paper ----

async function readAloud(browser) {
	const page = await open(browser, DESK);
	await page.send('Accessibility.enable');
	const { nodes } = await page.send('Accessibility.getFullAXTree');
	const told = nodes.filter((n) => !n.ignored);
	const role = (n) => n.role && n.role.value;
	const named = (n) => n.name && n.name.value && n.name.value.trim();
	for (const landmark of ['banner', 'navigation', 'main'])
		check('landmark: ' + landmark, told.filter((n) => role(n) === landmark).length === 1);
	const dumb = told.filter((n) => ['link', 'button', 'checkbox', 'image', 'img', 'region', 'group', 'toolbar'].includes(role(n)) &&
		!named(n) && n.properties.some((p) => p.name === 'focusable'));
	check('whatever can be reached has a name', dumb.length === 0, dumb.map((n) => [role(n), n.nodeId]).slice(0, 5));
	check('headings are told', told.filter((n) => role(n) === 'heading').length > 4);
	await page.print(folder + '/printed.pdf');
	await page.close();
}

run(async () => {
	const browser = await Chromium.start();
	try {
		await choose(browser);
		await withoutScript(browser);
		await byKeys(browser);
		await byMouse(browser);
		await byFinger(browser);
		await readAloud(browser);
	} finally {
		await browser.end();
	}
});
