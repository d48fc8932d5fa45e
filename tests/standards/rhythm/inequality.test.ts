/**
 * Unequal notes.
 *
 * Which value under which sign: Hotteterre, L'Art de préluder, 1719, chapter XI, pages 57 to 61, as digested (confirmed by
 * the digest's text). Pairs go long and short, rarely short and long, on one level only, and the beat stays even (confirmed,
 * the article on notes inégales that the facts cite). Ratios of pinned mechanisms: 3:2, 2:1 and 3:1 (confirmed, same). What
 * cancels it is from memory.
 */
import { describe, expect, it } from 'vitest';
import { unequal1719 } from '../../../server/practice/unequal1719';
import { strikes, timed, toldIn } from '../../helpers/rhythm';

const unequal = (lane: string, meter: string, practice = 'inegal by-meter'): string =>
  timed({ lanes: [lane], practices: [practice], meter });

describe('the table of 1719', () => {
  // One row of the digest each: sign, a bar of the value that is unequal, a bar of the value above it, which is equal.
  const rows: readonly (readonly [string, string, string])[] = [
    ['C', '16 c5 d e f 2. g', '8 c5 d e f g a g f'],
    ['2', '8 c5 d e f 2 g', '4 c5 d e f'],
    ['3/2', '4 c5 d 1 e', '2 c5 d e'],
    ['3', '8 c5 d e f 4 g', '4 c5 d e'],
    ['3/4', '8 c5 d e f 4 g', '4 c5 d e'],
    ['3/8', '16 c5 d 4 e', '8 c5 d e'],
    ['6/4', '8 c5 d 1 e 4 f', '4 c5 d e f g a'],
    ['6/8', '16 c5 d 8 e 2 f', '8 c5 d e f g a'],
    ['9/8', '16 c5 d 1 e', '8 c5 d e f g a g f e'],
    ['12/8', '16 c5 d 8 e 1 f 4 g', '8 c5 d e f g a g f e d e f'],
    ['2/4', '16 c5 d e f 4 g', '8 c5 d e f'],
    ['4/8', '16 c5 d e f 4 g', '8 c5 d e f'],
  ];

  for (const [sign, pairs, equals] of rows) {
    it(`makes pairs unequal under ${sign}, and the value above equal`, () => {
      const [first, second] = unequal(pairs, sign)
        .split(' ')
        .map((note) => note.split(':')[1]);
      const [written] = timed({ lanes: [pairs], meter: sign })
        .split(' ')
        .map((note) => note.split(':')[1]);
      const pair = { '1/16': ['3/40', '1/20'], '1/8': ['3/20', '1/10'], '1/4': ['3/10', '1/5'] }[written ?? ''];
      expect([first, second]).toEqual(pair);
      expect(unequal(equals, sign)).toBe(timed({ lanes: [equals], meter: sign }));
    });
  }

  it('leaves quavers equal in cut C, and says that the practice finds nothing', () => {
    const passage = { lanes: ['8 c5 d e f g a g f'], practices: ['inegal by-meter'], meter: 'cut-C' };
    expect(timed(passage)).toBe(timed({ ...passage, practices: [] }));
    expect(toldIn(passage)).toEqual(['practice-idle']);
  });

  it('has its thirteen signs', () => {
    expect(Object.keys(unequal1719).sort()).toEqual(
      ['12/8', '2', '2/4', '3', '3/2', '3/4', '3/8', '4/8', '6/4', '6/8', '9/8', 'C', 'cut-C'].sort(),
    );
  });
});

