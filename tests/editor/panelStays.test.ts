/** Users who want the score panel to stay where it is. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const HEAD = `bentside 1
stave upper
voice dessus upper
page "2v"
system upper C1 meter C
`;
const AIR = `${HEAD}  dessus | 4 c5 d e f | 1 g4 |
page "3r"
system
  dessus | 4 b4 a g f | 1 e4 |||
`;
const MINUET = HEAD.replace('"2v"', '"7r"').replace('meter C', 'meter 3/4').concat('  dessus | 4 c5 d e | 2. g4 |||\n');

describeInEditor('the score panel of a user who wants it to stay', () => {
  let bench: Workbench;
  const leaves = () => bench.view().locator('#pages');
  const current = () => bench.view().locator('#pages [aria-current="page"]');
  const title = (text: string) => bench.page.locator('.tab', { hasText: text }).first();

  beforeAll(async () => {
    const files = { 'air.bent': AIR, 'minuet.bent': MINUET };
    bench = await Workbench.open({ files, settings: { 'bentside.panel.follow': 'never' } });
    await bench.openFile('air.bent');
    await bench.run('bentside.showPanel');
    await bench.view().locator('[data-id="e-2v-1-dessus-1.1"]').first().waitFor();
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('marks the note at the caret but does not turn to its leaf, where it never follows', async () => {
    await bench.caretBehind('4 c5');
    await bench.view().locator('.at-caret[data-id="e-2v-1-dessus-1.1"]').waitFor();
    await bench.caretBehind('4 b4');
    await bench.view().locator('.at-caret').waitFor({ state: 'detached' });
    expect(await current().textContent()).toBe('2v');
    await bench.view().locator('#pages button', { hasText: '3r' }).click();
    await bench.view().locator('.at-caret[data-id="e-3r-1-dessus-1.1"]').waitFor();
    await bench.run('workbench.action.focusFirstEditorGroup');
    await bench.caretBehind('4 c5');
    await bench.view().locator('.at-caret').waitFor({ state: 'detached' });
    expect(await current().textContent()).toBe('3r');
  });

  it('goes with the text in front until it is kept with its score', async () => {
    await bench.openFile('minuet.bent');
    await leaves().filter({ hasText: '7r' }).waitFor();
    await bench.run('bentside.lockPanel');
    await title('minuet.bent (kept)').waitFor();
    await bench.openFile('air.bent');
    await bench.status('4 of 4').waitFor();
    expect(await leaves().textContent()).toBe('7r');
    await bench.run('bentside.lockPanel');
    await leaves().filter({ hasText: '2v3r' }).waitFor();
    await title('minuet.bent (kept)').waitFor({ state: 'detached' });
  });

  it('stays with its score when the window is loaded again, and leads to its text when that was closed', async () => {
    await bench.run('bentside.lockPanel');
    await title('air.bent (kept)').waitFor();
    await bench.openFile('minuet.bent');
    await bench.page.waitForTimeout(500);
    await bench.reload();
    await title('air.bent (kept)').waitFor();
    await leaves().filter({ hasText: '2v3r' }).waitFor();
    await bench.view().locator('#pages button', { hasText: '2v' }).click();
    const note = bench.view().locator('[data-id="e-2v-1-dessus-1.2"] .notehead').first();
    await note.click();
    await bench.line('4 c5 d e f').waitFor();
  });
});
