// layers.js - what is seen on all sheets: their layers, and the marks of findings. A print has
// every layer all the same.

function each(selector, act) {
	Array.prototype.forEach.call(document.querySelectorAll(selector), act);
}

function startLayers() {
	each('#layers input', function (input) {
		function apply() {
			var layer = input.getAttribute('data-switch'), pins = input.getAttribute('data-pins');
			if (layer)
				each('[data-layer="' + layer + '"]', function (group) {
					group.toggleAttribute('data-off', !input.checked);
				});
			else
				each(pins === 'note' ? '.pin.note' : '.pin:not(.note)', function (pin) {
					pin.toggleAttribute('data-off', !input.checked);
				});
		}
		input.addEventListener('change', apply);
		apply();
	});
}
