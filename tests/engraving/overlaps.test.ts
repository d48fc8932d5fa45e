/** Nothing runs into anything else: heads, rests, accidentals, signs, brackets, words, figures, syllables of all samples. */
import { describe, expect, it } from 'vitest';
import { SPACE } from '../../server/engraving/additions/heads';
import { glyphsOf, lineOf } from '../../server/engraving/svg';
import { type Box, boxesIn } from '../helpers/boxes';
import { collisions } from '../helpers/collisions';
import { drawn, ofClass, pictureOf } from '../helpers/drawn';
import { analysed, lane, scoreOf } from '../helpers/music';
import { sampleAnalysis, sampleNames } from '../helpers/samples';

/** SMuFL 1.4, accidentalSharp. */
const SHARP = 0xe262;

describe('what is drawn', () => {
  it.each(sampleNames)('keeps its distance in %s, in every reading', async (name) => {
    const analysis = sampleAnalysis(name);
    for (const reading of analysis.choices) {
      for (const [i, page] of (await drawn(scoreOf(analysis, reading))).entries()) {
        const boxes = await boxesIn(page);
        expect(boxes.length).toBeGreaterThan(20);
        expect(collisions(boxes), `reading ${reading}, page ${i + 1}`).toEqual([]);
      }
    }
  });

  it.each(sampleNames)('keeps its distance in %s, where what signs mean stands above the stave', async (name) => {
    const analysis = sampleAnalysis(name);
    const [reading] = analysis.environment.readings;
    for (const page of await drawn(scoreOf(analysis, reading?.name), { ornaments: 'above' }))
      expect(collisions(await boxesIn(page))).toEqual([]);
  });

  it('keeps its distance where names stand before the first system, as of a gigue as written and as played', async () => {
    const score = scoreOf(sampleAnalysis('gigue.bent'), 'leaf');
    const pages = await drawn(score, { rhythm: 'played', show: 'both' });
    expect(pages[0]).toContain('as played');
    for (const page of pages) expect(collisions(await boxesIn(page))).toEqual([]);
  });

  it('keeps its distance in a bar without measure that is longer than a line, where lines end as they fit', async () => {
    const run = '8 f#5 e d# c# d e f# g a# g f# e '.repeat(8);
    const text = `bentside 1\nvoice dessus\nsystem loose dessus G2\n  dessus | ${run} |\n`;
    const pages = await drawn(scoreOf(analysed(text)), { layout: 'flow' });
    for (const page of pages) expect(collisions(await boxesIn(page))).toEqual([]);
  });

  it.each(['(down) {small 32 d4 c# d} 2 c#4 d', '(down) {small 32 g3 a} 2 b3 d4'])(
    'keeps small notes that cross over to the other stave clear of the accidentals there: %s',
    async (dessus) => {
      const text = `bentside 1\nstave upper\nstave lower\nvoice dessus upper\nvoice basse lower stems down
system upper G2 lower C3 meter C\n  dessus | ${dessus} |\n  basse | 1 f#3-a |\n`;
      const [page = ''] = await drawn(scoreOf(analysed(text)));
      expect(collisions(await boxesIn(page))).toEqual([]);
    },
  );

  /** Common practice: before a barline stands a stave space at least. */
  it('keeps small notes at the end of a bar clear of its barline', async () => {
    const [page = ''] = await drawn(scoreOf(lane('1 c5 {small 16 b4 c5} | 1 d5')));
    const last = (await boxesIn(page)).filter(({ what, id }) => what === 'notehead' && id.includes('-1.')).at(-1);
    const [barline] = ofClass(pictureOf(page), 'barLine').flatMap(({ children }) =>
      children.flatMap((stroke) => lineOf(stroke) ?? []),
    );
    expect((barline?.x ?? Number.NaN) / SPACE - (last?.right ?? Number.NaN)).toBeGreaterThan(1);
  });

  it('keeps a rest clear of a note that crosses over from the other stave', async () => {
    const text = `bentside 1\nstave upper\nstave lower\nvoice canto upper stems up\nvoice alto upper stems down\nvoice basso lower
system upper C1 lower F4 meter C\n  canto | 1 a4 |\n  alto | 1 r |\n  basso | 1 a2-(up)c4 |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const boxes = await boxesIn(page);
    expect(boxes.map(({ what }) => what).sort()).toEqual(['notehead', 'notehead', 'notehead', 'rest']);
    expect(collisions(boxes)).toEqual([]);
  });

  it('keeps the rests of three voices on one stave clear of notes and of one another, in the order of the voices', async () => {
    const text = `bentside 1\nstave upper\nstave lower\nvoice cantus upper stems up\nvoice altus upper stems down
voice tenor upper stems down\nvoice bassus lower\nsystem upper C1 lower F4 key bb meter C
  cantus | 2 r 4 d5 d | 2 c5 b4 | 16 r f5 g a b4 a g r 4 r a5 |
  altus  | 2 b4 a | 4 r g4 2 g | 2 r 4 c5 r |
  tenor  | 4 r d4 f d | 2 r d4 | 4 d4 r r f |
  bassus | 2 g2 d3 | 2 e3 4 b2 g | 2 b2 f |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const boxes = await boxesIn(page);
    expect(collisions(boxes)).toEqual([]);
    const topOf = (address: string): number => boxes.find(({ id }) => id === address)?.top ?? Number.NaN;
    expect(topOf('e-1-1-altus-2.1')).toBeLessThan(topOf('e-1-1-tenor-2.1'));
    expect(topOf('e-1-1-cantus-3.1')).toBeLessThan(topOf('e-1-1-altus-3.1'));
  });

  it('keeps a rest well clear of a note of another voice after a clef within the bar', async () => {
    const text = `bentside 1\nstave lower\nvoice tenore lower stems up\nvoice basso lower stems down
system lower F4 meter 3/2\n  tenore | 2 c4 1 r |\n  basso | 2 a2 (now C4) 1 a3 |\n`;
    const [page = ''] = await drawn(scoreOf(analysed(text)));
    const boxes = await boxesIn(page);
    const rest = boxes.find(({ what }) => what === 'rest');
    const head = boxes.find(({ what, id }) => what === 'notehead' && id === 'e-1-1-basso-1.2');
    expect(head).toBeDefined();
    expect((head?.top ?? 0) - (rest?.bottom ?? 0)).toBeGreaterThan(0.5);
  });

  it('has one pair of brackets around a supplied chord with its accidental and its wavy line', async () => {
    const [page = ''] = await drawn(scoreOf(lane("2 c5 {supplied 2 c#5-e'[arp]}")));
    const boxes = await boxesIn(page);
    const brackets = boxes.filter(({ what }) => what === 'sign');
    const [, ...within] = boxes.filter(({ what }) => what !== 'sign').sort((a, b) => a.left - b.left);
    expect(new Set(within.map(({ what }) => what))).toEqual(new Set(['arpeg', 'accid', 'notehead']));
    expect(brackets).toHaveLength(2);
    expect(Math.min(...within.map(({ left }) => left))).toBeGreaterThan(brackets[0]?.left ?? Infinity);
    expect(Math.max(...within.map(({ right }) => right))).toBeLessThan(brackets[1]?.right ?? 0);
    expect(collisions(boxes)).toEqual([]);
  });

  it.each(["'ca", "'[ca]"])(
    'keeps %s after a note clear of the wavy line of the chord that follows, whatever accidental that has',
    async (sign) => {
      for (const chord of ["c4-e-g'arp", "c#4-e-g'arp", "c4-e-g#'arp", "c4-e-g'arpu", "c4-e-g'[arp]"]) {
        const [page = ''] = await drawn(scoreOf(lane(`2 c5${sign} 2 ${chord}`)));
        const boxes = await boxesIn(page);
        expect(boxes.map(({ what }) => what)).toContain('arpeg');
        expect(collisions(boxes), chord).toEqual([]);
      }
    },
  );

  it('has the brackets around a wavy line that stands after a sign on either side of it', async () => {
    const [page = ''] = await drawn(scoreOf(lane("2 c5'ca 2 c4-e-g'[arp]")));
    const [line, ...brackets] = (await boxesIn(page)).filter(({ what }) => what === 'arpeg');
    expect(Math.min(...brackets.map(({ left }) => left))).toBeLessThan(line?.left ?? 0);
    expect(Math.max(...brackets.map(({ right }) => right))).toBeGreaterThan(line?.right ?? Infinity);
  });

  /** Common practice: nothing stands between an accidental and its head. */
  it.each(["c5'ca d#5", "c5'[ca] d#5", 'c5 {supplied d#5}'])(
    'leaves the sharp close to its head: %s',
    async (music) => {
      const distance = async (passage: string): Promise<number> => {
        const [page = ''] = await drawn(scoreOf(lane(`2 ${passage}`)));
        const [heads, accidentals] = ['notehead', 'accid'].map((what) =>
          ofClass(pictureOf(page), what).flatMap(glyphsOf),
        );
        const sharp = accidentals?.find(({ code }) => code === SHARP);
        return ((heads?.at(-1)?.x ?? Number.NaN) - (sharp?.x ?? Number.NaN)) / SPACE;
      };
      expect(await distance(music)).toBeCloseTo(await distance('c5 d#5'), 1);
    },
  );

  /** Common practice: what is between brackets stands close to both, within half a stave space. */
  it.each(['c5 {supplied d}', 'c5 {supplied d#}', "c5 {supplied c-e-g'[arp]}"])(
    'has its brackets as close before it as after it: %s',
    async (music) => {
      const [page = ''] = await drawn(scoreOf(lane(`2 ${music}`)));
      const boxes = await boxesIn(page);
      const [before, after] = boxes.filter(({ what }) => what === 'sign');
      const within = boxes.filter(({ what, id }) => what !== 'sign' && !id.startsWith('e-1-1-dessus-1.1'));
      // Room that is kept has no height.
      const left = Math.min(...within.filter(({ top, bottom }) => bottom - top > 0.5).map(({ left }) => left));
      expect(left - (before?.left ?? Number.NaN)).toBeGreaterThan(0.1);
      expect(left - (before?.left ?? Number.NaN)).toBeLessThan(0.6);
      expect((after?.right ?? Number.NaN) - Math.max(...within.map(({ right }) => right))).toBeLessThan(0.6);
    },
  );

  it('has its brackets on the page where the last of what is supplied is a rest', async () => {
    const [page = ''] = await drawn(scoreOf(lane('{supplied 2 c5 4 d r}')));
    expect((await boxesIn(page)).filter(({ what }) => what === 'sign')).toHaveLength(2);
    expect(page).not.toContain('Infinity');
  });

  it('has the accidental of a custos before it, as that of a note', async () => {
    const [page = ''] = await drawn(scoreOf(lane('4 c5 d e f (custos eb5)')));
    const [custos] = ofClass(pictureOf(page), 'custos');
    const [flat] = custos === undefined ? [] : ofClass(custos, 'accid');
    const [sign, accidental] = [custos, flat].map((one) => one && glyphsOf(one)[0]?.x);
    expect(accidental).toBeLessThan((sign ?? Number.NaN) - 0.7 * SPACE);
    expect(collisions(await boxesIn(page))).toEqual([]);
  });

  it('would be found where it did not', () => {
    const head: Box = { what: 'notehead', id: 'a', left: 0, top: 0, right: 1.18, bottom: 1 };
    expect(collisions([head, { ...head, what: 'accid', id: 'b', left: 1, right: 2 }])).toEqual([
      'notehead a and accid b: 0.18',
    ]);
    expect(collisions([head, { ...head, what: 'accid', id: 'b', left: 1.1, right: 2 }])).toEqual([]);
  });
});
