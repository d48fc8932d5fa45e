/** Two readings one above the other in the score panel, in a real workbench. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const AIR = `bentside 1
source K "the Thornmere Keyboard Book"
source L "a loose leaf"
stave upper
stave lower
voice dessus upper
voice basse lower
tempo 4 at 120
reading french
  practice overdot double held voice dessus
page "2v"
system upper G2 lower F4 meter C
  dessus | 4 c5 d <K: e ; L: f> 4 g5 | 4. g4 8 a 2 c5 | 1 c5 |
  basse  | 1 c3                      | 1 e3           | 1 c3 |
page "3r"
system
  dessus | 1 c5 |||
  basse  | 1 c3 |||
`;

describeInEditor('two readings in the score panel', () => {
  let bench: Workbench;
  const at = (selector: string, having: { hasText?: string | RegExp } = {}) => bench.view().locator(selector, having);
  const note = (id: string) => at(`[data-id="${id}"]`).first();

  beforeAll(async () => {
    bench = await Workbench.open({
      files: { 'air.bent': AIR },
      settings: { 'workbench.colorTheme': 'Default High Contrast' },
    });
    await bench.openFile('air.bent');
    await bench.run('bentside.showPanel');
    await note('e-2v-1-dessus-1.1').waitFor({ timeout: 30_000 });
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('stand above one another, with the notes framed that differ and no others', async () => {
    await at('#beneath').selectOption('L');
    await note('e-2v-1-dessus.written-1.3.L.1').waitFor();
    await at('rect.differs').first().waitFor();
    const framed = await at('.note:has(> rect.differs)').evaluateAll(ids);
    expect(framed).toEqual(['e-2v-1-dessus-1.3.K.1', 'e-2v-1-dessus.written-1.3.L.1']);
    await bench.picture('two-readings');
  });

  it('are told in words, from which one goes to their notes', async () => {
    await at('#differences summary', { hasText: '1 difference on this leaf' }).click();
    const place = at('#differences button');
    expect(await place.textContent()).toBe('bar 1, dessus: other pitch: written 4 e5; L 4 f5');
    await place.click();
    await at('.at-caret[data-id="e-2v-1-dessus-1.3.K.1"]').waitFor();
  });

  it('lead each to its own text', async () => {
    await note('e-2v-1-dessus.written-1.3.L.1').locator('.notehead').click();
    // It is selected: the f of L.
    await bench.run('workbench.action.focusFirstEditorGroup');
    await bench.status(/Ln 13, Col 31 \(1 selected\)/).waitFor();
  });

  it('are heard by turns: what sounds is marked where it stands', async () => {
    await at('#side-b').click();
    await note('e-2v-1-dessus-1.1').locator('.notehead').dblclick();
    await at('.sounding[data-id="e-2v-1-dessus.written-1.2"]').waitFor();
    expect(await at('.sounding[data-id="e-2v-1-dessus-1.2"]').count()).toBe(0);
    await at('#play').click();
    await at('#side-a').click();
  });

  it('show a rhythm as it is played', async () => {
    await at('#beneath').selectOption('french');
    await at('#differences summary', { hasText: '1 difference' }).waitFor();
    await at('#differences button', { hasText: 'played at another time' }).waitFor();
    await bench.picture('two-readings-rhythm');
  });

  it('say where they are the same', async () => {
    await at('#pages button', { hasText: '3r' }).click();
    await at('#differences summary', { hasText: 'On this leaf the two readings are the same.' }).waitFor();
    await at('#pages button', { hasText: '2v' }).click();
  });

  it('can be read by people who do not see them, in high contrast: axe finds nothing wrong', async () => {
    const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
    const frame = await (await at('#score').elementHandle())?.ownerFrame();
    await frame?.evaluate(axe);
    expect(await frame?.evaluate(axeViolations)).toEqual([]);
  });

  it('stand as they stood when the window is loaded again, and one alone when that is chosen', async () => {
    await bench.reload();
    await note('e-2v-1-dessus.written-1.1').waitFor({ timeout: 30_000 });
    await expect.poll(() => at('#beneath').inputValue()).toBe('french');
    await at('#beneath').selectOption('');
    await note('e-2v-1-dessus.written-1.1').waitFor({ state: 'detached' });
    expect(await at('#differences').isVisible()).toBe(false);
  });
});

/** These run in the page. */
const ids = (elements: readonly unknown[]): string[] =>
  elements.map((one) => (one as { getAttribute(name: string): string }).getAttribute('data-id'));
declare const axe: { run(): Promise<{ readonly violations: readonly { readonly id: string }[] }> };
const axeViolations = async (): Promise<string[]> => (await axe.run()).violations.map(({ id }) => id);
