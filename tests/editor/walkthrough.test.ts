/** From an empty folder to an exported file by the walkthrough alone. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

describeInEditor('a new user', () => {
  let bench: Workbench;

  beforeAll(async () => {
    bench = await Workbench.open({ files: {} });
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  const step = (title: string) => bench.page.locator('.getting-started-step', { hasText: title });
  const press = (button: string) =>
    bench.page.locator('.getting-started-step.expanded .monaco-button', { hasText: button }).click();

  it('is led from a page to an exported score', async () => {
    await bench.run('workbench.action.openWalkthrough', 'bentside.bentside#start');
    await step('Begin with a page').waitFor();
    await bench.picture('walkthrough');
    await press('Begin a Source');
    await bench.answer('K');
    await bench.answer('Thornmere Keyboard Book');
    await bench.answer('3v');
    for (const row of ['2', '5', 'C1']) await bench.pick(row);
    await bench.answer('dessus');
    for (const row of ['5', 'F4']) await bench.pick(row);
    await bench.answer('basse');
    await bench.pick('cut-C');
    await bench.line('bentside 1').waitFor();
    await bench.picture('walkthrough-begun');
    await bench.type('Entree');
    await bench.page.keyboard.press('Tab');
    await bench.type("4. b4'zz 8 c5 2 d ");
    await bench.line('2 d |').waitFor();
    await bench.page.keyboard.press('Tab');
    await bench.type('1 b2 ');
    await bench.line('1 b2 |').waitFor();
    await bench.run('workbench.action.openWalkthrough', 'bentside.bentside#start');
    await step('See it as a page').click();
    await press('Show Score');
    await bench.view().locator('[data-id="e-3v-1-dessus-1.1"]').first().waitFor();
    await bench.picture('walkthrough-panel');
    await step('Export the score').click();
    await press('Export');
    // The dialog puts a name of its own into the box, and would put it over one that is typed before.
    const box = bench.page.locator('.quick-input-widget input.input');
    await expect.poll(() => box.inputValue()).toMatch(/\.bent$/);
    await bench.answer('/entree.bent');
    await bench.pick('musicxml · written');
    await bench.page.locator('.notification-list-item', { hasText: 'entree.musicxml' }).first().waitFor();
    await bench.picture('walkthrough-exported');
    expect(bench.file('entree.bent')).toBe(`bentside 1

title "Entree"
source K "Thornmere Keyboard Book"

stave upper lines 5
stave lower lines 5
voice dessus upper
voice basse lower

page "3v"
system upper C1 lower F4 meter cut-C
  dessus | 4. b4'zz 8 c5 2 d | 
  basse  | 1 b2 | 
`);
    expect(bench.file('entree.musicxml')).toContain('<work-title>Entree</work-title>');
    expect(bench.outside).toEqual([]);
  });
});
