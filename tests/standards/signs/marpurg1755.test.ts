/** Marpurg, 1755, as told in Grove, “Shake”. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played, problemsIn } from '../../helpers/realised';

const by1755 = (lane: string): Passage => ({ lanes: [lane], table: 'marpurg-1755', tempo: '4 at 60' });

describe('Marpurg', () => {
  it('derives the trill from a series of descending appoggiaturas, so that it begins above (confirmed)', () => {
    const all = notes(by1755("2 d5'tr")).split(' ');
    const pairs = all.flatMap((note, i) => (i % 2 === 0 ? [`${note} ${all[i + 1]}`] : []));
    expect(new Set(pairs)).toEqual(new Set(['e5 d5']));
  });

  it('begins a bound trill with the tied upper note, so that the first stroke is late (Grove, “Shake”: confirmed)', () => {
    expect(notes(by1755("2 e5'u d'tr'."))).toMatch(/^e5 d5 e5 /);
    expect(notes(by1755("2 g5 {small 8 e} 2 d'tr"))).toMatch(/^g5 e5 d5 e5 /);
  });

  it('gives an appoggiatura half of a note of two parts and two thirds of a dotted one (from memory)', () => {
    expect(played(by1755('2 d5 {small 8 d} 2 c'))).toBe('d5:1/2 d5:1/4 c5:1/4');
    expect(played({ ...by1755('{small 8 d5} 2. c5'), meter: '3/4' })).toBe('d5:1/2 c5:1/4');
  });

  it('has a slide-trill whose one closing note is not recorded', () => {
    expect(problemsIn(by1755("2 d5'zhbr"))).toEqual(['sign-unresolved']);
  });
});
