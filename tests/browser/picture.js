// picture.js - a picture as grey levels, from PNG (8 bits a channel, not interlaced) or PGM; and
// how far two pictures are apart.
'use strict';
const fs = require('fs');
const zlib = require('zlib');

function grey(r, g, b) {
	return Math.round(0.2126 * r + 0.7152 * g + 0.0722 * b);
}

// Undoes the filters of PNG, row by row, in place.
function unfilter(data, height, stride, step) {
	for (let y = 0; y < height; y++) {
		const at = y * (stride + 1) + 1, filter = data[at - 1], up = at - stride - 1;
		for (let i = 0; filter && i < stride; i++) {
			const a = i >= step ? data[at + i - step] : 0, b = y ? data[up + i] : 0;
			const c = i >= step && y ? data[up + i - step] : 0;
			const p = a + b - c, pa = Math.abs(p - a), pb = Math.abs(p - b), pc = Math.abs(p - c);
			const paeth = pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
			data[at + i] += [0, a, b, (a + b) >> 1, paeth][filter];
		}
	}
}

function fromPng(bytes) {
	const chunks = [];
	let width, height, kind;
	for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at)) {
		const name = bytes.toString('latin1', at + 4, at + 8);
		const body = bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at));
		if (name === 'IHDR') {
			[width, height, kind] = [body.readUInt32BE(0), body.readUInt32BE(4), body[9]];
			if (body[8] !== 8 || body[12] !== 0)
				throw new Error('PNG of another depth, or interlaced');
		}
		if (name === 'IDAT')
			chunks.push(body);
	}
	const step = { 0: 1, 2: 3, 4: 2, 6: 4 }[kind];
	const data = zlib.inflateSync(Buffer.concat(chunks)), stride = width * step;
	unfilter(data, height, stride, step);
	const levels = new Uint8Array(width * height);
	for (let y = 0; y < height; y++)
		for (let x = 0; x < width; x++) {
			const at = y * (stride + 1) + 1 + x * step;
			levels[y * width + x] = step < 3 ? data[at] : grey(data[at], data[at + 1], data[at + 2]);
		}
	return { width, height, levels };
}

function fromPgm(bytes) {
	const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40));
	return { width: +head[1], height: +head[2], levels: bytes.subarray(head[0].length) };
}

function read(file) {
	const bytes = fs.readFileSync(file);
	return bytes[0] === 0x89 ? fromPng(bytes) : fromPgm(bytes);
}

// The mean of each pixel and its eight neighbours: where between pixels a line's edge falls, and
// by how much a drawer widens a thin line to whole pixels, tells little; a line more or less, or
// one that lies elsewhere, tells a third of its darkness.
function softened(picture) {
	const { width, levels } = picture;
	const rows = new Uint16Array(levels.length), soft = new Uint8Array(levels.length);
	for (let i = 1; i + 1 < levels.length; i++)
		rows[i] = levels[i - 1] + levels[i] + levels[i + 1];
	for (let i = width; i + width < levels.length; i++)
		soft[i] = Math.round((rows[i - width] + rows[i] + rows[i + width]) / 9);
	return soft;
}

// The same part of both, where one is a row or column larger by rounding.
function cut(picture, width, height) {
	if (picture.width === width)
		return { width, height, levels: picture.levels.subarray(0, width * height) };
	const levels = new Uint8Array(width * height);
	for (let y = 0; y < height; y++)
		levels.set(picture.levels.subarray(y * picture.width, y * picture.width + width), y * width);
	return { width, height, levels };
}

// The mean of each square of n by n pixels: how a line's edge falls on the pixels no longer tells.
function reduced(picture, n) {
	const width = Math.floor(picture.width / n), height = Math.floor(picture.height / n);
	const levels = new Uint8Array(width * height);
	for (let y = 0; y < height; y++)
		for (let x = 0; x < width; x++) {
			let sum = 0;
			for (let v = 0; v < n; v++)
				for (let u = 0; u < n; u++)
					sum += picture.levels[(y * n + v) * picture.width + x * n + u];
			levels[y * width + x] = Math.round(sum / (n * n));
		}
	return { width, height, levels };
}

function compare(a, b, tolerance) {
	if (Math.abs(a.width - b.width) > 1 || Math.abs(a.height - b.height) > 1)
		throw new Error(`sizes ${a.width} x ${a.height} and ${b.width} x ${b.height}`);
	const width = Math.min(a.width, b.width), height = Math.min(a.height, b.height);
	const one = cut(a, width, height), other = cut(b, width, height);
	const soft = softened(one), hard = softened(other);
	let count = 0, worst = 0, at = 0;
	for (let i = 0; i < soft.length; i++) {
		const off = Math.abs(soft[i] - hard[i]);
		if (off > tolerance)
			count++;
		if (off > worst)
			[worst, at] = [off, i];
	}
	return { count, pixels: soft.length, worst, x: at % width, y: Math.floor(at / width) };
}

module.exports = { read, reduced, compare };
