/** Dandrieu, 1724, as the Standard Music Font Layout describes his signs (confirmed for the descriptions). */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played } from '../../helpers/realised';

const by1724 = (lane: string): Passage => ({ lanes: [lane], table: 'dandrieu-1724', tempo: '4 at 60' });

describe('Dandrieu', () => {
  it('closes a trill with a suffix of two notes', () => {
    expect(notes(by1724("2 d5'zr"))).toMatch(/d5 c5 d5$/);
  });

  it('has a “pre-beat port de voix followed by multiple mordent”: only the first note comes before the beat', () => {
    const [before, small, ...mordent] = played(by1724("2. g4 4 d5'azs"))
      .split(' ')
      .map((note) => note.split(':'));
    expect(before?.[0]).toBe('g4');
    expect(before?.[1]).not.toBe('3/4');
    expect(small?.[0]).toBe('c5');
    // How many strokes it has is not described.
    expect(mordent.map(([note]) => note).join(' ')).toMatch(/^d5( c5 d5){2,}$/);
  });
});
