/** Santa María, 1565, as reprinted by Brenet, Dictionnaire pratique et historique, example II (confirmed). */
import { describe, expect, it } from 'vitest';
import { notes, type Passage, played } from '../../helpers/realised';

/** The reprint has f sharp; here it comes from the signature. */
const on = (lane: string): Passage => ({ lanes: [lane], table: 'santa-maria-1565', key: 'f#', tempo: '4 at 60' });

describe('The examples of 1565', () => {
  it('have a quiebro reiterado: mi fa# mi fa# mi fa# mi', () => {
    expect(notes(on("1 e5't"))).toBe('e5 f#5 e5 f#5 e5 f#5 e5');
  });

  it('have a redoble: mi re mi fa# mi fa# mi fa# mi', () => {
    expect(notes(on("1 e5'r"))).toBe('e5 d5 e5 f#5 e5 f#5 e5 f#5 e5');
  });

  it('play equal short notes, then a long one', () => {
    const lengths = played(on("1 e5't"))
      .split(' ')
      .map((note) => note.split(':')[1]);
    expect(new Set(lengths.slice(0, -1)).size).toBe(1);
  });

  it('do not say whether the quiebro senzillo goes up or down (from memory): it is chosen', () => {
    expect(notes(on("1 e5'quiebro_senzillo"))).toBe('e5');
    expect(notes(on("1 e5'quiebro_senzillo(upper)"))).toBe('e5 f#5 e5');
  });
});
