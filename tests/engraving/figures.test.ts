/** Figures of a thorough bass as pages show them: all of them, with stroke, sign, brackets and line (MEI 5.1, `f`, `@extender`). */
import { describe, expect, it } from 'vitest';
import { below, type SvgElement } from '../../server/engraving/svg';
import { drawn, ofClass, pictureOf } from '../helpers/drawn';
import { engraver } from '../helpers/engraver';
import { passage, scoreOf } from '../helpers/music';

interface Picture {
  readonly svg: string;
  readonly columns: readonly SvgElement[];
}

/** Figures under a bass of two minims. */
async function figured(figures: string, bass = '2 c3 d'): Promise<Picture> {
  const music = `system upper G2 lower F4 meter C\n  basse | ${bass} |||\n    fig | ${figures} |||\n`;
  const [svg = ''] = await drawn(scoreOf(passage(music)));
  return { svg, columns: ofClass(pictureOf(svg), 'harm') };
}

const elementsIn = (column: SvgElement | undefined, name: string): readonly SvgElement[] =>
  [...(column === undefined ? [] : below(column))].filter((element) => element.name === name);

/** The text of a column, from the top, but for what is drawn as an outline. */
const textOf = ({ svg }: Picture, column: SvgElement | undefined): readonly string[] =>
  elementsIn(column, 'text').map(({ inside, closing }) =>
    svg
      .slice(inside, closing)
      .replace(/<[^>]*>/g, '')
      .replace(/\s/g, ''),
  );

/** What is drawn as an outline of the music font in a column. */
const outlinesOf = (column: SvgElement | undefined): readonly (string | undefined)[] =>
  elementsIn(column, 'path').map(({ attributes }) => attributes.d);

describe('figures', () => {
  // SMuFL, "Figured bass": figbass4Raised U+EA56, figbass6Raised U+EA5C.
  it('with a stroke are the glyphs of stroked figures', async () => {
    const { columns } = await figured('4+ 6+');
    const who = await engraver();
    expect(columns.map(outlinesOf)).toEqual([[who.outline(0xea56)?.path], [who.outline(0xea5c)?.path]]);
  });

  it('with a stroke that no glyph has bear a cross', async () => {
    const picture = await figured('8+ 3+');
    expect(picture.columns.map((column) => textOf(picture, column))).toEqual([['8+'], ['3+']]);
  });

  it("of the editor's stand between brackets", async () => {
    const picture = await figured('[6] [#]');
    expect(picture.columns.map((column) => textOf(picture, column))).toEqual([['[6]'], ['[]']]);
    expect(picture.columns.map((column) => outlinesOf(column).length)).toEqual([0, 1]);
  });

  it('stand beside the accidental before them, not upon it', async () => {
    const { columns } = await figured('b6 6b');
    const [before, after] = columns;
    const figure = elementsIn(before, 'tspan').find(({ attributes }) => attributes.x !== undefined);
    const [, sign = ''] = /translate\(([-\d.]+)/.exec(elementsIn(before, 'path')[0]?.attributes.transform ?? '') ?? [];
    expect(Number(figure?.attributes.x)).toBeGreaterThan(Number(sign));
    expect(elementsIn(after, 'tspan').filter(({ attributes }) => attributes.x !== undefined)).toEqual([]);
  });

  it('hold on by a line as far as they say', async () => {
    const { columns } = await figured('6/4 = 5', '4 c3 c 2 d');
    expect(columns.map((column) => elementsIn(column, 'rect').length)).toEqual([2, 0]);
  });

  it.each(['6+', '#', '6b'])('hold on by a line that begins after all of %s', async (figure) => {
    const { columns } = await figured(`${figure} =`, '2 c3 c');
    const [line] = elementsIn(columns[0], 'rect');
    const who = await engraver();
    const signs = elementsIn(columns[0], 'path').map(({ attributes: { d, transform = '' } }) => {
      const code = [0xea5c, 0xea64, 0xea66].find((one) => who.outline(one)?.path === d);
      const [, x, scale] = /translate\(([-\d.]+),.*scale\(([-\d.]+)/.exec(transform)?.map(Number) ?? [];
      return (x ?? 0) + (scale ?? 0) * ((code && who.outline(code)?.box.right) || Number.NaN);
    });
    expect(signs).toHaveLength(1);
    expect(Number(line?.attributes.x)).toBeGreaterThan(signs[0] ?? Number.NaN);
    expect(Number(line?.attributes.width)).toBeGreaterThan(0);
  });

  // Common practice: all of a column is of one size. Times has its figures 0.66 of an em high (from memory).
  it.each(['6+', '4+', '7+', '#', 'b'])('are as tall as those of text beside them: %s', async (figure) => {
    const { columns } = await figured(figure, '1 c3');
    const [sign] = elementsIn(columns[0], 'path');
    const [, scale] = /scale\(([-\d.]+)/.exec(sign?.attributes.transform ?? '')?.map(Number) ?? [];
    const who = await engraver();
    const codes = [0xea56, 0xea5c, 0xea5e, 0xea64, 0xea66];
    const box = codes.map((code) => who.outline(code)).find((one) => one?.path === sign?.attributes.d)?.box;
    const height = ((box?.top ?? Number.NaN) - Math.max(0, box?.bottom ?? Number.NaN)) * (scale ?? Number.NaN);
    expect(height / 405).toBeGreaterThan(0.6);
    expect(height / 405).toBeLessThan(0.85);
  });
});
