/** Playing in the score panel, in a real workbench. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const PRELUDE = `bentside 1
stave upper
stave lower
voice dessus upper
voice basse lower
page "4v"
system free upper G2 lower F4
  dessus | 1 (down) c3'u (home) e4 g c5'w2 e g |||
`;

const AIR = `bentside 1
title "Air"
instrument harpsichord  compass c2-c6
  short-octave c/e
pitch a4 = 415
tuning meantone 1/4 sc
tempo 4 at 90
stave upper
stave lower
voice dessus upper
voice basse lower
reading french
  practice overdot
  signs anglebert-1689
  tuning werckmeister-3
page "2v"
system upper G2 lower F4 meter C
  dessus | 4. c5 8 d 4. e 8 f | 2 g4'zz 2 c5 | 4 c5 d e f | 2 g4 2 c5 |
  basse  | 1 c2               | 1 e2         | 1 f2       | 1 c3      |
page "3r"
system
  dessus | 4. c5 8 d 4. e 8 f | 1 c5 |||
  basse  | 1 c2               | 1 c2 |||
`;

describeInEditor('playing in the score panel', () => {
  let bench: Workbench;
  const at = (selector: string, having: { hasText?: string | RegExp } = {}) => bench.view().locator(selector, having);
  const note = (id: string) => at(`[data-id="${id}"]`).first();
  const sounding = (id: string) => at(`.sounding[data-id="${id}"]`).first();

  beforeAll(async () => {
    bench = await Workbench.open({ files: { 'air.bent': AIR, 'prelude.bent': PRELUDE } });
    await bench.openFile('air.bent');
    await bench.run('bentside.showPanel');
    await note('e-2v-1-dessus-1.1').waitFor({ timeout: 30_000 });
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('begins at the marked note, marks what sounds, and says in which tuning', async () => {
    await note('e-2v-1-dessus-2.1').locator('.notehead').click();
    await at('.at-caret[data-id="e-2v-1-dessus-2.1"]').waitFor();
    await at('#play').click();
    await sounding('e-2v-1-dessus-2.1').waitFor();
    expect(await at('#play').textContent()).toBe('Stop');
    expect(await at('#status').textContent()).toContain('1/4-comma meantone');
    await bench.picture('playback');
    await at('#play').click();
    expect(await at('.sounding').count()).toBe(0);
  });

  it('goes on at the same place when the other reading is heard, in its own tuning', async () => {
    await at('#playback summary').click();
    await expect.poll(() => at('#reading-b').inputValue()).toBe('french');
    await note('e-2v-1-dessus-1.1').locator('.notehead').dblclick();
    await sounding('e-2v-1-dessus-2.1').waitFor();
    await at('#score').focus();
    await bench.page.keyboard.press('a');
    await at('#side-b[aria-pressed="true"]').waitFor();
    // It plays on from the second bar: had it begun anew, bar 1 would come first and take nearly three seconds.
    await sounding('e-2v-1-dessus-2.2').waitFor({ timeout: 2_400 });
    await bench.page.keyboard.press('p');
  });

  it('says of another temperament that it is that which sounds', async () => {
    await at('#tuning-b').selectOption('vallotti');
    await at('#play').click();
    await at('#status', { hasText: /Vallotti/ }).waitFor();
    await at('#play').click();
    await at('#side-a').click();
  });

  it('takes longer at half the tempo', async () => {
    await at('#pace').selectOption('0.5');
    const begun = Date.now();
    await note('e-2v-1-dessus-1.1').locator('.notehead').dblclick();
    await sounding('e-2v-1-dessus-1.1').waitFor();
    await sounding('e-2v-1-dessus-1.2').waitFor();
    // A dotted crotchet at 45 crotchets a minute: two seconds.
    expect(Date.now() - begun).toBeGreaterThan(1_900);
    await at('#play').click();
    await at('#pace').selectOption('1');
  });

  it('repeats the bars that are named, and frames them on the page', async () => {
    await at('#loop-from').fill('3');
    await at('#loop-to').fill('3');
    await at('#loop').click();
    await note('e-2v-1-dessus-3.1').locator('.notehead').dblclick();
    await at('.measure > rect.looped').waitFor();
    await sounding('e-2v-1-dessus-3.4').waitFor();
    await sounding('e-2v-1-dessus-3.1').waitFor();
    await bench.picture('playback-loop');
    await at('#loop-to').fill('99');
    await at('#loop-to').blur();
    await at('#loop-to[aria-invalid="true"]').waitFor();
    await at('#loop-to').fill('3');
    await at('#loop').click();
    await at('rect.looped').waitFor({ state: 'detached' });
    await at('#play').click();
  });

  it('repeats from the marked note to one that is clicked with Shift', async () => {
    await note('e-2v-1-dessus-2.1').locator('.notehead').click();
    // The server has said in which bar it is.
    await at('#status', { hasText: 'bar 2' }).waitFor();
    await note('e-2v-1-dessus-3.2')
      .locator('.notehead')
      .click({ modifiers: ['Shift'] });
    await at('#loop[aria-pressed="true"]').waitFor();
    expect([await at('#loop-from').inputValue(), await at('#loop-to').inputValue()]).toEqual(['2', '3']);
    await at('#loop').click();
  });

  it('repeats from a note that was just clicked, before the server has said in which bar it is', async () => {
    const clicked = (id: string, shiftKey: boolean) =>
      note(id)
        .locator('.notehead')
        .evaluate((head, shift) => {
          head.dispatchEvent(new MouseEvent('click', { bubbles: true, shiftKey: shift }));
        }, shiftKey);
    await at('#loop-from').fill('');
    await Promise.all([clicked('e-2v-1-dessus-1.1', false), clicked('e-2v-1-dessus-2.1', true)]);
    await at('#loop[aria-pressed="true"]').waitFor();
    expect([await at('#loop-from').inputValue(), await at('#loop-to').inputValue()]).toEqual(['1', '2']);
    await at('#loop').click();
  });

  it('has a button for each voice, pressed while it sounds', async () => {
    const basse = at('#voices button', { hasText: 'basse' });
    await basse.click();
    expect(await basse.getAttribute('aria-pressed')).toBe('false');
    await basse.click();
    expect(await basse.getAttribute('aria-pressed')).toBe('true');
  });

  it('shows the keys as they lie: c on the key of e', async () => {
    expect(await at('#keys svg').getAttribute('aria-label')).toBe(
      'Keys from c2 to c6; these sound other notes than their own: c2 on the key of e2, d2 on the key of f#2, e2 on the key of g#2',
    );
    await note('e-2v-1-basse-1.1').locator('.notehead').dblclick();
    await at('#keys .down', { hasText: 'c2' }).filter({ hasText: 'L' }).waitFor();
    await at('#play').click();
  });

  it('turns the leaf with the music, stops at its end, and never keeps the page from answering', async () => {
    await at('#score').evaluate(watchLongTasks);
    await note('e-2v-1-dessus-4.2').locator('.notehead').dblclick();
    await sounding('e-3r-1-dessus-1.1').waitFor();
    await at('#pages [aria-current="page"]', { hasText: '3r' }).waitFor();
    await at('#play', { hasText: 'Play' }).waitFor();
    const longest = await at('#score').evaluate(longestTask);
    console.info(`the longest task of the page while it played: ${Math.round(longest)} ms; wished < ${WISHED}`);
    expect(longest).toBeLessThan(WISHED * PATIENCE);
  });

  it('is begun by a command of the editor, too, and stopped by it', async () => {
    await bench.run('workbench.action.focusFirstEditorGroup');
    await bench.caretBehind('4 c5');
    await bench.run('bentside.play');
    await at('#play', { hasText: 'Stop' }).waitFor();
    await bench.run('bentside.play');
    await at('#play', { hasText: 'Play' }).waitFor();
  });

  it('can be used by people who do not see it: axe finds nothing wrong', async () => {
    const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    const frame = await (await at('#score').elementHandle())?.ownerFrame();
    await frame?.evaluate(axe);
    expect(await frame?.evaluate(axeViolations)).toEqual([]);
    await bench.picture('playback-all');
  });

  it('weighs notes without measure by a slider, and by columns that are dragged', async () => {
    // A file is opened beside the text, not over the panel.
    await bench.run('workbench.action.focusFirstEditorGroup');
    await bench.page.locator('.editor-instance .monaco-editor.focused').waitFor();
    await bench.openFile('prelude.bent');
    await note('e-4v-1-dessus-1.2').locator('.notehead').click();
    await at('.at-caret[data-id="e-4v-1-dessus-1.2"]').waitFor();
    await at('#weight').waitFor();
    await at('#weight').focus();
    await bench.page.keyboard.press('ArrowRight');
    await bench.line("e4'w2").waitFor();
    await at('#weights').click();
    await at('rect.weight').nth(3).waitFor();
    await bench.picture('weights');
    const column = await at('[data-id="e-4v-1-dessus-1.4"] rect.weight').boundingBox();
    if (column === null) throw new Error('no column');
    await bench.page.mouse.move(column.x + column.width / 2, column.y + column.height / 2);
    await bench.page.mouse.down();
    await bench.page.mouse.move(column.x, column.y - 10, { steps: 3 });
    await bench.page.mouse.move(column.x, column.y + column.height / 2 - 24, { steps: 3 });
    await bench.page.mouse.up();
    await bench.line("c5'w4").waitFor();
  });

  it('says of music without measure that it is played as one may play it', async () => {
    await at('#play').click();
    await at('#status', { hasText: 'one of many possible ways' }).waitFor();
    await at('#play').click();
  });
});

/** What is wished for, in milliseconds; other work on the machine may make everything so many times as slow. */
const WISHED = 100;
const PATIENCE = 4;

/** These run in the page. */
declare class PerformanceObserver {
  constructor(seen: (list: { getEntries(): readonly { readonly duration: number }[] }) => void);
  observe(wish: { readonly type: string }): void;
}
declare global {
  var longest: number;
}
const watchLongTasks = (): void => {
  globalThis.longest = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) globalThis.longest = Math.max(globalThis.longest, duration);
  }).observe({ type: 'longtask' });
};
const longestTask = (): number => globalThis.longest;
declare const axe: { run(): Promise<{ readonly violations: readonly { readonly id: string }[] }> };
const axeViolations = async (): Promise<string[]> => (await axe.run()).violations.map(({ id }) => id);
