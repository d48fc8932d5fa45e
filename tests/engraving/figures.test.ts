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
});
