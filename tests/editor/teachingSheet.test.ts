/** The overture’s teaching sheet in a real browser, opened from disk with no network: it draws, plays, prints, and can be read by all. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sampleProject } from '../helpers/samples';
import { sheetOf } from '../helpers/sheets';
import { FromDisk, overlapsInPage, PAPER } from './fromDisk';
import { describeInEditor } from './inEditor';

/** What the test hears: an analyser beside the page’s way to the loudspeaker. */
interface Ear {
  analyser?: AnalyserNode;
}
declare const window: { ear: Ear };

/** Runs in the page before its script. */
function listen(): void {
  window.ear = {};
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
  const listened = function (this: AudioNode, to: AudioNode): AudioNode {
    if (to instanceof AudioDestinationNode) {
      window.ear.analyser = new AnalyserNode(this.context);
      connect.call(this, window.ear.analyser);
    }
    return connect.call(this, to);
  };
  AudioNode.prototype.connect = listened as typeof AudioNode.prototype.connect;
}

/** Runs in the page: the loudest of what sounds just now; 0 in silence or where nothing runs. */
function loudness(): number {
  const { analyser } = window.ear;
  if (analyser?.context.state !== 'running') return 0;
  const samples = new Float32Array(analyser.fftSize);
  analyser.getFloatTimeDomainData(samples);
  return samples.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
}

describeInEditor('the overture’s teaching sheet', () => {
  let sheet: FromDisk;
  beforeAll(async () => {
    const { page } = await sheetOf(sampleProject('overture.bent'));
    sheet = await FromDisk.open(page, listen);
  }, 180_000);
  afterAll(() => sheet.close());

  const button = (name: string) => sheet.page.getByRole('button', { name, exact: true });
  const heard = () => sheet.page.evaluate(loudness);

  it('asks for nothing but itself, and nothing goes wrong in it', () => {
    expect([sheet.asked, sheet.errors]).toEqual([['page.html'], []]);
  });
  it('draws every line of the source: all its pictures have a size and ink', async () => {
    const pictures = sheet.page.locator('.line figure > svg');
    expect(await pictures.count()).toBeGreaterThan(17 * 3);
    const empty = await pictures.evaluateAll(
      (all) =>
        all.filter((one) => one.getBoundingClientRect().height < 40 || one.querySelectorAll('use').length < 3).length,
    );
    expect(empty).toBe(0);
    const glyph = await sheet.page.locator('.line figure > svg use').first().boundingBox();
    expect(glyph?.height).toBeGreaterThan(5);
  });
  it('plays a line when its button is pressed, marks it, and stops when it is pressed again', async () => {
    const play = button('Play bars 1 to 3, french, as played');
    await play.click();
    await expect.poll(heard, { timeout: 10_000 }).toBeGreaterThan(0.01);
    const stop = button('Stop bars 1 to 3, french, as played');
    expect(await sheet.page.locator('.sounding figcaption').allTextContents()).toEqual([
      expect.stringContaining('french'),
    ]);
    expect(await sheet.page.getByRole('status').textContent()).toBe('Playing bars 1 to 3, french, as played');
    await stop.click();
    await expect.poll(heard).toBe(0);
    expect(await sheet.page.locator('.sounding').count()).toBe(0);
  });
  it('is played by keys alone, one line at a time, until Escape', async () => {
    await button('Play bars 1 to 3, as written, in modern clefs').focus();
    await sheet.page.keyboard.press('Enter');
    await expect.poll(heard, { timeout: 10_000 }).toBeGreaterThan(0.01);
    await button('Play bars 4 to 7, plain, as played').focus();
    await sheet.page.keyboard.press('Space');
    await expect.poll(() => sheet.page.getByRole('status').textContent()).toBe('Playing bars 4 to 7, plain, as played');
    expect(await sheet.page.locator('.sounding').count()).toBe(1);
    await sheet.page.keyboard.press('Escape');
    await expect.poll(heard).toBe(0);
  });
  it('folds its answers until they are asked for', async () => {
    const answer = sheet.page.locator('details').first();
    expect(await answer.locator('svg').first().isVisible()).toBe(false);
    await answer.locator('summary').click();
    expect(await answer.locator('svg').first().isVisible()).toBe(true);
    await answer.locator('summary').click();
  });
  it('can be read by people who do not see it: axe finds nothing wrong', async () => {
    expect(await sheet.violations()).toEqual([]);
  });
  it('has its words well apart from their ground in a dark room, too', async () => {
    await sheet.page.emulateMedia({ colorScheme: 'dark' });
    expect(await sheet.violations('color-contrast')).toEqual([]);
    await sheet.page.screenshot({ path: 'out/editor/teaching-sheet-dark.png' });
    await sheet.page.emulateMedia({ colorScheme: 'light' });
  });
  it('prints on A4 without its buttons, nothing over anything else, no line of music broken by a leaf', async () => {
    const leaves = await sheet.leaves();
    expect(leaves.length).toBeGreaterThan(5);
    expect(leaves[0]).toEqual({ width: 210, height: 297 });
    await sheet.asOnPaper();
    expect(await sheet.page.locator('button:visible').count()).toBe(0);
    expect(await sheet.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PAPER.width);
    expect(await sheet.page.evaluate(overlapsInPage)).toEqual([]);
    const broken = await sheet.page
      .locator('figure')
      .evaluateAll(
        (all, height) =>
          all.filter(
            (one) => getComputedStyle(one).breakInside !== 'avoid' || one.getBoundingClientRect().height > height,
          ).length,
        PAPER.height,
      );
    expect(broken).toBe(0);
    await sheet.page.screenshot({ path: 'out/editor/teaching-sheet-print.png' });
  });
});
