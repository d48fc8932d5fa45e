/** Staves as they are drawn, measured: numbers of lines, clefs on their lines, heads where each clef has them. */
import { describe, expect, it } from 'vitest';
import { stavesIn } from '../../server/engraving/additions/heads';
import { clefPairs } from '../../server/engraving/font/codepoints';
import { below, lineOf, type SvgElement } from '../../server/engraving/svg';
import { addressOfId } from '../../server/export/mei/ids';
import { drawn, glyphIn, ofClass, pictureOf, stepIn } from '../helpers/drawn';
import { analysed, scoreOf } from '../helpers/music';

const oneStave = (clef: string, lines: number, notes: string, before = ''): string =>
  `bentside 1\nvoice dessus lines ${lines}\n${before}system dessus ${clef} meter 4/4\n  dessus | ${notes} |\n`;

async function measureOf(text: string, options = {}) {
  const [page = ''] = await drawn(scoreOf(analysed(text)), options);
  const [measure] = ofClass(pictureOf(page), 'measure');
  if (measure === undefined) throw new Error('no measure');
  return measure;
}

/**
 * Steps from the bottom line to middle C, after Quantz, Versuch, 1752, chapter V, section 1 (the nine clefs) and the classes
 * of clefs: a G clef names g4, a C clef c4, an F clef f3.
 */
const CLEFS: readonly (readonly [clef: string, steps: number])[] = [
  ['G1', -4],
  ['G2', -2],
  ['C1', 0],
  ['C2', 2],
  ['C3', 4],
  ['C4', 6],
  ['C5', 8],
  ['F3', 8],
  ['F4', 10],
  ['F5', 12],
];

/** Of the heads of a voice on the only stave of a measure, in their order: steps from the bottom line. */
const stepsOf = (measure: SvgElement, voice: string): readonly number[] =>
  ofClass(measure, 'note')
    .filter(({ attributes }) => addressOfId(attributes['data-id'] ?? '')?.lane === voice)
    .flatMap((note) => ofClass(note, 'notehead').map((head) => Math.round(stepIn(measure, 0, head))));

