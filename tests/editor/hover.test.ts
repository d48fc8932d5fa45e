/** What a hover tells, in light and dark workbenches, and in those of high contrast. */
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
  ['Default High Contrast', 'hc-black'],
  ['Default High Contrast Light', 'hc-light'],
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
        // Black on white whatever the theme: the picture brings its ground with it.
        const { darkest, lightest, corner } = await drawn.evaluate(tonesOf);
        expect([darkest, lightest, corner]).toEqual([0, 255, 255]);
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

declare const document: { createElement(name: string): Canvas };
interface Canvas {
  width: number;
  height: number;
  getContext(kind: string): {
    drawImage(picture: unknown, x: number, y: number): void;
    getImageData(x: number, y: number, width: number, height: number): { readonly data: Uint8ClampedArray };
  };
}
/** Runs in the page: how dark and how light a picture is, on no ground of ours. */
const tonesOf = (element: unknown): { darkest: number; lightest: number; corner: number } => {
  const { naturalWidth, naturalHeight } = element as { readonly naturalWidth: number; readonly naturalHeight: number };
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [naturalWidth, naturalHeight];
  const context = canvas.getContext('2d');
  context.drawImage(element, 0, 0);
  const { data } = context.getImageData(0, 0, naturalWidth, naturalHeight);
  let [darkest, lightest] = [255, 0];
  for (let at = 0; at < data.length; at += 4) {
    // What is not opaque would show the ground of the hover.
    const tone = data[at + 3] === 255 ? (data[at] ?? 0) : 128;
    darkest = Math.min(darkest, tone);
    lightest = Math.max(lightest, tone);
  }
  return { darkest, lightest, corner: data[3] === 255 ? (data[0] ?? 0) : 128 };
};