describe('the ratio', () => {
  it.each([
    ['3:2', 'c5:3/20 d5:1/10'],
    ['2:1', 'c5:1/6 d5:1/12'],
    ['3:1', 'c5:3/16 d5:1/16'],
    // Engramelle 1775, from memory.
    ['7:5', 'c5:7/48 d5:5/48'],
  ])('of pinned mechanisms %s keeps the time of the pair', (ratio, pair) => {
    expect(unequal('8 c5 d 2. e', 'C', `inegal 8 ${ratio}`)).toBe(`${pair} e5:3/4`);
  });

  it('is 3:2 where nothing is said (the editor’s default)', () => {
    expect(unequal('8 c5 d 2. e', 'C', 'inegal 8')).toBe('c5:3/20 d5:1/10 e5:3/4');
  });

  it('of one to one changes nothing', () => {
    expect(unequal('8 c5 d e f g a g f', 'C', 'inegal 8 1:1')).toBe(timed({ lanes: ['8 c5 d e f g a g f'] }));
  });

  it('goes short and long where the reading wants it', () => {
    expect(unequal('8 c5 d 2. e', 'C', 'inegal 8 2:1 short-long')).toBe('c5:1/12 d5:1/6 e5:3/4');
  });
});

describe('the beat', () => {
  it('stays even: every pair begins where it is written', () => {
    expect(strikes({ lanes: ['8 c5 d e f g a g f'], practices: ['inegal 8'] })).toBe(
      '0 3/20 1/4 2/5 1/2 13/20 3/4 9/10',
    );
  });

  it('is not crossed: quavers in 3/8 are the beat itself', () => {
    expect(unequal('8 c5 d e', '3/8', 'inegal 8')).toBe('c5:1/8 d5:1/8 e5:1/8');
  });

  it('of an upbeat belongs to the grid of the bar that follows', () => {
    expect(unequal('8 c5 | d e f g 2 a', 'C', 'inegal 8')).toBe('c5:1/8 d5:3/20 e5:1/10 f5:3/20 g5:1/10 a5:1/2');
  });
});

describe('inequality is cancelled by', () => {
  const equal = '8 c5 d e f 2 g';
  const asWritten = (lane: string): void => expect(unequal(lane, 'C', 'inegal 8')).toBe(timed({ lanes: [lane] }));

  it('nothing in a scale', () => expect(unequal(equal, 'C', 'inegal 8')).not.toBe(timed({ lanes: [equal] })));
  it('dots or strokes over the notes', () => {
    asWritten("8 c5'dot d'dot e'dot f'dot 2 g");
    asWritten("8 c5'stroke d'stroke e'stroke f'stroke 2 g");
  });
  it('leaps in more than half of a group', () => asWritten('8 c5 g e c6 2 g5'));
  it('repeated notes', () => asWritten('8 c5 c d d 2 g'));
  it('a curve over more than two notes', () => asWritten("8 c5'u d e f'. 2 g"));
  it('triplets in the beat', () => asWritten('8x c5 d e 8x f g a 2 g'));
  it('syncopation', () => asWritten('8 c5 4 d e f 8 g'));
  it('a tie over the middle of the pair', () => asWritten('8 c5 d= 4 d 2 g'));
  it('smaller values in the beat', () => asWritten('8 c5 16 d e 8 f 16 g a 2 g'));
  it.each(['Notes égales', 'Marqué', 'Mouvement décidé'])('the words “%s”', (words) =>
    asWritten(`"${words}" 8 c5 d e f 2 g`),
  );

  it('no single leap in a run: a group is equal only where more than half of its pairs leap (common practice)', () => {
    expect(unequal('8 c5 d e a g f e d', 'C', 'inegal 8')).toBe(
      'c5:3/20 d5:1/10 e5:3/20 a5:1/10 g5:3/20 f5:1/10 e5:3/20 d5:1/10',
    );
  });

  it('every leap, and the leap to it, where the practice is for steps only', () => {
    expect(unequal('8 c5 d e a g f e d', 'C', 'inegal 8 stepwise')).toBe(
      'c5:3/20 d5:1/10 e5:1/8 a5:1/8 g5:3/20 f5:1/10 e5:3/20 d5:1/10',
    );
  });

  it('no curve over two notes', () => {
    expect(unequal("8 c5'u d'. e'u f'. 2 g", 'C', 'inegal 8')).toBe('c5:3/20 d5:1/10 e5:3/20 f5:1/10 g5:1/2');
  });

  it('no dot over the second of two under a curve: there the second is the longer (Couperin 1713, from memory)', () => {
    expect(unequal("8 c5'u d'dot'. e f 2 g", 'C', 'inegal 8')).toBe('c5:1/10 d5:3/20 e5:3/20 f5:1/10 g5:1/2');
  });

  it('words until the strain ends', () => {
    expect(unequal('"Notes égales" 8 c5 d 2. e || 8 c d 2. e', 'C', 'inegal 8')).toBe(
      'c5:1/8 d5:1/8 e5:3/4 c5:3/20 d5:1/10 e5:3/4',
    );
  });

  it('a very quick tempo, for which no source has a measure: it is told, not decided', () => {
    expect(toldIn({ lanes: [equal], practices: ['inegal 8'], before: 'tempo 4 at 280' })).toEqual([
      'practice-undecided',
    ]);
  });
});

