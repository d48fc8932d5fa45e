/** d'Anglebert, “Marques des agréments et leur signification”, 1689. */
import { describe, expect, it } from 'vitest';
import { signTableByName } from '../../../server/signs/tables';
import { notes, type Passage, played, problemsIn } from '../../helpers/realised';

const by1689 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'anglebert-1689',
  tempo: '4 at 60',
  ...more,
});

const first = (text: string): string => text.split(' ')[0] ?? '';
const last = (text: string): string => text.split(' ').at(-1) ?? '';

describe('The table of 1689', () => {
  it('has 28 entries in the order of the source, and one of its 29 is not placed (the number: confirmed)', () => {
    expect(signTableByName('anglebert-1689')?.rows).toHaveLength(28);
  });

  it('1: a trill begins above and ends on the note, and its strokes are even in number (from memory; not how many)', () => {
    const trill = notes(by1689("2 d5'zz")).split(' ');
    expect(trill[0]).toBe('e5');
    expect(trill.at(-1)).toBe('d5');
    expect(trill.length % 2).toBe(0);
    expect(new Set(trill)).toEqual(new Set(['e5', 'd5']));
  });

  it('1: its equal notes fill the value; a stop is chosen (from memory)', () => {
    const lengths = (sign: string): string[] =>
      played(by1689(`2 d5${sign}`))
        .split(' ')
        .map((note) => note.replace(/.*:/, ''));
    expect(new Set(lengths("'zz")).size).toBe(1);
    expect(new Set(lengths("'zz(with_stop)")).size).toBe(2);
  });

  it('17, 18, 21 to 26 offer alternatives only, and none is chosen silently', () => {
    for (const lane of ["4 c5'cj e", "4 e5'cj c", "2 c5-e'scu(arpege_autre_2)", "2 d5'hc", "2 d5'ccb"]) {
      expect([lane, problemsIn(by1689(lane, { meter: '' }))]).toEqual([lane, ['sign-unresolved']]);
    }
    expect(notes(by1689("4 c5'cj(before_the_second) e", { meter: '' }))).toBe('c5 d5 e5');
    expect(notes(by1689("2 d5'ccb(slide)"))).toBe('b4 c5 d5');
    // The curve of 17 and 18 joins two notes a third apart (Grove, “Ornaments”).
    expect(problemsIn(by1689("4 c5'cj d", { meter: '' }))).toEqual(['sign-not-in-table']);
  });

  it('2: the tremblement appuyé leans on the upper note before its strokes (from memory; not how long)', () => {
    const [lean, stroke] = played(by1689("2 d5'zl"))
      .split(' ')
      .map((note) => note.split(':'));
    const lasts = ([, length = '']: string[] = []): number =>
      length
        .split('/')
        .map(Number)
        .reduce((n, d) => n / d);
    expect(lean?.[0]).toBe('e5');
    expect(stroke?.[0]).toBe('d5');
    expect(lasts(lean)).toBeGreaterThan(2 * lasts(stroke));
  });

  it('3, 4: one cadence starts on the lower auxiliary, the other on the upper, as its hook shows (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1689("2 d5'zhb"))).toMatch(/^c5 d5 e5 d5 e5 .*d5$/);
    expect(notes(by1689("2 d5'zha"))).toMatch(/^e5 d5 c5 d5 e5 d5 e5 .*d5$/);
  });

  it('7: the double cadence without trill is a turn of four notes from above (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1689("4 d5'turn", { meter: '1/4' }))).toBe('e5 d5 c5 d5');
  });

  it('9: the pincé is the note, the note below, the note again, which is held (from memory)', () => {
    expect(notes(by1689("2 d5'ca"))).toBe('d5 c5 d5');
  });

  it('11: the tremblement et pincé closes with the note below (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1689("2 d5'zc"))).toMatch(/^e5 d5 .*e5 d5 c5 d5$/);
  });

  it('12, 13: the cheute begins on the beat, from the note below where the melody rises, from above where it falls (from memory)', () => {
    expect(notes(by1689("2 c5 d'cb"))).toBe('c5 c5 d5');
    expect(notes(by1689("2 e5 d'cb"))).toBe('e5 e5 d5');
    expect(played(by1689("2 c5 d'cb"))).toMatch(/^c5:1\/2 /);
  });

  it('12, 13: where no note before tells the direction of the cheute it is chosen by its name', () => {
    expect(problemsIn(by1689("1 d5'cb"))).toEqual(['sign-not-in-table']);
    expect(notes(by1689("2 d5 d'cb(cheute)"))).toBe('d5 c5 d5');
    expect(notes(by1689("1 d5'cb(cheute_en_descendant)"))).toBe('e5 d5');
    // Where the melody tells it, it goes before the name.
    expect(notes(by1689("2 e5 d'cheute"))).toBe('e5 e5 d5');
  });

  it('14: the cheute et pincé begins on the beat with the note below (from memory)', () => {
    const both = notes(by1689("2 c5 d'cb'ca"));
    expect(both.split(' ').slice(1)).toEqual(['c5', 'd5', 'c5', 'd5']);
    expect(played(by1689("2 c5 d'cb'ca"))).toMatch(/^c5:1\/2 /);
  });

  it('15, 16: the coulé fills a third; its curve before it means rising, after it falling (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1689("2 c5-e'tcb"))).toBe('c5 d5 e5');
    expect(notes(by1689("2 c5-e'tca"))).toBe('e5 d5 c5');
  });

  it('27, 28: the détaché shortens the sound (Grove, “Ornaments”: confirmed; not by how much)', () => {
    expect(notes(by1689("2 d5'dash"))).toBe('d5 r');
  });

  it('is a trill of the signature: in d minor its upper note over a is b flat (from memory)', () => {
    expect(first(notes(by1689("2 a4'zz", { key: 'bb' })))).toBe('bb4');
    expect(last(notes(by1689("2 a4'zz", { key: 'bb' })))).toBe('a4');
  });
});
