// choice.js - the element that is read about: pressed on a sheet, or opened in the list.

var REACH = { mouse: 6, touch: 16, pen: 10 }; // px from a thin line that still mean it
var AROUND = 12; // directions that are looked into

var choice = { id: null };

function aboutOf(id) {
	return document.getElementById('about-' + id);
}

function drawnOf(id, within) {
	return Array.prototype.filter.call(within.querySelectorAll('[data-id]'), function (group) {
		return group.getAttribute('data-id') === id;
	});
}

function idAt(x, y, skipsGround) {
	var hit = document.elementFromPoint(x, y);
	var group = hit && hit.closest('[data-id]');
	var id = group && group.getAttribute('data-id');
	var about = id && aboutOf(id);
	return about && !(skipsGround && about.hasAttribute('data-ground')) ? id : null;
}

// A line near by is meant rather than the ground it lies on.
function idNear(x, y, reach) {
	var id = idAt(x, y, true);
	for (var r = 1; !id && r <= reach; r++) // no line is thinner than a pixel
		for (var i = 0; !id && i < AROUND; i++)
			id = idAt(x + r * Math.cos(2 * Math.PI * i / AROUND),
				y + r * Math.sin(2 * Math.PI * i / AROUND), true);
	return id || idAt(x, y, false);
}

// What the element takes of the sheet, in parts of its width and height; null: nothing.
function boxOf(id, paper) {
	var sheet = paper.getBoundingClientRect(), box = null;
	drawnOf(id, paper).forEach(function (group) {
		var part = group.getBoundingClientRect();
		if (part.width === 0 && part.height === 0)
			return;
		box = box || { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
		box.left = Math.min(box.left, part.left);
		box.top = Math.min(box.top, part.top);
		box.right = Math.max(box.right, part.right);
		box.bottom = Math.max(box.bottom, part.bottom);
	});
	return box && {
		left: (box.left - sheet.left) / sheet.width, top: (box.top - sheet.top) / sheet.height,
		width: (box.right - box.left) / sheet.width, height: (box.bottom - box.top) / sheet.height
	};
}

// The frame round it; the drawing itself stays as it is.
function showHalo(paper) {
	var halo = paper.querySelector('.halo'), box = choice.id && boxOf(choice.id, paper);
	if (!halo && box) {
		halo = document.createElement('div');
		halo.className = 'halo';
		halo.setAttribute('aria-hidden', 'true');
		paper.appendChild(halo);
	}
	if (!halo)
		return;
	halo.hidden = !box;
	['left', 'top', 'width', 'height'].forEach(function (side) {
		halo.style[side] = box ? box[side] * 100 + '%' : '';
	});
}

function choose(id, paper) {
	var before = choice.id && aboutOf(choice.id), about = id && aboutOf(id);
	choice.id = about ? id : null;
	if (before && before !== about)
		before.open = false;
	if (about)
		about.open = true;
	Array.prototype.forEach.call(document.querySelectorAll('.chosen'), function (group) {
		group.classList.remove('chosen');
	});
	if (about)
		drawnOf(id, document).forEach(function (group) {
			group.classList.add('chosen');
		});
	if (paper)
		showHalo(paper);
	document.getElementById('told').textContent =
		about ? about.querySelector('summary').textContent : '';
	return about;
}
