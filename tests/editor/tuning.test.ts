/**
 * The tuning panel, in a real workbench.
 *
 * Beats of equal temperament on a4 = 440: Capleton, Journal of Neuroscience 32 (35), 2012, table 1, to one decimal; the second
 * place, and those of quarter-comma meantone, are computed from the definition, |n f(low) − m f(high)|.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { measured } from '../helpers/frequency';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const scoreIn = (tuning: string, more = ''): string => `bentside 1
${more}pitch a4 = 440
tuning ${tuning}
stave upper
voice dessus upper
system upper C1 meter C
  dessus | 4 c5 d e f | 1 g4 |||
`;
const AIR = scoreIn(
  'equal  // as it came',
  'include "shared/house.bent"\nreading pure "in pure thirds"\n  tuning meantone 1/4 wolf c#-ab\n',
);
const NEXT = scoreIn('meantone 1/4');
const HOUSE = 'bentside 1\ntemperament house\n  c-g -1/4 pc\n  g-d -1/4 pc\n  d-a -1/4 pc\n  b-f# -1/4 pc\n';

const THEMES = ['Default Light Modern', 'Default Dark Modern', 'Default High Contrast', 'Default High Contrast Light'];

describeInEditor('the tuning panel', () => {
  let bench: Workbench;
  const at = (selector: string) => bench.view().locator(selector);
  /** Beats of a step of the list: `6.93 wide`. */
  const beatsOf = (interval: string) =>
    at('#steps li')
      .filter({ has: bench.view().getByText(interval, { exact: true }) })
      .locator('span')
      .last()
      .textContent();
  /** Chooses what begins so. */
  const choose = (selector: string, label: string) => at(selector).evaluate(takeOption, label);

  beforeAll(async () => {
    bench = await Workbench.open({ files: { 'air.bent': AIR, 'next.bent': NEXT, 'shared/house.bent': HOUSE } });
    await bench.openFile('next.bent');
    await bench.run('workbench.action.keepEditor');
    await bench.openFile('air.bent');
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('is opened from above the tuning in the text', async () => {
    await bench.page
      .locator('.codelens-decoration a', { hasText: 'How to tune: equal temperament, a4 = 440 Hz' })
      .click();
    await at('#steps li').first().waitFor({ timeout: 30_000 });
    expect(await at('#title').textContent()).toBe('equal temperament');
    await bench.page.locator('.tab', { hasText: 'Tuning: air.bent' }).waitFor();
  });

  it('has the beats of the table, step by step and for every fifth and third', async () => {
    expect(await beatsOf('f3-a3')).toBe('6.93 wide');
    expect(await beatsOf('f3-c4')).toBe('0.59 narrow');
    expect(await beatsOf('c4-e4')).toBe('10.38 wide');
    const rows = await at('#tables table').filter({ hasText: 'Minor thirds' }).locator('tbody tr').allTextContents();
    expect(rows).toContain('a-c−15.6411.87 narrow');
  });

  it('walks through the steps by keys, says each, and marks its strings', async () => {
    await at('#steps').focus();
    for (let times = 0; times < 4; times++) await bench.page.keyboard.press('ArrowDown');
    expect(await at('#now').textContent()).toBe(
      'Step 5 of 12: f3 from c4, fifth: 0.59 beats a second (35 a minute), narrow. Listen where partial 3 of f3 meets partial 2 of c4, near 524 Hz.',
    );
    expect(await at('#steps li[aria-selected="true"]').textContent()).toContain('f3-c4');
    expect(await at('#drawing .now[data-string]').evaluateAll(namesOfStrings)).toEqual(['f3', 'c4']);
    expect(await at('#drawing .laid[data-string]').evaluateAll(namesOfStrings)).toEqual([
      'f3',
      'g3',
      'a3',
      'c4',
      'd4',
      'a4',
    ]);
    await at('#on').click();
    expect(await at('#now').textContent()).toMatch(/^Proof after step 5: f3-a3, major third: 6\.93 beats a second/);
    await bench.page.keyboard.press('End');
    expect(await at('#now').textContent()).toMatch(/^Proof after step 12: g#3-eb4, fifth/);
  });

  it('shows the whole drawing to whoever walks in a narrow panel, below what is told of the step', async () => {
    await bench.page.setViewportSize({ width: 960, height: 760 });
    await at('#steps').focus();
    await bench.page.keyboard.press('Home');
    await bench.page.keyboard.press('ArrowDown');
    await bench.picture('tuning-narrow');
    const [told, drawn, foot] = await Promise.all(
      ['#now', '#drawing svg', '#status'].map((of) => at(of).boundingBox()),
    );
    expect(drawn?.y).toBeGreaterThan((told?.y ?? 0) + (told?.height ?? 0));
    expect((drawn?.y ?? 0) + (drawn?.height ?? 0)).toBeLessThanOrEqual((foot?.y ?? 0) + 1);
    await bench.page.setViewportSize({ width: 1280, height: 800 });
  });

  it('sounds a step as it is tempered, and pure: the third on f3 is 5 to 4 then', async () => {
    const frame = await (await at('#steps').elementHandle())?.ownerFrame();
    await frame?.evaluate(hearWhatStarts);
    await at('#steps li')
      .filter({ has: bench.view().getByText('f3-a3', { exact: true }) })
      .click();
    for (const [button, a3] of [
      ['#tempered', 220],
      ['#pure', 218.268],
    ] as const) {
      await at(button).click();
      await expect.poll(() => frame?.evaluate(hasStarted)).toBe(true);
      const { rate, samples } = (await frame?.evaluate(heard)) ?? { rate: 1, samples: [] };
      const strings = [174.614, a3].map((near) => measured(Float32Array.from(samples), near, rate));
      expect(strings, button).toEqual([expect.closeTo(174.614, 1), expect.closeTo(a3, 1)]);
    }
    await at('#silent').click();
    expect(await at('#status').textContent()).toBe('');
  });

  it('lays it at any a, and says what is not', async () => {
    await at('#pitch').fill('415');
    await at('#pitch').press('Enter');
    // 6.929 · 415/440
    await expect.poll(() => beatsOf('f3-a3')).toBe('6.54 wide');
    await at('#pitch').fill('100');
    await at('#pitch').press('Enter');
    expect(await at('#status').textContent()).toBe('Give the a above middle C between 300 and 600 hertz.');
    await choose('#standard', '440: modern pitch');
    await expect.poll(() => beatsOf('f3-a3')).toBe('6.93 wide');
  });

  it('tunes for what is typed, and says what is no temperament', async () => {
    await at('#words').fill('meantone 1/4 wolf g#-eb');
    await at('#words').press('Enter');
    await expect.poll(() => beatsOf('f3-c4')).toBe('1.64 narrow');
    expect(await beatsOf('a3-e4')).toBe('2.05 narrow');
    await at('#words').fill('nosuch');
    await at('#words').press('Enter');
    await at('#status').filter({ hasText: 'No temperament is called “nosuch”.' }).waitFor();
    await choose('#wanted', 'werckmeister-3');
    await expect.poll(() => at('#title').textContent()).toBe('Werckmeister 1691, the third');
  });

  it('knows the temperament of a file that is included: with Werckmeister’s fifths it is his', async () => {
    const his = await at('#steps li').allTextContents();
    await choose('#wanted', 'house');
    await expect.poll(() => at('#title').textContent()).toBe('house, as the file defines it');
    expect(await at('#steps li').allTextContents()).toEqual(his);
  });

  it('tells what moves from this piece to the next', async () => {
    await choose('#before', 'pure: ');
    await choose('#wanted', 'next.bent');
    await expect.poll(() => at('#steps li').count()).toBe(1);
    expect(await at('#now').textContent()).toMatch(/^Step 1 of 1: g#3 from c#4, fourth: /);
    const moves = at('#tables table').filter({ hasText: 'What moves' });
    // The lesser diesis, 41.059 cents.
    expect(await moves.locator('tbody tr').allTextContents()).toEqual(['ab becomes g#−41.1']);
    await bench.picture('tuning-retuning');
  });

  it('writes it into the file, which can be undone', async () => {
    await at('#writes').filter({ hasText: 'tuning meantone 1/4 wolf g#-eb' }).waitFor();
    await at('#write').click();
    await bench.line('tuning meantone 1/4 wolf g#-eb').waitFor();
    await at('#writes').filter({ hasText: 'The file has this tuning.' }).waitFor();
    await bench.run('workbench.action.focusFirstEditorGroup');
    expect(await bench.saved('air.bent')).toBe(AIR.replace('equal', 'meantone 1/4 wolf g#-eb'));
    await bench.run('undo');
    await bench.line('tuning equal').waitFor();
    expect(await bench.saved('air.bent')).toBe(AIR);
  });

  it('is as it was when the window is loaded again', async () => {
    await choose('#before', 'not said');
    await choose('#wanted', 'vallotti');
    await expect.poll(() => at('#title').textContent()).toBe('Vallotti');
    await at('#steps').focus();
    await bench.page.keyboard.press('ArrowDown');
    await bench.page.keyboard.press('ArrowDown');
    const now = await at('#now').textContent();
    await bench.reload();
    await at('#steps li').first().waitFor({ timeout: 30_000 });
    expect(await at('#title').textContent()).toBe('Vallotti');
    expect(await at('#now').textContent()).toBe(now);
  });

  it('asks no other machine for anything', () => {
    expect(bench.outside).toEqual([]);
  });
});

describeInEditor('the tuning panel in every kind of theme', () => {
  it.each(THEMES)('can be read and used: axe finds nothing wrong in %s', async (theme) => {
    const bench = await Workbench.open({ files: { 'air.bent': AIR }, settings: { 'workbench.colorTheme': theme } });
    try {
      await bench.openFile('air.bent');
      await bench.run('bentside.openTuning');
      const view = bench.view();
      await view.locator('#steps li').first().waitFor({ timeout: 30_000 });
      for (let times = 0; times < 4; times++) await view.locator('#on').click();
      const name = theme.replaceAll(' ', '-').toLowerCase();
      await bench.picture(`tuning-${name}`);
      const frame = await (await view.locator('#steps').elementHandle())?.ownerFrame();
      await frame?.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
      expect(await frame?.evaluate(axeViolations)).toEqual([]);
      await bench.run('workbench.action.toggleMaximizeEditorGroup');
      await view.locator('#tables').evaluate(bringIntoView);
      await bench.picture(`tuning-${name}-tables`);
    } finally {
      await bench.close();
    }
  });
});

/** These run in the page. */
interface InPage {
  readonly dataset: Readonly<Record<string, string>>;
  value: string;
  readonly options: Iterable<{ readonly text: string; readonly value: string }>;
  dispatchEvent(event: unknown): void;
  scrollIntoView(): void;
}
declare const Event: new (kind: string, about: object) => unknown;
const namesOfStrings = (strings: readonly unknown[]): (string | undefined)[] =>
  strings.map((string) => (string as InPage).dataset.string);
const takeOption = (element: unknown, label: string): void => {
  const select = element as InPage;
  select.value = [...select.options].find(({ text }) => text.startsWith(label))?.value ?? '';
  select.dispatchEvent(new Event('change', { bubbles: true }));
};
/** What the page’s clock of sound begins to play is kept besides. */
interface Source {
  readonly buffer: { readonly sampleRate: number; getChannelData(channel: number): Float32Array };
}
declare const AudioBufferSourceNode: { readonly prototype: { start(this: Source, at?: number): void } };
type Hearing = { started?: Source | undefined };
const hearWhatStarts = (): void => {
  const { start } = AudioBufferSourceNode.prototype;
  AudioBufferSourceNode.prototype.start = function (at) {
    (globalThis as Hearing).started = this;
    start.call(this, at);
  };
};
const hasStarted = (): boolean => (globalThis as Hearing).started !== undefined;
/** Two seconds of what was started last. */
const heard = (): { rate: number; samples: number[] } => {
  const buffer = (globalThis as Hearing).started?.buffer;
  (globalThis as Hearing).started = undefined;
  const rate = buffer?.sampleRate ?? 1;
  return { rate, samples: [...(buffer?.getChannelData(0).subarray(0, 2 * rate) ?? [])] };
};
const bringIntoView = (element: unknown): void => (element as InPage).scrollIntoView();
declare const axe: { run(): Promise<{ readonly violations: readonly { readonly id: string }[] }> };
const axeViolations = async (): Promise<string[]> => (await axe.run()).violations.map(({ id }) => id);
