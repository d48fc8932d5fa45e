/** The tuner's sheet in a real browser, opened from disk with no network: what it fetches, how it prints, who can read it. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { tunersSheet } from '../../server/pages/tunersSheet';
import { sheetOf } from '../../server/tuning/sheet';
import { tunedTo } from '../helpers/tuned';
import { describeInEditor } from './inEditor';

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

declare const axe: { run(): Promise<{ readonly violations: readonly { readonly id: string }[] }> };

describeInEditor('the tuner’s sheet', () => {
  const folder = mkdtempSync(join(tmpdir(), 'bentside-sheet-'));
  const asked: string[] = [];
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    const divided = tunedTo('meantone 1/4', 415, 'instrument virginals\n  split d#/eb g#/ab\n');
    const file = join(folder, 'sheet.html');
    writeFileSync(file, tunersSheet(sheetOf(divided, tunedTo('werckmeister-3', 440))));
    browser = await chromium.launch({
      executablePath: CHROMIUM,
      headless: true,
      args: ['--no-sandbox', '--disable-gpu'],
    });
    const context = await browser.newContext({ offline: true });
    page = await context.newPage();
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`file://${file}`);
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  it('asks for nothing but itself', () => {
    expect(asked.map((address) => address.slice(address.lastIndexOf('/') + 1))).toEqual(['sheet.html']);
  });
  it('draws a string for each note of the bearings and the fork, all its writing within the picture', async () => {
    const strings = page.locator('svg .string');
    expect(await strings.count()).toBe(15);
    const inside = await page.evaluate(() => {
      const frame = document.querySelector('svg')?.getBoundingClientRect();
      return [...document.querySelectorAll('svg text, svg line, svg circle, svg path')].every((element) => {
        const { left, right, top, bottom } = element.getBoundingClientRect();
        return (
          frame !== undefined &&
          left >= frame.left - 1 &&
          right <= frame.right + 1 &&
          top >= frame.top - 1 &&
          bottom <= frame.bottom + 1
        );
      });
    });
    expect(inside).toBe(true);
  });
  it('prints on four leaves of A4 at most, nothing wider than the paper', async () => {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)?.length).toBeLessThanOrEqual(4);
    // A4 in points, 210 by 297 millimetres.
    expect(pdf).toMatch(/\/MediaBox \[0 0 59[45](?:\.\d+)? 84[12](?:\.\d+)?\]/);
    await page.setViewportSize({ width: 794, height: 1123 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(794);
  });
  it('can be read by people who do not see it: axe finds nothing wrong', async () => {
    await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
    expect(await page.evaluate(async () => (await axe.run()).violations.map(({ id }) => id))).toEqual([]);
    expect(await page.locator('svg desc').textContent()).toContain('a3-a4');
  });
});
