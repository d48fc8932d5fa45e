/** Witnesses that fall silent (common practice of collation: each witness is followed to its end). */
import { describe, expect, it } from 'vitest';
import { lane, messages, passage } from '../helpers/music';

const CODE = 'witness-falls-silent';
const VARIANT = '<K: 1 c5 ; L: 1 d5>';
/** As many bars as told, of which some have a variant of L. */
const piece = (bars: number, ...variants: number[]): string =>
  Array.from({ length: bars }, (_, index) => (variants.includes(index + 1) ? VARIANT : '1 c5')).join(' | ');

describe('a witness', () => {
  it('that differs every few bars and then never is told at its last place', () => {
    expect(messages(lane(piece(30, 2, 6, 9)), CODE)).toEqual([
      'Witness L is never used after bar 9: leaf missing, or place forgotten?',
    ]);
  });
  it('that is heard of once, or beyond two thirds of the piece, is let be', () => {
    expect(messages(lane(piece(30, 2)), CODE)).toEqual([]);
    expect(messages(lane(piece(30, 2, 6, 20)), CODE)).toEqual([]);
  });
  it('that was as silent before is let be', () => {
    expect(messages(lane(piece(30, 1, 14)), CODE)).toEqual([]);
  });
  it('is heard of in witness lanes and in what is limited to it', () => {
    const bars = Array.from({ length: 20 }, () => '1 c5').join(' | ');
    const witness = (filled: string): string =>
      `system upper C1 lower F4 meter C\n dessus | ${bars} |||\n dessus L | ${filled}`;
    expect(messages(passage(`${witness(`1 d5 | | 1 d ${'| '.repeat(18)}`)}\n`), CODE)).toHaveLength(1);
    expect(messages(lane(`${piece(12, 1, 2)} | 1 c5'zz:L | ${piece(2)}`), CODE)).toEqual([]);
  });
  it('that is the main text is not asked after', () => {
    expect(messages(lane(piece(30, 2, 6, 9)), CODE).filter((message) => message.includes('Witness K'))).toEqual([]);
  });
});