describe('a drawn stave', () => {
  it.each([4, 5, 6, 7, 8])('has %i lines', async (lines) => {
    const [stave] = ofClass(await measureOf(oneStave('G2', lines, '1 g4')), 'staff');
    const level = stave?.children.filter((child) => {
      const ends = lineOf(child);
      return ends !== undefined && ends[0].y === ends[1].y && ends[1].x - ends[0].x > 1000;
    });
    expect(level).toHaveLength(lines);
  });

  it.each(CLEFS)('has middle C where %s has it: %i steps from the bottom line', async (clef, steps) => {
    const measure = await measureOf(oneStave(clef, 5, '1 c4'));
    const [head] = ofClass(measure, 'notehead');
    expect(head && stepIn(measure, 0, head)).toBeCloseTo(steps, 5);
  });

  it.each(CLEFS)('has the clef %s on its line', async (clef) => {
    const measure = await measureOf(oneStave(clef, 5, '1 c4'));
    const [drawnClef] = ofClass(measure, 'clef');
    const line = Number(clef.charAt(1));
    expect(drawnClef && stepIn(measure, 0, drawnClef)).toBeCloseTo(2 * (line - 1), 5);
    // SMuFL 1.4, "Clefs": gClef, cClef, fClef.
    const code = { G: 0xe050, C: 0xe05c, F: 0xe062 }[clef.charAt(0)];
    expect(drawnClef && glyphIn(drawnClef)?.code).toBe(code);
  });

  /** The C line is two lines above the F line, the G line two above the C line; heads follow. */
  it.each([
    ['F4+C6', 8, 'FC', 4, 10],
    ['F5+C7', 8, 'FC', 5, 12],
    ['C1+G3', 6, 'CG', 1, 0],
    ['C2+G4', 6, 'CG', 2, 2],
  ] as const)('has two clefs at once, %s on %i lines', async (clefs, lines, pair, line, steps) => {
    const measure = await measureOf(oneStave(clefs, lines, '1 c4'));
    const [clef] = ofClass(measure, 'clef');
    const [head] = ofClass(measure, 'notehead');
    expect(clef && glyphIn(clef)?.code).toBe(clefPairs[pair]?.code);
    expect(clef && stepIn(measure, 0, clef)).toBeCloseTo(2 * (line - 1), 5);
    expect(head && stepIn(measure, 0, head)).toBeCloseTo(steps, 5);
  });

  it('has treble or bass clefs and five lines where they are wished for', async () => {
    const measure = await measureOf(oneStave('C1', 6, '1 c5'), { clefs: 'modern' });
    const [clef] = ofClass(measure, 'clef');
    expect(clef && glyphIn(clef)?.code).toBe(0xe050);
    const [head] = ofClass(measure, 'notehead');
    // Under the treble clef c5 is in the third space: five steps over e4.
    expect(head && stepIn(measure, 0, head)).toBeCloseTo(5, 5);
  });

  /** A C clef on the fourth line has c4 there, so a3 on the third: by the table above. Three voices, and each has the clef. */
  it.each(['canto', 'alto', 'basso'])(
    'has the heads of all voices by a clef that comes within the bar in the %s',
    async (voice) => {
      const now = (one: string): string => (one === voice ? '(now C4) ' : '');
      const text = `bentside 1\nstave lower lines 5\nvoice canto lower stems up\nvoice alto lower\nvoice basso lower stems down
system lower F4 meter C\n  canto | 2 a3 ${now('canto')}4 c4 e4 |\n  alto | 2 f3 ${now('alto')}2 a3 |\n  basso | 2 c3 ${now('basso')}8 f3 e 4 d |\n`;
      const measure = await measureOf(text);
      expect(stepsOf(measure, 'canto')).toEqual([8, 6, 8]);
      expect(stepsOf(measure, 'alto')).toEqual([6, 4]);
      expect(stepsOf(measure, 'basso')).toEqual([3, 2, 1, 0]);
      expect(ofClass(measure, 'clef').flatMap((clef) => glyphIn(clef) ?? [])).toHaveLength(2);
    },
  );

  it.each(['canto', 'basso'])(
    'begins the next system with a clef that came within the bar in the %s, and goes on by it',
    async (voice) => {
      const now = (one: string, clef: string): string => (one === voice ? `(now ${clef}) ` : '');
      const system = (head: string, clef: string, end: string): string =>
        `system ${head}\n  canto | 2 c4 ${now('canto', clef)}e4 ${end}\n  basso | 2 a3 ${now('basso', clef)}c4 ${end}\n`;
      const text = `bentside 1\nstave lower lines 5\nvoice canto lower stems up\nvoice basso lower stems down
${system('lower F4 meter C', 'C4', '|')}${system('', 'F4', '|')}system\n  canto | 1 c4 |||\n  basso | 1 a3 |||\n`;
      const [page = ''] = await drawn(scoreOf(analysed(text)));
      const systems = ofClass(pictureOf(page), 'system');
      const clefs = systems.map((one) => ofClass(one, 'clef').flatMap((clef) => glyphIn(clef) ?? []));
      expect(clefs.map(({ length }) => length)).toEqual([2, 2, 1]);
      const [[atFirst] = [], [atSecond] = [], [atThird] = []] = clefs;
      expect(atSecond?.code).not.toBe(atFirst?.code);
      expect(atThird?.code).toBe(atFirst?.code);
    },
  );

  it('has small notes by a clef that another voice has at their moment, and what follows them', async () => {
    const text = `bentside 1\nstave lower lines 5\nvoice canto lower stems up\nvoice basso lower stems down
system lower F4 meter C\n  canto | 2 a3 (now C4) c4 |\n  basso | 2 c3 {small 8 g3} 2 f3 |\n`;
    expect(stepsOf(await measureOf(text), 'basso')).toEqual([3, 3, 2]);
  });

  it('has the heads of a held note by the clef under which it began', async () => {
    const text = `bentside 1\nstave lower lines 5\nvoice canto lower stems up\nvoice basso lower stems down
system lower F4 meter C\n  canto | 2 a3 (now C4) c4 | 1 c4 |\n  basso | 1 c3 | 1 f3 |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const measures = ofClass(pictureOf(page), 'measure');
    expect(measures.map((measure) => stepsOf(measure, 'canto'))).toEqual([[8, 6], [6]]);
    expect(measures.map((measure) => stepsOf(measure, 'basso'))).toEqual([[3], [2]]);
  });

  it('has the notes that cross over to it, in free music that goes on in a second system too', async () => {
    const notes = '(down) 1 f2 f3 (home) a4';
    const system = `system free  upper G2  lower F4\n  dessus | ${notes}`;
    const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\n${system}\n${system} |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const steps = ofClass(pictureOf(page), 'measure').flatMap((measure) => {
      const [low, middle, high] = ofClass(measure, 'notehead');
      return low && middle && high
        ? [stepIn(measure, 1, low), stepIn(measure, 1, middle), stepIn(measure, 0, high)]
        : [];
    });
    // Steps from g2, the bottom line under F4, and from e4, under G2.
    expect(steps.map(Math.round)).toEqual([-1, 6, 3, -1, 6, 3]);
  });

  it('has a clef where free music that crosses over to it has reached it, and each note by the clef before it', async () => {
    const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\nsystem free  upper G2  lower F4
  dessus | (down) 1 f2 a2 c3 8 f3 a3 (home) 1 a4 c5 (down) (now F3) f2 a2 |\n`;
    const measure = await measureOf(text);
    const [, lower] = ofClass(measure, 'staff');
    const xOf = (element: SvgElement | undefined) => (element === undefined ? Number.NaN : glyphIn(element)?.x);
    const [clef] = lower === undefined ? [] : ofClass(lower, 'clef').slice(1);
    const heads = ofClass(measure, 'notehead');
    const low = heads.filter((_, i) => ![5, 6].includes(i));
    // Steps from g2, the bottom line under F4, and from b2, under F3.
    expect(low.map((head) => Math.round(stepIn(measure, 1, head)))).toEqual([-1, 1, 3, 6, 8, -3, -1]);
    expect(xOf(clef)).toBeGreaterThan(xOf(heads[6]) ?? Number.NaN);
    expect(xOf(clef)).toBeLessThan(xOf(heads[7]) ?? Number.NaN);
  });

  it('begins a new system within a bar of the other stave, though its own clef comes only after', async () => {
    const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\nsystem upper G2 lower F4 meter C
  dessus | 2 c5\nsystem\n  dessus | (down) 4 a2 (now F3) f2 |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    expect(ofClass(pictureOf(page), 'system')).toHaveLength(2);
    const [, second] = ofClass(pictureOf(page), 'measure');
    const steps = second && ofClass(second, 'notehead').map((head) => Math.round(stepIn(second, 1, head)));
    expect(steps).toEqual([1, -3]);
  });

  it('stays in every system of two parts, written and played, though only a voice of another stave is on it', async () => {
    const system = 'system upper C1 lower F4 meter C\n  dessus | 2 c5 (down) f3 (home) |\n';
    const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\nreading even\n  practice literal\n${system}${system}`;
    const [page = ''] = await drawn(scoreOf(analysed(text), 'even'), { show: 'both' });
    const staves = ofClass(pictureOf(page), 'measure').map((measure) => stavesIn(measure).length);
    expect(staves).toEqual([4, 4]);
  });

  it('keeps open score apart: no barline runs from stave to stave', async () => {
    const text = `bentside 1\nvoice canto lines 5\nvoice alto\nvoice basso
system canto C1 alto C3 basso F4 meter C\n  canto | 1 c5 | d |\n  alto | 1 a4 | b |\n  basso | 1 f3 | g |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const [barline] = ofClass(pictureOf(page), 'barLine');
    const reaches = [...(barline === undefined ? [] : below(barline))].flatMap((element) => {
      const ends = lineOf(element);
      return ends === undefined ? [] : [Math.abs(ends[1].y - ends[0].y)];
    });
    // Three strokes of four stave spaces each.
    expect(reaches).toEqual([720, 720, 720]);
  });

  it('names each stave of open score, and of two parts in it each with its part', async () => {
    const text = `bentside 1\nvoice canto lines 5\nvoice alto\nvoice basso\nreading even\n  practice literal
system canto C1 alto C3 basso F4 meter C\n  canto | 1 c5 |\n  alto | 1 a4 |\n  basso | 1 f3 |\n`;
    const score = scoreOf(analysed(text), 'even');
    const names = async (options: Parameters<typeof drawn>[1]): Promise<readonly string[]> => {
      const [page = ''] = await drawn(score, options);
      return ofClass(pictureOf(page), 'label').map(({ inside, closing }) =>
        page
          .slice(inside, closing)
          .replace(/<[^>]*>/g, '')
          .trim(),
      );
    };
    const voices = ['canto', 'alto', 'basso'];
    expect(await names({})).toEqual(voices);
    const inParts = ['as played', 'as written'].flatMap((part) => voices.map((voice) => `${voice}, ${part}`));
    expect(await names({ show: 'both' })).toEqual(inParts);
  });
});
