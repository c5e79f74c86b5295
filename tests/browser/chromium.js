// chromium.js - a browser without a window, driven over two pipes: the protocol of its
// developer tools, a message of JSON ended by a zero byte each way.
'use strict';
const { spawn } = require('child_process');
const fs = require('fs');
const os = require('os');
const path = require('path');

const PROGRAM = process.env.CHROMIUM || 'chromium';

class Chromium {
	static async start() {
		const browser = new Chromium();
		browser.folder = fs.mkdtempSync(path.join(os.tmpdir(), 'browser-'));
		browser.process = spawn(PROGRAM, ['--headless', '--no-sandbox', '--disable-gpu',
			'--hide-scrollbars', '--force-color-profile=srgb', '--disable-lcd-text',
			'--disable-background-networking', '--disable-dev-shm-usage',
			'--user-data-dir=' + browser.folder, '--remote-debugging-pipe', 'about:blank'],
			{ stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
		browser.number = 0;
		browser.waiting = new Map();
		browser.listeners = [];
		let held = '';
		browser.process.stdio[4].on('data', (data) => {
			const parts = (held + data.toString('utf8')).split('\0');
			held = parts.pop();
			parts.forEach((part) => browser.hear(JSON.parse(part)));
		});
		browser.process.on('exit', () => browser.waiting.forEach((w) =>
			w.reject(new Error('the browser has ended'))));
		return browser;
	}

	hear(message) {
		const waiting = this.waiting.get(message.id);
		if (!waiting) {
			this.listeners.forEach((listener) => listener(message));
			return;
		}
		this.waiting.delete(message.id);
		if (message.error)
			waiting.reject(new Error(message.error.message));
		else
			waiting.resolve(message.result);
	}

	send(method, params, sessionId) {
		const id = ++this.number;
		this.process.stdio[3].write(JSON.stringify({ id, method, params, sessionId }) + '\0');
		return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
	}

	// A page of that size on the screen, with a file open in it.
	async open(file, screen) {
		const { targetId } = await this.send('Target.createTarget', { url: 'about:blank' });
		const { sessionId } = await this.send('Target.attachToTarget', { targetId, flatten: true });
		const page = new Page(this, sessionId, targetId);
		this.listeners.push((message) => message.sessionId === sessionId && page.hear(message));
		for (const domain of ['Page', 'Runtime', 'Network', 'Log'])
			await page.send(domain + '.enable');
		await page.send('Emulation.setDeviceMetricsOverride', { width: screen.width,
			height: screen.height, deviceScaleFactor: screen.scale || 1, mobile: !!screen.touch });
		if (screen.touch)
			await page.send('Emulation.setTouchEmulationEnabled', { enabled: true });
		if (screen.noScript)
			await page.send('Emulation.setScriptExecutionDisabled', { value: true });
		await page.go('file://' + path.resolve(file));
		return page;
	}

	async end() {
		const ended = new Promise((resolve) => this.process.on('exit', resolve));
		await this.send('Browser.close').catch(() => 0);
		await ended;
		fs.rmSync(this.folder, { recursive: true, force: true });
	}
}

class Page {
	constructor(browser, session, target) {
		Object.assign(this, { browser, session, target, faults: [], requests: [] });
	}

	send(method, params) {
		return this.browser.send(method, params || {}, this.session);
	}

	hear(message) {
		const params = message.params;
		if (message.method === 'Page.loadEventFired' && this.loaded)
			this.loaded();
		if (message.method === 'Runtime.exceptionThrown')
			this.faults.push(params.exceptionDetails.exception.description);
		if (message.method === 'Log.entryAdded' && params.entry.level === 'error')
			this.faults.push(params.entry.text);
		if (message.method === 'Network.requestWillBeSent')
			this.requests.push(params.request.url);
	}

	async go(url) {
		const loaded = new Promise((resolve) => { this.loaded = resolve; });
		await this.send('Page.navigate', { url });
		await loaded;
	}

	// The value of an expression in the page.
	async ask(expression) {
		const answer = await this.send('Runtime.evaluate',
			{ expression, returnByValue: true, awaitPromise: true });
		if (answer.exceptionDetails)
			throw new Error(answer.exceptionDetails.exception.description + ': ' + expression);
		return answer.result.value;
	}

	async picture(file) {
		const { data } = await this.send('Page.captureScreenshot', { format: 'png' });
		if (file)
			fs.writeFileSync(file, Buffer.from(data, 'base64'));
		return Buffer.from(data, 'base64');
	}

	async print(file) {
		const { data } = await this.send('Page.printToPDF',
			{ preferCSSPageSize: true, printBackground: true });
		fs.writeFileSync(file, Buffer.from(data, 'base64'));
	}

	async press(key, modifiers) {
		const codes = { Tab: 9, Enter: 13, Escape: 27, ArrowRight: 39, ArrowDown: 40, ' ': 32 };
		const text = key === 'Enter' ? '\r' : key.length === 1 ? key : undefined;
		const event = { key, text, modifiers: modifiers || 0,
			windowsVirtualKeyCode: codes[key] || key.charCodeAt(0) };
		await this.send('Input.dispatchKeyEvent', { type: text ? 'keyDown' : 'rawKeyDown', ...event });
		await this.send('Input.dispatchKeyEvent', { type: 'keyUp', ...event });
	}

	mouse(type, x, y, more) {
		return this.send('Input.dispatchMouseEvent', { type, x, y, button: 'left', ...more });
	}

	async click(x, y) {
		await this.mouse('mouseMoved', x, y, { button: 'none' });
		await this.mouse('mousePressed', x, y, { clickCount: 1, buttons: 1 });
		await this.mouse('mouseReleased', x, y, { clickCount: 1 });
	}

	touch(type, points) {
		return this.send('Input.dispatchTouchEvent', { type, touchPoints: points });
	}

	close() {
		return this.browser.send('Target.closeTarget', { targetId: this.target });
	}
}

module.exports = { Chromium };
