/** The score panel beside the text, in a real workbench. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const SYSTEM = `system
  dessus | 4 c5 d e f | 2 g4 a | 4 c5 d e f | 1 g4 |
  basse  | 1 c3       | 2 c3 d | 1 c3       | 1 g2 |
`;
const LEAVES = `bentside 1
title "Entrée"
source K "Thornmere Keyboard Book, ff. 2v-3v"
stave upper
stave lower
voice dessus upper
voice basse lower
page "2v"
${SYSTEM.replace('system', 'system upper C1 lower F4 meter C')}${SYSTEM.repeat(9)}page "3r"
${SYSTEM.replace('4 c5 d', '4 b4 d')}page "3v" image "3v.png"
${SYSTEM.replace('1 g4 |', "1 c5'zz |||").replace('1 g2 |', '1 c2 |||')}`;

/** A picture of a leaf: 600 by 400, with a stave of ink. */
const PICTURE = new Resvg(
  '<svg xmlns="http://www.w3.org/2000/svg" width="600" height="400"><rect width="600" height="400" fill="#e8dcc0"/>' +
    '<path d="M50 100h500M50 110h500M50 120h500M50 130h500M50 140h500" stroke="#402810"/></svg>',
)
  .render()
  .asPng();

describeInEditor('the score panel', () => {
  let bench: Workbench;
  const leaf = (label: string) => bench.view().locator('#pages button', { hasText: label });
  const current = () => bench.view().locator('#pages [aria-current="page"]');
  const note = (id: string) => bench.view().locator(`[data-id="${id}"]`).first();
  const top = () => bench.view().locator('#score').evaluate(scrollTop);

  beforeAll(async () => {
    bench = await Workbench.open({ files: { 'leaves.bent': LEAVES, '3v.png': PICTURE } });
    await bench.openFile('leaves.bent');
    await bench.run('bentside.showPanel');
    await bench.view().locator('#score svg').first().waitFor();
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('shows the leaves of the source as a strip, and the first of them engraved', async () => {
    expect(await bench.view().locator('#pages button').allTextContents()).toEqual(['2v', '3r', '3v']);
    expect(await current().textContent()).toBe('2v');
    await note('e-2v-1-dessus-1.1').waitFor();
    await bench.picture('panel');
  });

  it('leads from a note to its text', async () => {
    await note('e-2v-2-dessus-2.2').locator('.notehead').click();
    await bench.page.locator('.active-line-number', { hasText: '13' }).waitFor();
  });

  it('marks the note at the caret, and turns to its leaf', async () => {
    await bench.run('workbench.action.focusFirstEditorGroup');
    await bench.caretBehind('4 b4');
    await current().filter({ hasText: '3r' }).waitFor();
    await bench.view().locator('.at-caret[data-id="e-3r-1-dessus-1.1"]').waitFor();
  });

  it('draws an edit and keeps its place', async () => {
    await leaf('2v').click();
    await note('e-2v-6-dessus-4.1').waitFor();
    await bench.view().locator('#score').evaluate(scrollDown);
    const before = await top();
    expect(before).toBeGreaterThan(50);
    await bench.type('n');
    await bench.type('4');
    await bench.page.waitForTimeout(600);
    expect(await current().textContent()).toBe('2v');
    expect(await top()).toBe(before);
  });

  it('keeps its place while it is hidden', async () => {
    const before = await top();
    await bench.run('workbench.action.focusSecondEditorGroup');
    await bench.run('workbench.action.files.newUntitledFile');
    await bench.run('workbench.action.closeActiveEditor');
    await note('e-2v-6-dessus-4.1').waitFor();
    await expect.poll(top).toBe(before);
  });

  it('changes the clefs by one key and stays on its leaf', async () => {
    await bench.view().locator('#score').focus();
    await bench.page.keyboard.press('c');
    await bench.view().locator('#clefs[aria-pressed="true"]').waitFor();
    expect(await current().textContent()).toBe('2v');
    await bench.picture('panel-modern');
    await bench.page.keyboard.press('c');
    await bench.view().locator('#clefs[aria-pressed="false"]').waitFor();
  });

  it('goes from note to note by the arrow keys', async () => {
    await note('e-2v-6-dessus-1.1').locator('.notehead').click();
    await bench.view().locator('#score').focus();
    await bench.page.keyboard.press('ArrowRight');
    await bench.view().locator('.at-caret[data-id="e-2v-6-dessus-1.2"]').waitFor();
    // Whoever does not see the page hears which note it is.
    await bench.view().locator('#status', { hasText: 'd′′ (D5)' }).waitFor();
    expect(await bench.view().locator('#status').textContent()).toContain('bar 21, beat 2');
  });

  it('goes from button to button of its bar by the arrow keys, and past them all by Tab', async () => {
    const press = async (key: string, reached: string) => {
      await bench.page.keyboard.press(key);
      await bench.view().locator(`${reached}:focus`).waitFor();
    };
    await bench.view().locator('#clefs').focus();
    await press('ArrowRight', '#ornaments');
    await press('Tab', '#beneath');
    await press('Shift+Tab', '#clefs');
    await press('End', '#bar');
    await press('ArrowRight', '#clefs');
    await press('ArrowLeft', '#bar');
    // No other note was gone to meanwhile.
    await bench.view().locator('.at-caret[data-id="e-2v-6-dessus-1.2"]').waitFor();
  });

  it('turns its leaves by the keyboard and leaves the focus where it is', async () => {
    await leaf('2v').focus();
    await bench.page.keyboard.press('Tab');
    await bench.page.keyboard.press('Enter');
    await current().filter({ hasText: '3r' }).waitFor();
    expect(await leaf('3r').evaluate(hasFocus)).toBe(true);
    // As German and French keyboards type it: with AltGr, which says that it is Control and Alt.
    await leaf('3r').evaluate(pressWithAltGraph, '[');
    await current().filter({ hasText: '2v' }).waitFor();
  });

  it('passes over what it does not know', async () => {
    const before = bench.console.length;
    await bench.view().locator('#score').evaluate(sendUnknown);
    await bench.page.waitForTimeout(300);
    expect(bench.console.slice(before).filter((line) => /TypeError/.test(line))).toEqual([]);
  });

  it('can be used by people who do not see it: axe finds nothing wrong', async () => {
    const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    const frame = await (await bench.view().locator('#score').elementHandle())?.ownerFrame();
    await frame?.evaluate(axe);
    const violations = await frame?.evaluate(axeViolations);
    expect(violations).toEqual([]);
    expect(await bench.view().locator('#score svg').first().getAttribute('aria-label')).toMatch(
      /^2v: system 1, bars 1 to 4/,
    );
  });

  it('shows the picture of a leaf, on which the place of a system is dragged out and written into the text', async () => {
    await leaf('3v').click();
    const picture = bench.view().locator('#facsimile svg');
    await picture.waitFor();
    await bench.view().locator('#drag').waitFor();
    await note('e-3v-1-dessus-1.1').locator('.notehead').click();
    await bench.view().locator('#drag').click();
    const box = await picture.boundingBox();
    if (box === null) throw new Error('no picture');
    const at = (x: number, y: number) => [box.x + (x * box.width) / 600, box.y + (y * box.width) / 600] as const;
    await bench.page.mouse.move(...at(60, 90));
    await bench.page.mouse.down();
    await bench.page.mouse.move(...at(300, 140), { steps: 3 });
    await bench.page.mouse.move(...at(540, 190), { steps: 3 });
    await bench.page.mouse.up();
    await bench.line('system at ').waitFor();
    await bench.picture('panel-facsimile');
    await bench.run('workbench.action.focusFirstEditorGroup');
    const [, ...region] =
      /page "3v"[\s\S]*system at (\d+),(\d+),(\d+),(\d+)/.exec(await bench.saved('leaves.bent')) ?? [];
    for (const [index, wished] of [60, 90, 480, 100].entries()) {
      expect(Math.abs(Number(region[index]) - wished), `${region}`).toBeLessThanOrEqual(3);
    }
    expect(await picture.getAttribute('viewBox')).toBe(region.join(' '));
  });

  it('drags nothing out when Escape is pressed on the way', async () => {
    const [picture, drag] = [bench.view().locator('#facsimile svg'), bench.view().locator('#drag')];
    await drag.click();
    const box = await picture.boundingBox();
    if (box === null) throw new Error('no picture');
    await bench.page.mouse.move(box.x + 20, box.y + 20);
    await bench.page.mouse.down();
    await bench.page.mouse.move(box.x + 90, box.y + 60, { steps: 3 });
    await bench.page.keyboard.press('Escape');
    await bench.view().locator('#drag[aria-pressed="false"]').waitFor();
    await bench.page.mouse.up();
    await bench.page.waitForTimeout(600);
    expect(await bench.page.locator('.tab.dirty').count()).toBe(0);
  });

  it('cuts a place that is dragged beyond the picture at its edge', async () => {
    const picture = bench.view().locator('#facsimile svg');
    await bench.view().locator('#drag').click();
    const box = await picture.boundingBox();
    if (box === null) throw new Error('no picture');
    await bench.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await bench.page.mouse.down();
    await bench.page.mouse.move(box.x - 60, box.y - 20, { steps: 4 });
    await bench.page.mouse.up();
    await bench.line('system at 0,0,').waitFor();
    await bench.run('workbench.action.focusFirstEditorGroup');
    const [, width] = /system at 0,0,(\d+),/.exec(await bench.saved('leaves.bent')) ?? [];
    expect(Math.abs(Number(width) - 300)).toBeLessThanOrEqual(3);
  });

  it('is as it was when the window is loaded again', async () => {
    await leaf('3v').click();
    await current().filter({ hasText: '3v' }).waitFor();
    await bench.run('workbench.action.files.save');
    await bench.reload();
    await current().filter({ hasText: '3v' }).waitFor();
    await note('e-3v-1-dessus-4.1').waitFor();
  });

  it('asks no other machine for anything', () => {
    expect(bench.outside).toEqual([]);
  });
});

/** These run in the page. */
const hasFocus = (element: unknown): boolean =>
  element === (element as { ownerDocument: { activeElement: unknown } }).ownerDocument.activeElement;
declare const postMessage: (message: object, target: string) => void;
const sendUnknown = (): void => postMessage({ kind: 'nothing that a page is sent' }, '*');
declare const KeyboardEvent: new (kind: string, about: object) => unknown;
const pressWithAltGraph = (element: unknown, key: string): void => {
  const event = new KeyboardEvent('keydown', {
    key,
    ctrlKey: true,
    altKey: true,
    modifierAltGraph: true,
    bubbles: true,
  });
  (element as { dispatchEvent(event: unknown): void }).dispatchEvent(event);
};
interface Scrolled {
  scrollTop: number;
}
const scrollTop = (element: unknown): number => (element as Scrolled).scrollTop;
const scrollDown = (element: unknown): void => {
  (element as Scrolled).scrollTop = 120;
};
declare const axe: { run(): Promise<{ readonly violations: readonly { readonly id: string }[] }> };
const axeViolations = async (): Promise<string[]> => (await axe.run()).violations.map(({ id }) => id);
