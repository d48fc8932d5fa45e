/** The list of signs to decide, worked through without a pointer. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const AIR = `bentside 1
reading french
  signs rameau-1724
tempo 4 at 60
voice dessus
system dessus G2 meter C
  dessus | 2 d5'zzz c | 2 e5'ca d'turn |||
`;

describeInEditor('the list of signs to decide', () => {
  let bench: Workbench;
  const rows = () => bench.page.locator('[id="workbench.parts.sidebar"] .monaco-list-row', { hasText: /^bar / });

  beforeAll(async () => {
    bench = await Workbench.open({ files: { 'air.bent': AIR, 'moved.bent': AIR } });
    await bench.openFile('air.bent');
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('accepts one sign with two keys, goes on to the next, and lets that be played otherwise for a reason', async () => {
    await bench.page.locator('.pane-header', { hasText: 'Signs to Decide' }).waitFor();
    await bench.run('bentside.openSigns.focus');
    await rows().nth(2).waitFor();
    await bench.picture('signs-to-decide');
    await rows().first().click();
    await bench.page.locator('.quick-input-list .monaco-list-row', { hasText: "Accept 'zzz" }).waitFor();
    await bench.picture('decide');
    await bench.page.keyboard.press('Enter');
    await rows().nth(2).waitFor({ state: 'detached' });
    await bench.page.locator('.monaco-list-row.focused', { hasText: "bar 2 'ca" }).waitFor();
    await bench.page.keyboard.press('Enter');
    await bench.pick('(single)');
    await bench.answer('as the sister copy has it');
    await rows().nth(1).waitFor({ state: 'detached' });
    await bench.run('workbench.action.focusFirstEditorGroup');
    expect(
      await bench.saved('air.bent'),
    ).toContain(`note n1 kind performance : "Played as Cadence of rameau-1724 (from memory)"
note n2 kind performance : "as the sister copy has it"
system dessus G2 meter C
  dessus | 2 d5'zzz*n1 c | 2 e5'ca(single)*n2 d'turn |||
`);
  });

  it('writes at its sign though the text has grown before it while the user was choosing', async () => {
    await bench.openFile('moved.bent');
    await bench.caretBehind("d5'z");
    await bench.run('bentside.decideSign');
    await bench.page.locator('.quick-input-list .monaco-list-row', { hasText: "Accept 'zzz" }).waitFor();
    // Somebody else has worked on the file, and it is read again.
    bench.write('moved.bent', AIR.replace('tempo', '// slowly\ntempo'));
    await bench.run('workbench.action.files.revert');
    await bench.line('// slowly').waitFor();
    await bench.pick("Accept 'zzz");
    await bench.line("d5'zzz*n1").waitFor();
    expect(await bench.saved('moved.bent')).toContain('// slowly\ntempo 4 at 60\nvoice dessus\nnote n1');
  });

  it('a sign under the pointer shows what is played, and on demand how other tables play it', async () => {
    const hover = await bench.hoverOver('turn', 'Doublé');
    await hover.locator('img').waitFor();
    await bench.page.waitForTimeout(400);
    await bench.picture('hover-sign');
    await hover.getByText('The same sign under other tables').click();
    await bench.view().getByRole('heading', { name: 'anglebert-1689' }).waitFor();
    expect(await bench.view().getByRole('img', { name: 'Bar 2' }).count()).toBeGreaterThan(2);
    await bench.picture('other-tables');
  });

  it('by one key the panel shows signs with what they mean, and written out', async () => {
    await bench.openFile('air.bent');
    await bench.run('bentside.chooseReading', 'french');
    await bench.run('bentside.showPanel');
    const form = (says: string) => bench.view().locator('#ornaments', { hasText: says });
    await form('Signs as they stand').waitFor();
    await bench.view().locator('#score').focus();
    await bench.page.keyboard.press('s');
    await form('Signs and what they mean').waitFor();
    await bench.picture('panel-above');
    await bench.page.keyboard.press('s');
    await form('Signs written out').waitFor();
    await bench.picture('panel-full');
  });
});
