/** The text editor with the extension, in a real workbench in a headless browser. */
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { align } from '../../server/library';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const HEAD = `bentside 1
title "Entrée for the second manual"
source K "Thornmere Keyboard Book, f. 3v"
source L "Loose bifolium kept with K"
reading plain "As the loose leaf has it"
  takes L

stave upper lines 5
stave lower lines 5
voice dessus upper
voice basse lower

page "3v"
`;
const SYSTEM = `system upper C1 lower F4 key bb meter cut-C
  dessus | 4. b4'zz 8 c5 2 d5 | 2 d5 <K: 2 c5 ; L: 4 c5 b4> |
  basse | 2 b2 4 = a | 2 b2 f3 |
`;
const AIR = `${HEAD}${SYSTEM}`;
/** One voice whose bar is to be typed. */
const BEGUN = `${HEAD}system upper G2 lower F4 meter C\n  dessus | 1 c5 | 4 d e8\n`.replace(' e8', '');

describeInEditor('a score in the editor', () => {
  let bench: Workbench;

  beforeAll(async () => {
    const names = [
      'rename',
      'complete',
      'air',
      'long',
      'apart',
      'crooked',
      'begun',
      'dead',
      'system',
      'readings',
      'help',
      'vanished',
    ];
    const texts: Readonly<Record<string, string>> = {
      long: AIR.replace('2 d5 |', '2 d5 4 e5 |'),
      apart: AIR.replace("b4'zz", "b4 'zz"),
      begun: BEGUN,
      dead: BEGUN,
      help: AIR.replace('2 d5 |', '2 d5 4 e5 |'),
    };
    bench = await Workbench.open({
      files: Object.fromEntries(names.map((name) => [`${name}.bent`, texts[name] ?? AIR])),
    });
  });
  afterEach(({ task }) => bench?.keepFailure(task));
  afterAll(() => bench?.close());

  it('has its voice, values and signs in different colours', async () => {
    await bench.openFile('air.bent');
    await bench.word("'zz").waitFor();
    const colours = () => Promise.all(['dessus', '4.', "'zz"].map((text) => bench.colour(text)));
    await expect.poll(async () => new Set(await colours()).size).toBe(3);
  });

  it('has the words of clauses in a colour of their own', async () => {
    await bench.openFile('air.bent');
    const colours = () => Promise.all(['lines', 'upper', 'dessus', '5'].map((text) => bench.colour(text)));
    await expect.poll(async () => new Set(await colours()).size).toBe(4);
    expect(await bench.colour('meter')).toBe(await bench.colour('lines'));
    await bench.picture('colours');
  });

  it('underlines a bar that has too much and lists it among the problems', async () => {
    await bench.openFile('long.bent');
    await bench.page.locator('.squiggly-error').first().waitFor();
    await bench.run('workbench.actions.view.problems');
    await bench.page.locator('.markers-panel .monaco-list-row', { hasText: 'bar-too-long' }).first().waitFor();
    await bench.picture('problems');
    await bench.run('workbench.action.closePanel');
  });

  it('mends a sign that stands apart by its quick fix', async () => {
    await bench.openFile('apart.bent');
    await bench.page.locator('.squiggly-error, .squiggly-warning').first().waitFor();
    await bench.caretBehind("b4 'z");
    await bench.run('editor.action.quickFix');
    await bench.page.locator('.action-widget .monaco-list-row').first().waitFor();
    await bench.page.keyboard.press('Enter');
    await bench.line("b4'zz").waitFor();
    expect(await bench.saved('apart.bent')).toBe(AIR);
  });

  it('lays the lanes out as the command line does', async () => {
    await bench.openFile('crooked.bent');
    await bench.run('editor.action.formatDocument');
    await bench.page.locator('.tab.active.dirty').waitFor();
    expect(await bench.saved('crooked.bent')).toBe(align(AIR).text);
  });

  it('says how full the bar is, and closes it on the space after its last note', async () => {
    await bench.openFile('begun.bent');
    await bench.caretBehind('4 d');
    await bench.status('bar 2: 1 of 4 crotchets').waitFor();
    await bench.type(' e 8 f');
    await bench.status('bar 2: 5 of 8 quavers').waitFor();
    await bench.type(' g 4 a');
    await bench.status('bar 2: 4 of 4 crotchets').waitFor();
    await bench.type(' ');
    await bench.line('4 d e 8 f g 4 a |').waitFor();
    // Whoever types the barline all the same has one and not two.
    await bench.type('| 1 b');
    await bench.line('8 f g 4 a | 1 b').waitFor();
    expect(await bench.saved('begun.bent')).toContain('  dessus | 1 c5 | 4 d e 8 f g 4 a | 1 b\n');
  });

  it('gives the letter of a dead key its apostrophe back', async () => {
    await bench.openFile('dead.bent');
    await bench.caretBehind('4 d');
    await bench.page.keyboard.insertText('ź');
    await bench.line("4 d'z").waitFor();
    await bench.page.keyboard.press('Escape');
    await bench.type('z');
    expect(await bench.saved('dead.bent')).toContain("4 d'zz\n");
  });

  it('offers signs after an apostrophe, and Space and Enter stay what they are', async () => {
    await bench.openFile('complete.bent');
    await bench.caretBehind('2 f3');
    await bench.type("'");
    const offered = bench.page.locator('.suggest-widget.visible .monaco-list-row');
    await offered.filter({ hasText: 'zz' }).first().waitFor();
    await bench.picture('completion');
    await bench.type('s ');
    await bench.page.locator('.suggest-widget.visible').waitFor({ state: 'detached' });
    expect(await bench.saved('complete.bent')).toContain("2 b2 f3's  |");
  });

  it('renames a voice wherever it stands', async () => {
    await bench.openFile('rename.bent');
    await bench.caretBehind('voice bas');
    await bench.run('editor.action.rename');
    const box = bench.page.locator('.rename-input');
    await box.waitFor();
    await box.fill('fondement');
    await bench.page.keyboard.press('Enter');
    await bench.line('voice fondement').waitFor();
    expect(await bench.saved('rename.bent')).toBe(
      AIR.replace('voice basse', 'voice fondement').replace('  basse', '  fondement'),
    );
  });

  it('begins the next system with all its lanes', async () => {
    await bench.openFile('system.bent');
    await bench.caretBehind('2 b2 f3');
    await bench.run('bentside.newSystem');
    await bench.page.locator('.view-line', { hasText: 'basse' }).nth(2).waitFor();
    await bench.type('1 g4');
    await bench.page.keyboard.press('Tab');
    await bench.type('1 g2');
    expect(await bench.saved('system.bent')).toBe(`${AIR}system\n  dessus | 1 g4\n  basse  | 1 g2\n`);
  });

  it('shows another reading when one is chosen, and keeps it while the file is closed', async () => {
    await bench.openFile('readings.bent');
    await bench.status('written').click();
    await bench.pick('plain');
    await bench.status('plain').waitFor();
    await bench.caretBehind('4 c5 b4');
    await bench.run('workbench.action.closeActiveEditor');
    await bench.openFile('readings.bent');
    await bench.status('plain').waitFor();
  });

  it('shows the main text again when the reading that was shown is no longer there', async () => {
    await bench.openFile('vanished.bent');
    await bench.status('written').click();
    await bench.pick('plain');
    await bench.status('plain').waitFor();
    await bench.caretBehind('reading pla');
    await bench.type('x');
    await bench.status('written').waitFor();
    await bench.run('workbench.action.files.revert');
  });

  it('is exported beside itself, as the reading that is shown', async () => {
    await bench.openFile('readings.bent');
    await bench.run('bentside.export');
    await bench.pick('musicxml · plain');
    await bench.page.locator('.notification-list-item', { hasText: 'readings.plain.musicxml' }).first().waitFor();
    expect(bench.file('readings.plain.musicxml')).toMatch(/^<\?xml[\s\S]*<score-partwise/);
    await bench.run('notifications.clearAll');
  });

  it('is exported with the clefs that the picker is turned to', async () => {
    const filter = (text: string) => bench.page.locator('.quick-input-widget input.input').fill(text);
    await bench.openFile('readings.bent');
    await bench.run('bentside.export');
    await filter('Clefs');
    await bench.pick('Clefs: of the source');
    await filter('Clefs');
    await bench.picture('export-picker');
    await bench.pick('Clefs: treble and bass');
    await filter('mei · written');
    await bench.pick('mei · written');
    await expect.poll(() => bench.file('readings.mei')).toMatch(/<mei/);
    await bench.run('notifications.clearAll');
  });

  it('is exported again only where the user says that the file may be replaced', async () => {
    await bench.openFile('readings.bent');
    bench.write('readings.plain.musicxml', 'worked on');
    await bench.run('bentside.export');
    await bench.pick('musicxml · plain');
    const asked = bench.page.locator('.monaco-dialog-box', { hasText: 'There is already: readings.plain.musicxml' });
    await asked.locator('.monaco-button', { hasText: 'Cancel' }).click();
    expect(bench.file('readings.plain.musicxml')).toBe('worked on');
    await bench.run('bentside.export');
    await bench.pick('musicxml · plain');
    await asked.locator('.monaco-button', { hasText: 'Replace' }).click();
    await expect.poll(() => bench.file('readings.plain.musicxml')).toMatch(/^<\?xml/);
    await bench.run('notifications.clearAll');
  });

  it('is told of as not exported where a folder has the name of the file', async () => {
    bench.makeFolder('air.musicxml');
    await bench.openFile('air.bent');
    await bench.run('bentside.export');
    await bench.pick('musicxml · written');
    const told = bench.page.locator('.notification-list-item', {
      hasText: 'air.musicxml could not be written: a folder has that name.',
    });
    await told.first().waitFor();
    await bench.picture('export-onto-folder');
    await bench.run('notifications.clearAll');
  });

  it('is asked for where several are open and none is in view', async () => {
    for (const name of ['air', 'readings']) {
      await bench.openFile(`${name}.bent`);
      await bench.run('workbench.action.keepEditor');
    }
    await bench.run('workbench.action.openGlobalKeybindings');
    await bench.page.locator('.keybindings-editor').waitFor();
    await bench.run('bentside.export');
    await bench.pick('readings.bent');
    await bench.pick('mei · plain');
    await expect.poll(() => bench.file('readings.plain.mei')).toMatch(/<mei/);
    await bench.run('notifications.clearAll');
    await bench.run('workbench.action.closeActiveEditor');
  });

  it('is exported whatever ending it was given when it was saved first', async () => {
    await bench.run('workbench.action.files.newUntitledFile', { languageId: 'bentside' });
    await bench.page.locator('.tab.active', { hasText: 'Untitled' }).waitFor();
    await bench.page.locator('.editor-instance .monaco-editor.focused').waitFor();
    await bench.page.keyboard.insertText(
      'bentside 1\nstave upper\nvoice canto upper\nsystem upper G2 meter C\n  canto | 1 c5 |||',
    );
    await bench.line('canto | 1 c5').waitFor();
    await bench.run('bentside.export');
    // The dialog proposes a name a little after it has opened.
    const box = bench.page.locator('.quick-input-widget input.input');
    await expect.poll(() => box.inputValue()).toContain('.bent');
    await bench.answer('/piece.txt');
    await bench.pick('mei · written');
    await expect.poll(() => bench.file('piece.txt.mei')).toMatch(/<mei/);
    await bench.run('notifications.clearAll');
  });

  it('opens the help page of a finding', async () => {
    await bench.openFile('help.bent');
    await bench.page.locator('.squiggly-error').first().waitFor();
    await bench.caretBehind('2 d5 4 e5');
    await bench.page.keyboard.press('ArrowLeft');
    await bench.run('bentside.openHelp');
    await bench.view().locator('h1', { hasText: 'bar-too-long' }).waitFor();
    await bench.picture('help');
  });

  it('asks no other machine for anything', () => {
    expect(bench.outside).toEqual([]);
  });
});
