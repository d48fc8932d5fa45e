/** Words under their notes: dashes and lines as far as a syllable is held on, and barlines that leave room for them. */
import { describe, expect, it } from 'vitest';
import { stavesIn } from '../../server/engraving/additions/heads';
import { below, lineOf, type SvgElement } from '../../server/engraving/svg';
import { boxesIn } from '../helpers/boxes';
import { drawn, ofClass, pictureOf } from '../helpers/drawn';
import { analysed, lane, passage, scoreOf } from '../helpers/music';

const SPACE = 180;

/** The strokes beside the syllables of a passage, and its heads, from left to right in stave spaces. */
async function sung(music: string, text: string) {
  const [page = ''] = await drawn(
    scoreOf(passage(`system upper G2 lower F4 meter C\n  dessus | ${music} |||\n    text | ${text} |||\n`)),
  );
  const strokes = ofClass(pictureOf(page), 'syl')
    .flatMap(({ children }) => children.filter(({ name }) => name === 'rect'))
    .map(({ attributes: { x, width } }) => ({ left: Number(x) / SPACE, right: (Number(x) + Number(width)) / SPACE }));
  const heads = (await boxesIn(page)).filter(({ what }) => what === 'notehead');
  return { strokes, heads: heads.map(({ left }) => left).sort((a, b) => a - b) };
}

const lastOf = <T>(list: readonly T[]): T => {
  const last = list.at(-1);
  if (last === undefined) throw new Error('none');
  return last;
};

/** Common practice: a line under all notes of the last syllable of a word, dashes between the syllables of one. */
describe('a syllable that is held on', () => {
  it('has its line to the last note on which it is sung', async () => {
    const { strokes, heads } = await sung('8 f5 e d c d c 4 b4', 'Ah = = = = = fin');
    expect(strokes).toHaveLength(1);
    expect(lastOf(strokes).right).toBeGreaterThan(heads[5] ?? Number.NaN);
    expect(lastOf(strokes).right).toBeLessThan(lastOf(heads));
  });

  it('has its line no farther than to the next syllable, which begins before its note', async () => {
    const [page = ''] = await drawn(
      scoreOf(
        passage(
          `system upper G2 lower F4 meter C\n  dessus | 16 f5 e d c d c b4 a 4 g a |||\n    text | Ah = = = = = = = straights = |||\n`,
        ),
      ),
    );
    // Between them stands that which only holds on.
    const [held, , next] = ofClass(pictureOf(page), 'syl');
    const line = held?.children.find(({ name }) => name === 'rect');
    const word = next?.children.find(({ name }) => name === 'text');
    expect(Number(line?.attributes.width)).toBeGreaterThan(5 * SPACE);
    expect(Number(line?.attributes.x) + Number(line?.attributes.width)).toBeLessThan(Number(word?.attributes.x));
  });

  it('within a word has dashes on to its next syllable', async () => {
    const { strokes, heads } = await sung('4 f5 e d c | d e f e | 1 d', 'Chan- = = = | = = = = | ter');
    expect(strokes.length).toBeGreaterThan(2);
    expect(lastOf(strokes).left).toBeGreaterThan(heads[6] ?? Number.NaN);
    for (const { left, right } of strokes) expect(right - left).toBeLessThan(1);
  });
});

/** Common practice: barlines do not run through words. */
describe('the barlines of two staves', () => {
  const lengthsOf = (page: string) =>
    ofClass(pictureOf(page), 'barLine').map((barline) => [...below(barline)].flatMap((one) => heightOf(one)));
  const heightOf = (element: SvgElement): readonly number[] => {
    const ends = lineOf(element);
    return ends === undefined ? [] : [Math.abs(ends[1].y - ends[0].y)];
  };

  it('end at each stave where words stand between them, and run through where none do', async () => {
    const system = 'system upper G2 lower F4 meter C\n  dessus | 1 c5 |\n';
    const bass = '  basse | 1 c3 |\n';
    const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\nvoice basse lower\npiece "Air"
${system}    text | Strengths |\n${bass}piece "Double"\n${system}${bass}`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const [air, double] = lengthsOf(page);
    expect(air).toEqual([4 * SPACE, 4 * SPACE]);
    // A stroke from stave to stave besides those of the staves.
    expect(double).toEqual([4 * SPACE, 4 * SPACE, expect.any(Number)]);
    expect(lastOf(double ?? [])).toBeGreaterThan(4 * SPACE);
  });

  it('are whole where words under the upper stave end before them', async () => {
    const [page = ''] = await drawn(scoreOf(lane('(below "Ritorno") 4 c5 d | 2 d', '2/4')));
    const [measure] = ofClass(pictureOf(page), 'measure');
    const [upper, lower] = measure === undefined ? [] : stavesIn(measure);
    const [first] = lengthsOf(page);
    expect(first).toEqual([4 * SPACE, 4 * SPACE, (lower?.top ?? Number.NaN) - (upper?.bottom ?? Number.NaN)]);
  });
});
