/** Chambonnières, “Démonstration des marques”, 1670. */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, problemsIn } from '../../helpers/realised';

const by1670 = (lane: string): Passage => ({ lanes: [lane], table: 'chambonnieres-1670', tempo: '4 at 60' });

describe('The table of 1670', () => {
  it('has a cadence that is a trill from the upper note (from memory, the kind only)', () => {
    expect(notes(by1670("2 d5'zz"))).toMatch(/^e5 d5 e5 d5 .*d5$/);
  });

  it('has a pincement with the note below (from memory, the kind only)', () => {
    expect(notes(by1670("2 d5'zs"))).toMatch(/^d5( c5 d5)+$/);
  });

  it('does not play its double cadence as the usual turn (Grove, “Ornaments”: confirmed), for the order of its notes is not known', () => {
    expect(notes(by1670("2 d5'turn"))).toBe('d5');
    expect(problemsIn(by1670("2 d5'turn"))).toEqual(['sign-unresolved']);
  });
});
