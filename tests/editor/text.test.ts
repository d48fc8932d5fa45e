/** The text editor with the extension, in a real workbench in a headless browser. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { missing, Workbench } from './workbench';

const AIR = `bentside 1
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
system upper C1 lower F4 key bb meter cut-C
  dessus | 4. b4'zz 8 c5 2 d5 | 2 d5 <K: 2 c5 ; L: 4 c5 b4> |
  basse | 2 b2 4 = a | 2 b2 f3 |
`;

/** Without the browser one line says so; where CI is true that is a failure. */
if (missing !== undefined && process.env.CI !== 'true') console.warn(missing);

describe.skipIf(missing !== undefined && process.env.CI !== 'true')('a score in the editor', () => {
  let bench: Workbench;

  beforeAll(async () => {
    expect(missing).toBeUndefined();
    bench = await Workbench.open({ files: { 'air.bent': AIR } });
    await bench.openFile('air.bent');
  });
  afterAll(() => bench?.close());

  it('has its voice, values, notes and signs in different colours', async () => {
    const colourOf = (text: string) => bench.word(text).evaluate(colourShown);
    await bench.word("'zz").waitFor();
    const colours = await Promise.all(['dessus', '4.', "'zz"].map(colourOf));
    expect(new Set(colours).size).toBe(3);
  });

  it('underlines a bar that has too much and lists it among the problems', async () => {
    await bench.caretBehind('2 d5 |');
    await bench.page.keyboard.press('ArrowLeft');
    await bench.page.keyboard.press('ArrowLeft');
    await bench.type(' 4 e5');
    await bench.page.locator('.squiggly-error').first().waitFor();
    await bench.run('workbench.actions.view.problems');
    const row = bench.page.locator('.markers-panel .monaco-list-row', { hasText: 'bar-too-long' });
    await row.first().waitFor();
    await bench.picture('problems');
  });
});

/** Runs in the page. */
declare const getComputedStyle: (element: unknown) => { readonly color: string };
const colourShown = (element: unknown): string => getComputedStyle(element).color;
