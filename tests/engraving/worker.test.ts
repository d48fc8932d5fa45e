/** The engraver's bundle as a web worker loads it: in a browser, from files alone. */
import { existsSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { meiTree } from '../../server/export/mei';
import { printXml } from '../../server/export/xml';
import { lane, scoreOf } from '../helpers/music';

const ROOT = join(import.meta.dirname, '../..');
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const BUNDLE = join(ROOT, 'dist/engraving');

const MEDIA: Readonly<Record<string, string>> = { '.js': 'text/javascript', '.mjs': 'text/javascript' };

/** Draws what it is sent and sends the first page back. */
const WORKER = `import { loadEngraver } from './engraver.js';
const engraver = fetch('./font.zip').then(async (font) => loadEngraver(new Uint8Array(await font.arrayBuffer())));
onmessage = async ({ data }) => {
  const who = await engraver;
  postMessage('failure' in who ? who.failure : who.draw(data, { breaks: 'none' }).pages[0]);
};`;

const PAGE = `<!doctype html><script type="module">
window.draw = (mei) => new Promise((resolve, reject) => {
  const worker = new Worker('./worker.js', { type: 'module' });
  worker.onmessage = ({ data }) => resolve(data);
  worker.onerror = ({ message }) => reject(new Error(message));
  worker.postMessage(mei);
});
</script>`;

const OWN: Readonly<Record<string, readonly [type: string, text: string]>> = {
  '/': ['text/html', PAGE],
  '/worker.js': ['text/javascript', WORKER],
};

let server: Server;
let address = '';

beforeAll(async () => {
  server = createServer(({ url = '/' }, response) => {
    const own = OWN[url];
    const file = join(BUNDLE, url);
    if (own !== undefined) response.writeHead(200, { 'content-type': own[0] }).end(own[1]);
    else if (!existsSync(file)) response.writeHead(404).end();
    else response.writeHead(200, { 'content-type': MEDIA[extname(url)] ?? 'application/zip' }).end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
});
afterAll(() => new Promise((resolve) => server.close(resolve)));

async function drawsInWorker(): Promise<void> {
  const { root } = meiTree(scoreOf(lane('2 c5 d')), { clefs: 'source', leaveGaps: false });
  if (root === undefined) throw new Error('no score');
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const page = await browser.newPage();
    await page.goto(address);
    const svg = await page.evaluate<string>(`window.draw(${JSON.stringify(printXml(root).text)})`);
    expect(svg).toContain('data-id="e-1-1-dessus-1.1"');
    // SMuFL 1.4: U+E0A3 noteheadHalf.
    expect(svg.match(/href="#E0A3/g)).toHaveLength(2);
  } finally {
    await browser.close();
  }
}

const NAME = 'draws two minims in a web worker';

if (existsSync(CHROMIUM)) test(NAME, drawsInWorker);
else if (process.env.CI === 'true') test(NAME, () => expect.fail('the Debian package chromium is missing'));
else {
  console.warn('the test of drawing in a web worker needs the Debian package chromium');
  test.skip(NAME, drawsInWorker);
}
