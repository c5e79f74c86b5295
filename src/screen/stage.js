// stage.js - one sheet on the screen: its size and place. The stage scrolls as any box does, by
// finger, wheel and arrow keys; here is what a browser lacks: size, dragging by mouse, pinching.

var LARGEST = 24; // times the whole sheet; a joint of 3 mm at 1:50 is then as wide as a finger nail
var STEP = 1.4; // of one press on larger or smaller
var STILL = 4; // px that a hand moves while it presses

function stageOf(element) {
	var paper = element.querySelector('.paper');
	var shape = getComputedStyle(document.documentElement);
	var ratio = shape.getPropertyValue('--wide') / shape.getPropertyValue('--high');
	var stage = { element: element, paper: paper, zoom: 1, wasDragged: false };

	// px that the sheet is wide when all of it is seen; on a narrow screen it fills the width.
	function fitted() {
		var wide = element.clientWidth, high = element.clientHeight;
		return wide < high ? wide : Math.min(wide, high * ratio);
	}

	// Sets the size and keeps the point of the sheet that lies at (x, y) of the stage there.
	stage.size = function (zoom, x, y) {
		var box = paper.getBoundingClientRect(), frame = element.getBoundingClientRect();
		var across = (frame.left + x - box.left) / box.width;
		var down = (frame.top + y - box.top) / box.height;
		stage.zoom = Math.min(LARGEST, Math.max(1, zoom));
		paper.style.width = Math.floor(fitted() * stage.zoom) + 'px';
		element.classList.toggle('large', stage.zoom > 1);
		element.scrollLeft = paper.offsetLeft + across * paper.offsetWidth - x;
		element.scrollTop = paper.offsetTop + down * paper.offsetHeight - y;
	};
	// The same again, where the stage itself has another size: what was in its middle stays there.
	var last = { wide: element.clientWidth, high: element.clientHeight };
	new ResizeObserver(function () {
		if (element.clientWidth === 0 ||
			(element.clientWidth === last.wide && element.clientHeight === last.high))
			return;
		stage.size(stage.zoom, last.wide / 2, last.high / 2);
		element.scrollLeft -= (element.clientWidth - last.wide) / 2;
		element.scrollTop -= (element.clientHeight - last.high) / 2;
		last = { wide: element.clientWidth, high: element.clientHeight };
	}).observe(element);
	stage.grow = function (factor) {
		stage.size(stage.zoom * factor, element.clientWidth / 2, element.clientHeight / 2);
	};
	stage.fit = function () {
		stage.size(1, 0, 0);
	};
	// Brings a box of the sheet, in parts of its width and height, to the middle of the stage.
	stage.bring = function (box, zoom) {
		stage.size(zoom, 0, 0);
		element.scrollLeft = paper.offsetLeft + (box.left + box.width / 2) * paper.offsetWidth -
			element.clientWidth / 2;
		element.scrollTop = paper.offsetTop + (box.top + box.height / 2) * paper.offsetHeight -
			element.clientHeight / 2;
	};

	element.addEventListener('wheel', function (event) {
		if (!event.ctrlKey && !event.metaKey)
			return;
		event.preventDefault();
		var frame = element.getBoundingClientRect();
		stage.size(stage.zoom * Math.exp(-event.deltaY / 300), event.clientX - frame.left,
			event.clientY - frame.top);
	}, { passive: false });
	dragByMouse(stage);
	pinch(stage);
	return stage;
}

function dragByMouse(stage) {
	var element = stage.element, from = null;
	element.addEventListener('pointerdown', function (event) {
		stage.wasDragged = false;
		if (event.pointerType === 'mouse' && event.button === 0)
			from = { x: event.clientX, y: event.clientY, left: element.scrollLeft,
				top: element.scrollTop };
	});
	window.addEventListener('pointermove', function (event) {
		if (!from)
			return;
		var x = event.clientX - from.x, y = event.clientY - from.y;
		if (!stage.wasDragged && Math.abs(x) + Math.abs(y) <= STILL)
			return;
		stage.wasDragged = true;
		element.classList.add('dragged');
		element.scrollLeft = from.left - x;
		element.scrollTop = from.top - y;
	});
	window.addEventListener('pointerup', function () {
		from = null;
		element.classList.remove('dragged');
	});
	element.addEventListener('dragstart', function (event) {
		event.preventDefault();
	});
}

function pinch(stage) {
	var element = stage.element, from = null;
	function apart(touches) {
		return Math.hypot(touches[0].clientX - touches[1].clientX,
			touches[0].clientY - touches[1].clientY);
	}
	element.addEventListener('touchstart', function (event) {
		from = event.touches.length === 2 ? { apart: apart(event.touches), zoom: stage.zoom } : null;
	}, { passive: true });
	element.addEventListener('touchmove', function (event) {
		if (!from || event.touches.length !== 2)
			return;
		event.preventDefault();
		var frame = element.getBoundingClientRect(), touches = event.touches;
		stage.size(from.zoom * apart(touches) / from.apart,
			(touches[0].clientX + touches[1].clientX) / 2 - frame.left,
			(touches[0].clientY + touches[1].clientY) / 2 - frame.top);
	}, { passive: false });
}