describe('all voices share one grid (common practice)', () => {
  it('a rest and a note are a pair', () => {
    expect(unequal('8 r d5 e f 2 g', 'C', 'inegal 8')).toBe('r:3/20 d5:1/10 e5:3/20 f5:1/10 g5:1/2');
  });

  it('a voice that leaps goes with one that goes by step, and both strike together', () => {
    const passage = { lanes: ['8 c5 d e f 2 g', '8 c4 g c5 g4 2 c5'], practices: ['inegal 8'] };
    expect(strikes(passage, 0)).toBe(strikes(passage, 1));
    expect(timed(passage, 1)).toBe('c4:3/20 g4:1/10 c5:3/20 g4:1/10 c5:1/2');
  });

  it('smaller values in one voice make the beat equal in both', () => {
    const passage = { lanes: ['8 c5 d e f 2 g', '16 c4 d e f 4 g 2 c'], practices: ['inegal 8'] };
    expect(timed(passage, 0)).toBe('c5:1/8 d5:1/8 e5:3/20 f5:1/10 g5:1/2');
  });

  it('a voice that the practice is not for is left alone', () => {
    const passage = { lanes: ['8 c5 d 2. e', '8 c4 d 2. e'], practices: ['inegal 8 voice v0'] };
    expect(timed(passage, 1)).toBe('c4:1/8 d4:1/8 e4:3/4');
  });
});

describe('a mark in the lane', () => {
  const marked = (lane: string, ...practices: string[]): string => timed({ lanes: [lane], practices });

  it('makes the value that it surrounds unequal, whatever the sign of measure says', () => {
    expect(marked('{inegal 3:1 8 c5 d} 2. e')).toBe('c5:3/16 d5:1/16 e5:3/4');
    expect(marked('{inegal 3:1 16 c5 d e f} 2. e', 'inegal 8')).toBe('c5:3/32 d5:1/32 e5:3/32 f5:1/32 e5:3/4');
  });

  it('goes before what would make the notes equal: leaps, repeated notes, dots, words', () => {
    const pairs = 'c5:1/6 g5:1/12 c5:1/6 g5:1/12 e5:1/2';
    expect(marked('{inegal 2:1 8 c5 g c g} 2 e')).toBe(pairs);
    expect(marked("{inegal 2:1 8 c5'dot g'dot c'dot g'dot} 2 e")).toBe(pairs);
    expect(marked('"Notes égales" {inegal 2:1 8 c5 g c g} 2 e')).toBe(pairs);
    expect(marked('{inegal 2:1 8 c5 c} 2. e')).toBe('c5:1/6 c5:1/12 e5:3/4');
  });

  it('is for all voices that the practice is for, so that they strike together', () => {
    const passage = { lanes: ['{inegal 3:1 8 c5 d e f} 2 g', '8 c4 d e f 2 g'], practices: ['inegal 8 3:2'] };
    expect(strikes(passage, 1)).toBe(strikes(passage, 0));
  });
});
