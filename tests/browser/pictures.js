// pictures.js FOLDER - every sheet of a set as the browser draws its SVG, as librsvg does, and as
// its page of the PDF looks: the same picture, to a pixel.
'use strict';
const { execFileSync } = require('child_process');
const fs = require('fs');
const { Chromium } = require('./chromium');
const { read, reduced, compare } = require('./picture');
const { check, run } = require('./tap');

const folder = process.argv[2];
const DPI = 96; // the browser's own, to which all pictures are reduced
const FINER = 3; // times as fine they are drawn
// Levels of 255 between the means over three pixels square, and the share of the pixels that may be
// further apart: docs/screen.md has the reason.
const TOLERANCE = 64;
const SHARE = 2e-4;

function sheetsOf(file) {
	return [...fs.readFileSync(file, 'utf8').matchAll(/<section class="sheet" id="sheet-([^"]*)"/g)]
		.map((match) => match[1]);
}

// The browser stretches a picture to whole pixels, by 1 in 7,500 on A1: it is given whole pixels,
// and the ground that fills them.
async function inBrowser(browser, svg, png) {
	const [, wide, high] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(fs.readFileSync(svg, 'utf8'));
	const [width, height] = [wide, high].map((mm) => Math.ceil(mm / 25.4 * DPI - 0.01));
	const page = await browser.open(svg, { width, height, scale: FINER });
	const ground = [width, height].map((pixels) => pixels * 2540 / DPI);
	await page.ask(`Object.entries({ width: '${width}px', height: '${height}px', viewBox: '0 0 ${ground.join(' ')}' })
		.forEach(([name, value]) => document.documentElement.setAttribute(name, value))`);
	await page.picture(png);
	await page.close();
}

function drawByLibrsvg(svg, png) {
	execFileSync('rsvg-convert', ['-d', DPI * FINER, '-p', DPI * FINER, '-b', 'white', '-o', png, svg]);
}

const look = (name) => reduced(read(folder + '/' + name), FINER);

run(async () => {
	const browser = await Chromium.start();
	const sheets = sheetsOf(folder + '/set.html');
	let most = 0;
	try {
		for (const [index, sheet] of sheets.entries()) {
			const svg = `${folder}/${sheet}.svg`, at = folder + '/picture';
			await inBrowser(browser, svg, at + '.browser.png');
			drawByLibrsvg(svg, at + '.rsvg.png');
			execFileSync('pdftoppm', ['-gray', '-r', DPI * FINER, '-f', index + 1, '-l', index + 1,
				'-singlefile', folder + '/set.pdf', at]);
			const pictures = { browser: look('picture.browser.png'), librsvg: look('picture.rsvg.png'), PDF: look('picture.pgm') };
			for (const [one, other] of [['browser', 'librsvg'], ['browser', 'PDF'], ['librsvg', 'PDF']]) {
				const apart = compare(pictures[one], pictures[other], TOLERANCE);
				most = Math.max(most, apart.count / apart.pixels);
				check(`${sheet}: ${one} and ${other}`, apart.count <= SHARE * apart.pixels, apart);
			}
		}
		// The comparison itself sees what it looks for: the last sheet without the name on it.
		const svg = fs.readFileSync(`${folder}/${sheets[sheets.length - 1]}.svg`, 'utf8');
		const less = svg.replace(/<g class="t-title".*<\/g>/, '');
		fs.writeFileSync(folder + '/less.svg', less);
		drawByLibrsvg(folder + '/less.svg', folder + '/less.png');
		const apart = compare(look('picture.rsvg.png'), look('less.png'), TOLERANCE);
		check('a sheet without its name is seen to be another',
			svg !== less && apart.count > SHARE * apart.pixels, apart);
	} finally {
		await browser.end();
	}
	console.log(`# at most ${(most * 1e6).toFixed(0)} pixels in a million apart`);
});
