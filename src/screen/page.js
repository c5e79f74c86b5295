// page.js - which sheet is seen, and where links, keys and presses lead. Without it the page is
// a document: all sheets one under the other, every link in its place.

var NEAR = 3; // times the whole sheet, to look at the place of a finding
var ROOM = 0.5; // of the stage that an element shown from the list may take

var sheets = [], shown = null;

function indexOf(sheet) {
	return sheets.map(function (s) { return s.section; }).indexOf(sheet);
}

function showSheet(index) {
	var sheet = sheets[index];
	if (!sheet || shown === sheet)
		return sheet;
	if (shown)
		shown.section.classList.remove('shown');
	shown = sheet;
	sheet.section.classList.add('shown');
	sheet.stage = sheet.stage || stageOf(sheet.section.querySelector('.stage'));
	sheet.stage.size(sheet.stage.zoom, 0, 0);
	showHalo(sheet.stage.paper);
	each('#sheets a', function (link) {
		if (link.getAttribute('href') === '#' + sheet.section.id)
			link.setAttribute('aria-current', 'true');
		else
			link.removeAttribute('aria-current');
	});
	document.getElementById('shown').textContent =
		index + 1 + ' / ' + sheets.length + '  ' + sheet.section.querySelector('h2').textContent;
	document.querySelector('[data-tool=previous]').disabled = index === 0;
	document.querySelector('[data-tool=next]').disabled = index === sheets.length - 1;
	return sheet;
}

function turn(by) {
	var next = indexOf(shown.section) + by;
	if (sheets[next])
		location.hash = sheets[next].section.id;
}

// ---- panels: on a narrow screen one at a time, over the foot of the sheet ----

function openPanel(id) {
	each('.tabs button', function (tab) {
		var controls = tab.getAttribute('aria-controls'), isOpen = controls === id;
		tab.setAttribute('aria-expanded', isOpen ? 'true' : 'false');
		document.getElementById(controls).classList.toggle('open', isOpen);
	});
}

// ---- where a link leads ----

function bringPin(pin) {
	var sheet = showSheet(indexOf(pin.closest('.sheet')));
	pin.removeAttribute('data-off');
	sheet.stage.bring({ left: parseFloat(pin.style.left) / 100, top: parseFloat(pin.style.top) / 100,
		width: 0, height: 0 }, Math.max(sheet.stage.zoom, NEAR));
	pin.focus({ preventScroll: true });
}

function showAbout(about) {
	choose(about.getAttribute('data-of'), shown && shown.stage.paper);
	openPanel('elements');
	about.querySelector('summary').focus({ preventScroll: true });
	about.scrollIntoView({ block: 'nearest' });
}

function showFinding(item) {
	openPanel('questions');
	var folded = item.closest('details');
	if (folded)
		folded.open = true;
	item.querySelector('a').focus({ preventScroll: true });
	item.scrollIntoView({ block: 'nearest' });
}

function goTo(target) {
	if (target.classList.contains('sheet'))
		showSheet(indexOf(target)).stage.element.focus({ preventScroll: true });
	else if (target.classList.contains('pin'))
		bringPin(target);
	else if (target.classList.contains('about'))
		showAbout(target);
	else if (target.classList.contains('finding'))
		showFinding(target);
}

function followHash() {
	var target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
	if (target)
		goTo(target);
}

// An element on a sheet: as large as leaves its surroundings in sight.
function showElement(id, sheet) {
	showSheet(indexOf(sheet));
	choose(id, shown.stage.paper);
	var box = boxOf(id, shown.stage.paper);
	if (box)
		shown.stage.bring(box, Math.max(1, ROOM / Math.max(box.width, box.height, 0.02)));
	showHalo(shown.stage.paper);
}

// ---- presses and keys ----

function pressSheet(event) {
	var stage = shown.stage;
	if (stage.wasDragged || event.target.closest('.pin'))
		return;
	var reach = REACH[event.pointerType] || REACH.mouse;
	var about = choose(idNear(event.clientX, event.clientY, reach), stage.paper);
	if (!about)
		return;
	openPanel('elements');
	about.scrollIntoView({ block: 'nearest' });
}

function pressKey(event) {
	var acts = {
		'+': function () { shown.stage.grow(STEP); }, '=': function () { shown.stage.grow(STEP); },
		'-': function () { shown.stage.grow(1 / STEP); }, '0': function () { shown.stage.fit(); },
		',': function () { turn(-1); }, '.': function () { turn(1); },
		'Escape': function () { choose(null, shown.stage.paper); openPanel(null); }
	};
	if (!acts[event.key] || event.ctrlKey || event.metaKey || event.altKey)
		return;
	acts[event.key]();
	event.preventDefault();
}

function startTools() {
	var acts = {
		previous: function () { turn(-1); }, next: function () { turn(1); },
		out: function () { shown.stage.grow(1 / STEP); }, fit: function () { shown.stage.fit(); },
		'in': function () { shown.stage.grow(STEP); }
	};
	each('[data-tool]', function (button) {
		button.addEventListener('click', acts[button.getAttribute('data-tool')]);
	});
	each('.tabs button', function (tab) {
		tab.addEventListener('click', function () {
			var isOpen = tab.getAttribute('aria-expanded') === 'true';
			openPanel(isOpen ? null : tab.getAttribute('aria-controls'));
		});
	});
	document.getElementById('print').addEventListener('click', function () { window.print(); });
}

function start() {
	document.documentElement.classList.add('live');
	each('.sheet', function (section) {
		sheets.push({ section: section, stage: null });
		var stage = section.querySelector('.stage');
		stage.addEventListener('click', pressSheet);
		stage.addEventListener('keydown', pressKey);
	});
	each('details.about', function (about) {
		about.addEventListener('toggle', function () {
			var id = about.getAttribute('data-of');
			if (about.open && choice.id !== id)
				choose(id, shown.stage.paper);
		});
	});
	each('[data-show]', function (link) {
		link.addEventListener('click', function (event) {
			event.preventDefault();
			showElement(link.getAttribute('data-show'),
				document.getElementById(link.getAttribute('href').slice(1)));
			shown.stage.element.focus({ preventScroll: true });
		});
	});
	// The same place asked for again: no change of the address tells of it.
	document.addEventListener('click', function (event) {
		var link = event.target.closest('a[href]');
		if (link && link.getAttribute('href') === location.hash)
			followHash();
	});
	startTools();
	startLayers();
	showSheet(0);
	followHash();
	window.addEventListener('hashchange', followHash);
}

start();
