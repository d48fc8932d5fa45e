/** Marpurg, 1755, as told in Grove, “Shake”. */
import { describe, expect, it } from 'vitest';
import { divide, toNumber } from '../../../grammar/time';
import { eventsOfVoice, notes, type Passage, performed, problemsIn } from '../../helpers/realised';

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

  it('gives an appoggiatura more of a dotted note than of one of two parts (from memory, the kind only)', () => {
    const share = (value: string, meter: string): number => {
      const [small, main] = eventsOfVoice(performed({ ...by1755(`{small 8 d5} ${value} c5`), meter }));
      return small && main ? toNumber(divide(small.duration, main.duration)) : 0;
    };
    expect(share('2.', '3/4')).toBeGreaterThan(share('2', '2/4'));
  });

  it('has a slide-trill whose one closing note is not recorded', () => {
    expect(problemsIn(by1755("2 d5'zhbr"))).toEqual(['sign-unresolved']);
  });
});
