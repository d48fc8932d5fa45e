/** The score panel in themes of high contrast. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, it } from 'vitest';
import { describeInEditor } from './inEditor';
import { Workbench } from './workbench';

const AIR = `bentside 1
stave upper
voice dessus upper
page "2v"
system upper C1 meter C
  dessus | 4 c5'zz d e f | 1 g4 |
page "3r"
system
  dessus | 1 a4 |||
`;

const THEMES = ['Default High Contrast', 'Default High Contrast Light'] as const;

/** WCAG 2.2, success criterion 1.4.6: contrast (enhanced). */
const ENHANCED = 7;

describeInEditor('the score panel in high contrast', () => {
  it('has light ink in a dark theme', async () => {
    const settings = { 'workbench.colorTheme': 'Default Dark Modern' };
    const bench = await Workbench.open({ files: { 'air.bent': AIR }, settings });
    try {
      await bench.openFile('air.bent');
      await bench.run('bentside.showPanel');
      const note = bench.view().locator('[data-id="e-2v-1-dessus-1.2"] use').first();
      await note.waitFor();
      await expect.poll(() => note.evaluate(contrastOfInk)).toBeGreaterThan(ENHANCED);
      await bench.picture('panel-dark');
    } finally {
      await bench.close();
    }
  });

  it.each(THEMES)('has its ink, its buttons and its marked note well apart from their ground: %s', async (theme) => {
    const bench = await Workbench.open({ files: { 'air.bent': AIR }, settings: { 'workbench.colorTheme': theme } });
    try {
      await bench.openFile('air.bent');
      await bench.run('bentside.showPanel');
      const note = bench.view().locator('[data-id="e-2v-1-dessus-1.2"]').first();
      await note.waitFor();
      expect(await note.locator('use').first().evaluate(contrastOfInk)).toBeGreaterThan(ENHANCED);
      for (const button of ['#clefs', '#pages [aria-current="page"]', '#pages button:not([aria-current])']) {
        expect(await bench.view().locator(button).first().evaluate(hasBorder), button).toBe(true);
      }
      // Which leaf is shown is said by more than a colour of the ground.
      const [shown, other] = await bench.view().locator('#pages button').evaluateAll(borders);
      expect(shown).not.toBe(other);
      await note.locator('.notehead').click();
      const marked = bench.view().locator('.at-caret').first();
      await marked.waitFor();
      expect(await marked.locator('use').first().evaluate(contrastOfInk)).toBeGreaterThan(ENHANCED);
      const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
      const frame = await (await bench.view().locator('#score').elementHandle())?.ownerFrame();
      await frame?.evaluate(axe);
      expect(await frame?.evaluate(contrastViolations)).toEqual([]);
      await bench.picture(`panel-${theme.replaceAll(' ', '-').toLowerCase()}`);
    } finally {
      await bench.close();
    }
  });
});

/** These run in the page. */
interface Styled {
  readonly parentElement: Styled | null;
}
declare const getComputedStyle: (of: Styled) => {
  readonly fill: string;
  readonly backgroundColor: string;
  readonly borderTopWidth: string;
  readonly borderTopStyle: string;
  readonly borderTopColor: string;
};
/** The contrast between what an element is filled with and the nearest ground under it. */
function contrastOfInk(element: unknown): number {
  const parts = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const luminance = (colour: string): number => {
    const [r = 0, g = 0, b = 0] = parts(colour).map((part) => {
      const share = part / 255;
      return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  let ground = 'rgb(255, 255, 255)';
  for (let at = element as Styled | null; at !== null; at = at.parentElement) {
    const { backgroundColor } = getComputedStyle(at);
    if (parts(backgroundColor)[3] === 0) continue;
    ground = backgroundColor;
    break;
  }
  const [light = 0, dark = 0] = [luminance(getComputedStyle(element as Styled).fill), luminance(ground)].sort(
    (a, b) => b - a,
  );
  return (light + 0.05) / (dark + 0.05);
}
const hasBorder = (element: unknown): boolean => {
  const { borderTopWidth, borderTopStyle, borderTopColor } = getComputedStyle(element as Styled);
  return borderTopStyle !== 'none' && parseFloat(borderTopWidth) >= 1 && !/, 0\)$/.test(borderTopColor);
};
const borders = (elements: readonly unknown[]): string[] =>
  elements.map((one) => {
    const { borderTopWidth, borderTopStyle, borderTopColor } = getComputedStyle(one as Styled);
    return `${borderTopWidth} ${borderTopStyle} ${borderTopColor}`;
  });
declare const axe: { run(about: object): Promise<{ readonly violations: readonly { readonly id: string }[] }> };
const contrastViolations = async (): Promise<string[]> =>
  (await axe.run({ runOnly: ['color-contrast', 'color-contrast-enhanced'] })).violations.map(({ id }) => id);
