/** Rameau, Pièces de clavessin, 1724, the table. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played } from '../../helpers/realised';

const by1724 = (lane: string, more: Partial<Passage> = {}): Passage => ({
  lanes: [lane],
  table: 'rameau-1724',
  tempo: '4 at 60',
  ...more,
});

describe('The table of 1724', () => {
  it('closes its double cadence with the note below, as d’Anglebert his tremblement et pincé (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1724("2 d5'zr"))).toBe(notes({ ...by1724("2 d5'zc"), table: 'anglebert-1689' }));
    expect(notes(by1724("2 d5'zr"))).toMatch(/^e5 d5 .*c5 d5$/);
  });

  it('fills the whole value with the strokes of its cadence, drawn long or short (from memory)', () => {
    const lengths = (sign: string): string[] => played(by1724(`1 d5'${sign}`, { form: 'print' })).match(/:\S+/g) ?? [];
    expect(new Set(lengths('zzz'))).toEqual(new Set([':1/32']));
    expect(notes(by1724("2 d5'zz"))).toBe(notes(by1724("2 d5'zzz")));
  });

  it('has a doublé of four notes from above (Grove, “Ornaments”: confirmed)', () => {
    expect(notes(by1724("4 d5'turn", { meter: '1/4' }))).toBe('e5 d5 c5 d5');
  });

  it('has a port de voix from below and a coulez from above, both on the beat (from memory)', () => {
    expect(played(by1724("2 c5 d'cb"))).toMatch(/^c5:1\/2 c5:\S+ d5:\S+$/);
    expect(played(by1724("2 e5 d'cb"))).toMatch(/^e5:1\/2 e5:\S+ d5:\S+$/);
  });

  it('takes a note slurred to one with a cadence as the first note of that cadence (from memory)', () => {
    const bound = notes(by1724("2 e5'u d'zzz'."));
    expect(bound).toMatch(/^e5 d5 e5 d5 /);
    expect(notes(by1724("2 e5 d'zzz"))).toMatch(/^e5 e5 d5 e5 /);
  });

  it('has a pincé with the note below (from memory; not how many strokes)', () => {
    expect(notes(by1724("2 d5'ca"))).toMatch(/^d5 c5 (d5 c5 )*d5$/);
  });

  it('cuts a sound at its end and delays a suspended one (from memory)', () => {
    expect(notes(by1724("2 d5'dash"))).toBe('d5 r');
    expect(notes(by1724("2 d5'arch"))).toBe('r d5');
  });

  it('spreads a chord, and releases the notes in passing of the figured arpeggio (from memory)', () => {
    expect(notes(by1724("1 c5-e-g'scu"))).toBe('c5 e5 g5');
    expect(notes(by1724("1 c5-e-g'scs"))).toBe('c5 d5 e5 f5 g5');
  });
});
