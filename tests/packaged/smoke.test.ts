/** The extension's file as users install it, its language server a process of Node: whether all of it is there and works. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { align } from '../../server/library';
import { describeInEditor } from '../editor/inEditor';
import { Workbench } from '../editor/workbench';
import { hostInNode } from './host';

const AIR = `bentside 1
title "Entrée for the second manual"

stave upper lines 5
stave lower lines 5
voice dessus upper
voice basse lower

page "3v"
system upper C1 lower F4 key bb meter cut-C
  dessus | 4. b4'zz 8 c5 2 d5 | 1 d5 |
  basse | 2 b2 4 = a | 2 b2 f3 |
`;

const SUITE_TASK = { type: 'bentside', files: 'suite/*.bent', label: 'proof the suite', problemMatcher: '$bentside' };

/** The editor may have to be installed first. */
const LONGEST_INSTALL = 900_000;

describeInEditor('the packaged extension in a Node-hosted editor', () => {
  let bench: Workbench;

  beforeAll(async () => {
    const files = {
      'air.bent': AIR,
      'apart.bent': AIR.replace("b4'zz", "b4 'zz"),
      'crooked.bent': AIR,
      'long.bent': AIR.replace('8 c5', '4 c5'),
      'suite/courante.bent': AIR.replace('8 c5', '4 c5'),
      '.vscode/tasks.json': JSON.stringify({ version: '2.0.0', tasks: [SUITE_TASK] }),
    };
    bench = await Workbench.open({ files, serve: hostInNode });
  }, LONGEST_INSTALL);
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('colours voice, value and sign', async () => {
    await bench.openByHand('air.bent');
    const colours = () => Promise.all(['dessus', '4.', "'zz"].map((text) => bench.colour(text)));
    await expect.poll(async () => new Set(await colours()).size, { timeout: 20_000 }).toBe(3);
  });

  it('says and draws what is under the pointer', async () => {
    const hover = await bench.hoverOver('b4', 'B♭4');
    await hover.locator('img').waitFor();
    await bench.picture('packaged-hover');
  });

  it('underlines a bar that has too much and lists it among the problems', async () => {
    await bench.openByHand('long.bent');
    await bench.page.locator('.squiggly-error').first().waitFor();
    await bench.page.keyboard.press('Control+Shift+M');
    await bench.page.locator('.markers-panel .monaco-list-row', { hasText: 'bar-too-long' }).first().waitFor();
    await bench.picture('packaged-problems');
    await bench.page.keyboard.press('Control+Shift+M');
  });

  it('mends a sign that stands apart by its quick fix', async () => {
    await bench.openByHand('apart.bent');
    await bench.page.locator('.squiggly-error, .squiggly-warning').first().waitFor();
    await bench.word("'zz").click();
    await bench.page.keyboard.press('Control+.');
    await bench.page.locator('.action-widget .monaco-list-row').first().waitFor();
    await bench.page.keyboard.press('Enter');
    await bench.line("b4'zz").waitFor();
    expect(await bench.savedByHand('apart.bent')).toBe(AIR);
  });

  it('lays the lanes out as the command line does', async () => {
    await bench.openByHand('crooked.bent');
    await bench.choose('Format Document');
    await bench.page.locator('.tab.active.dirty').waitFor();
    expect(await bench.savedByHand('crooked.bent')).toBe(align(AIR).text);
  });

  it('engraves the leaf in the score panel', async () => {
    await bench.choose('Bentside: Show Score');
    await bench.view().locator('[data-id="e-3v-1-dessus-1.1"]').first().waitFor();
    await bench.picture('packaged-panel');
  });

  const problem = (file: string) => bench.page.locator('.markers-panel .monaco-list-row', { hasText: file }).first();

  it('lays the tuning of the score, equal temperament at 415 where it states none', async () => {
    await bench.openByHand('air.bent');
    await bench.choose('Open Tuning');
    const third = bench.view().locator('#steps li', { hasText: 'f3-a3' });
    await third.waitFor({ timeout: 30_000 });
    // 6.929 · 415/440
    expect(await third.textContent()).toContain('6.54 wide');
    await bench.picture('packaged-tuning');
  });

  it('runs a task that the folder itself states', async () => {
    await bench.choose('View: Close All Editors');
    await bench.choose('Tasks: Run Task');
    await bench.pick('proof the suite');
    await bench.page.locator('.single-terminal-tab', { hasText: 'proof the suite' }).waitFor();
    await bench.choose('Problems: Focus on Problems View');
    await problem('courante.bent').waitFor();
    await bench.picture('packaged-task-stated');
  });

  it('proofs a folder and those below as a task, though no score is open', async () => {
    await bench.choose('Tasks: Run Task');
    await bench.pick('bentside');
    await bench.pick('proof all scores');
    await bench.page.locator('.single-terminal-tab', { hasText: 'proof all scores' }).waitFor();
    await bench.choose('Problems: Focus on Problems View');
    await problem('long.bent').waitFor();
    await problem('courante.bent').waitFor();
    await bench.picture('packaged-task');
  });

  it('exports beside the score', async () => {
    await bench.openByHand('crooked.bent');
    await bench.choose('Bentside: Export');
    await bench.pick('musicxml · written');
    await bench.page.locator('.notification-list-item', { hasText: 'crooked.musicxml' }).first().waitFor();
    expect(bench.file('crooked.musicxml')).toMatch(/^<\?xml[\s\S]*<score-partwise/);
  });

  it('asks no other machine for anything', () => {
    expect(bench.outside).toEqual([]);
  });
});
