/** Bars that come again but for one note (common practice of proof-reading: like bars are compared). */
import { describe, expect, it } from 'vitest';
import { duet, findingOf, lane, messages } from '../helpers/music';

const CODE = 'bar-nearly-repeats';
const near = (music: string): string[] => messages(lane(music), CODE);
const STRAIN = '8 c5 d e f 4 g e';

describe('a bar that comes again but for one note', () => {
  it('is told with voice, symbol and both notes', () => {
    const found = duet(`${STRAIN} | 1 d | 8 c5 d e g 4 g e`, '1 c3 | g2 | c3');
    expect(findingOf(found, CODE).message).toBe(
      'Bar 3 matches bar 1 in all voices but one note: dessus, symbol 4, g5 here, f5 there.',
    );
    expect(findingOf(found, CODE).related.map(({ message }) => message)).toEqual(['f5 in bar 1']);
  });
  it('is told where only an accidental differs', () => {
    expect(near(`${STRAIN} | 1 d | 8 c5 d e f# 4 g e`)).toEqual([
      'Bar 3 matches bar 1 in all voices but one note: dessus, symbol 4, f#5 here, f5 there.',
    ]);
  });
  it('is counted as critical reports count: what is drawn, rests among it', () => {
    const [first, third] = ['8 _ r c5 d e f g e', '8 _ r c5 d e f g f'];
    expect(near(`${first} | 1 d | ${third}`)).toEqual([
      'Bar 3 matches bar 1 in all voices but one note: dessus, symbol 7, f5 here, e5 there.',
    ]);
  });
  it('is told against the nearest earlier bar, once', () => {
    const bars = near(`${STRAIN} | 1 d | ${STRAIN} | 1 d | 8 c5 d e f 4 g f`);
    expect(bars).toEqual(['Bar 5 matches bar 3 in all voices but one note: dessus, symbol 6, f5 here, e5 there.']);
  });
  it('is let be where it comes again exactly elsewhere', () => {
    expect(near(`${STRAIN} | 8 c5 d e f 4 g f | 1 d | 8 c5 d e f 4 g f`)).toEqual([]);
  });
  it('is let be where two notes differ, a value does, or the one note lies far off', () => {
    expect(near(`${STRAIN} | 1 d | 8 c5 d e g 4 g f`)).toEqual([]);
    expect(near(`${STRAIN} | 1 d | 8 c5 d e g 4. g 8 e`)).toEqual([]);
    expect(near(`${STRAIN} | 1 d | 8 c5 d e f 4 g b4`)).toEqual([]);
  });
  it('is let be in short bars and beside its like', () => {
    expect(near('4 c5 d e f | 1 d | 4 c5 d e g')).toEqual([]);
    expect(near(`${STRAIN} | 8 c5 d e f 4 g f`)).toEqual([]);
  });
  it('is not asked of a witness', () => {
    expect(near(`${STRAIN} | 1 d | <K: 8 c5 d e f 4 g e ; L: 8 c5 d e f 4 g f>`)).toEqual([]);
  });
});
