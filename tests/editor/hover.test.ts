/** What a hover tells, in a light and a dark workbench. */
import { expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const AIR = `bentside 1
stave upper
voice dessus upper
system upper C1 key bb meter C
  dessus | 4 c5 d b4'zz a | 1 g4 |||
`;

const THEMES = [
  ['Default Light Modern', 'vs'],
  ['Default Dark Modern', 'vs-dark'],
] as const;

describeInEditor('a hover over a note', () => {
  for (const [theme, kind] of THEMES) {
    it(`says what sounds and what is written, and draws the bar: ${theme}`, async () => {
      const bench = await Workbench.open({ files: { 'air.bent': AIR }, settings: { 'workbench.colorTheme': theme } });
      try {
        await bench.openFile('air.bent');
        await bench.page.locator(`.monaco-workbench.${kind}`).waitFor();
        const hover = await bench.hoverOver('b4', 'B♭4');
        expect(await hover.textContent()).toContain('bar 1, beat 3');
        const drawn = hover.locator('img');
        await drawn.waitFor();
        expect(await drawn.evaluate(widthDrawn)).toBeGreaterThan(100);
        // It fades in.
        await bench.page.waitForTimeout(400);
        await bench.picture(`hover-${kind}`);
        expect(bench.outside).toEqual([]);
      } finally {
        await bench.close();
      }
    });
  }
});

/** Runs in the page: the width of a picture that could be read. */
const widthDrawn = async (element: unknown): Promise<number> => {
  const picture = element as { decode(): Promise<void>; readonly naturalWidth: number };
  await picture.decode();
  return picture.naturalWidth;
};
