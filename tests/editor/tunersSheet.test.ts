/** The tuner's sheet in a real browser, opened from disk with no network: what it fetches, how it prints, who can read it. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { tunersSheet } from '../../server/pages/tunersSheet';
import { sheetOf } from '../../server/tuning/sheet';
import { tunedTo } from '../helpers/tuned';
import { FromDisk, overlapsInPage, PAPER } from './fromDisk';
import { describeInEditor } from './inEditor';

describeInEditor('the tuner’s sheet', () => {
  let sheet: FromDisk;
  beforeAll(async () => {
    const divided = tunedTo('meantone 1/4', 415, 'instrument virginals\n  split d#/eb g#/ab\n');
    sheet = await FromDisk.open(tunersSheet(sheetOf(divided, tunedTo('werckmeister-3', 440))));
  });
  afterAll(() => sheet.close());

  it('asks for nothing but itself, and nothing goes wrong in it', () => {
    expect([sheet.asked, sheet.errors]).toEqual([['page.html'], []]);
  });
  it('draws a string for each note of the bearings and the fork, all its writing within the picture', async () => {
    const strings = sheet.page.locator('svg .string');
    expect(await strings.count()).toBe(15);
    const inside = await sheet.page.evaluate(() => {
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
  it('prints on four leaves of A4 at most, nothing wider than the paper and nothing over anything else', async () => {
    const leaves = await sheet.leaves();
    expect(leaves.length).toBeLessThanOrEqual(4);
    expect(leaves[0]).toEqual({ width: 210, height: 297 });
    await sheet.asOnPaper();
    expect(await sheet.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PAPER.width);
    expect(await sheet.page.evaluate(overlapsInPage)).toEqual([]);
  });
  it('can be read by people who do not see it: axe finds nothing wrong', async () => {
    await sheet.page.emulateMedia({ media: 'screen' });
    expect(await sheet.violations()).toEqual([]);
    expect(await sheet.page.locator('svg desc').textContent()).toContain('a3-a4');
  });
});
