/**
 * Dots: stretched, turned round, and after rests.
 *
 * Quantz, Versuch, 1752: XVII.vii.58 (confirmed by a text): in cut time and in 3/4 quavers after dotted crotchets are very
 * short; three or more short notes after a dot or a rest come at the extreme end of their time; during the dot the bow is
 * lifted. V.20 (from memory): dotted minims keep their dots. V.21 (from memory): the note after the dot is equally short
 * whether it is written as a semiquaver or shorter. V.23 (from memory): a dot after the second note makes the first as short.
 * No source gives a number: that 3:1 becomes 7:1 is the editor's default.
 */
import { describe, expect, it } from 'vitest';
import { strikes, type Timed, timed, toldIn } from '../../helpers/rhythm';

const sharp = (lane: string, meter = '2', practice = 'overdot'): string =>
  timed({ lanes: [lane], practices: [practice], meter });
const written = (lane: string, meter = '2'): string => timed({ lanes: [lane], meter });

describe('a dotted note', () => {
  it('takes as much as a second dot would give it: three to one becomes seven to one', () => {
    expect(sharp('4. c5 8 d 2 e')).toBe('c5:7/16 d5:1/16 e5:1/2');
    expect(sharp('8. c5 16 d 8. e 16 f 2 g')).toBe('c5:7/32 d5:1/32 e5:7/32 f5:1/32 g5:1/2');
  });

  it('of a minim keeps its dot', () => expect(sharp('2. c5 4 d')).toBe('c5:3/4 d5:1/4'));

  it('already dotted twice is left alone', () => expect(sharp('4.. c5 16 d 2 e')).toBe(written('4.. c5 16 d 2 e')));

  it('that fills a beat of threefold time has no short note to sharpen', () => {
    expect(sharp('4. c5 8 d e f', '6/8')).toBe(written('4. c5 8 d e f', '6/8'));
  });

  it('off the beat is syncopation', () => {
    expect(sharp('4 c5 4. d 8 e 4 f', 'cut-C')).toBe(written('4 c5 4. d 8 e 4 f', 'cut-C'));
  });

  it('tied from the bar before is stretched like any other', () => {
    expect(sharp('1 c5= | 4. c 8 d 2 e')).toBe('c5:23/16 d5:1/16 e5:1/2');
  });
});

describe('what follows the dot', () => {
  it('keeps its end: two semiquavers are pressed to it', () => {
    expect(sharp('4. c5 16 d e 2 f')).toBe('c5:7/16 d5:1/32 e5:1/32 f5:1/2');
  });

  it('comes at the extreme end where there are three or more', () => {
    expect(strikes({ lanes: ['4. c5 32 d e f g 2 a'], practices: ['overdot'], meter: '2' })).toBe(
      '0 7/16 29/64 15/32 31/64 1/2',
    );
  });

  it('comes at the extreme end where the first of a run is tied to the dot, or a rest stands for it', () => {
    expect(sharp('4. c5= 32 c d e f 2 g')).toBe('c5:29/64 d5:1/64 e5:1/64 f5:1/64 g5:1/2');
    expect(sharp('4. c5 32 r d e f 2 g')).toBe('c5:3/8 r:5/64 d5:1/64 e5:1/64 f5:1/64 g5:1/2');
  });

  it('comes as late after a rest that stands for the dot', () => {
    expect(sharp('4. r 8 d5 2 e')).toBe('r:7/16 d5:1/16 e5:1/2');
    expect(sharp('2 c5 4. r 32 d e f g')).toBe('c5:1/2 r:7/16 d5:1/64 e5:1/64 f5:1/64 g5:1/64');
  });
});

describe('the amount', () => {
  const lane = '4. c5 8 d 8. e 16 f 4 g | 4. c5 32 d e f g 2 a';

  it('may follow the shortest figure of the section, of which a run is none (common practice)', () => {
    expect(sharp(lane, '2', 'overdot shortest')).toBe(
      'c5:7/16 d5:1/16 e5:3/16 f5:1/16 g5:1/4 c5:7/16 d5:1/64 e5:1/64 f5:1/64 g5:1/64 a5:1/2',
    );
  });

  it('leaves the shortest itself as it is written', () => {
    expect(sharp('4. c5 8 d 2 e', '2', 'overdot shortest')).toBe(written('4. c5 8 d 2 e'));
  });

  it('counts in each section by itself', () => {
    const passage = { lanes: ['(section A) 4. c5 8 d 2 e || (section B) 8. c5 16 d 4 e 4. f 8 g'] };
    expect(timed({ ...passage, practices: ['overdot shortest'], meter: '2' })).toBe(
      'c5:3/8 d5:1/8 e5:1/2 c5:3/16 d5:1/16 e5:1/4 f5:7/16 g5:1/16',
    );
  });
});

describe('during the dot', () => {
  it('the note sounds, as a rule', () =>
    expect(sharp('4. c5 8 d 2 e', '2', 'overdot held')).toBe('c5:7/16 d5:1/16 e5:1/2'));

  it('or it is silent, where the reading says so', () => {
    expect(sharp('4. c5 8 d 2 e', '2', 'overdot double silent')).toBe('c5:1/4 r:3/16 d5:1/16 e5:1/2');
    // The shortest figure keeps its time, but not its sound through the dot.
    expect(sharp('4. c5 8 d 2 e', '2', 'overdot shortest silent')).toBe('c5:1/4 r:1/8 d5:1/8 e5:1/2');
    expect(sharp('4. c5-e 8 d 2 e', '2', 'overdot double silent')).toBe('c5:1/4 e5:1/4 r:3/16 d5:1/16 e5:1/2');
  });
});

describe('voices written together', () => {
  const overture: Timed = {
    lanes: ['4. d5 32 d e f g 2 a', '4. f4 8 f 2 f', '2 d4 d'],
    practices: ['overdot'],
    meter: 'cut-C',
  };

  it('stay together', () => {
    expect(strikes(overture, 0)).toBe('0 7/16 29/64 15/32 31/64 1/2');
    expect(strikes(overture, 1)).toBe('0 7/16 1/2');
    expect(strikes(overture, 2)).toBe('0 1/2');
  });

  it('stay together where one has a rest before the short note', () => {
    const passage = { ...overture, lanes: ['4. d5 8 e 2 f', '4 d4 8 r 8 e 2 f'] };
    expect(strikes(passage, 1)).toBe('0 1/4 7/16 1/2');
  });

  it('are not parted by even quavers: what is written stands, and that is said (common practice)', () => {
    const passage = { ...overture, lanes: ['4. d5 8 e 2 f', '8 d4 e f g 2 a'] };
    expect(timed(passage)).toBe(written('4. d5 8 e 2 f'));
    expect(toldIn(passage)).toContain('practice-against');
  });

  it('are parted where a mark in the lane says so', () => {
    const passage = { ...overture, lanes: ['{overdot 4. d5 8 e} 2 f', '8 d4 e f g 2 a'], practices: [] };
    expect(timed(passage)).toBe('d5:7/16 e5:1/16 f5:1/2');
    expect(toldIn(passage)).toEqual([]);
  });
});

describe('a dot after the second note', () => {
  it('makes the first as short as what follows other dots', () => {
    expect(sharp('16 c5 8. d 2. e', 'C', 'snap')).toBe('c5:1/32 d5:7/32 e5:3/4');
    expect(sharp('8 c5 4. d 2 e', '2', 'snap')).toBe('c5:1/16 d5:7/16 e5:1/2');
  });

  it('leaves alone what another voice strikes while the long note sounds (common practice)', () => {
    const passage: Timed = { lanes: ['8 c5 4. d 2 e', '4 c4 d 2 e'], practices: ['snap'], meter: '2' };
    expect(timed(passage)).toBe('c5:1/16 d5:7/16 e5:1/2');
    expect(timed(passage, 1)).toBe('c4:1/4 d4:1/4 e4:1/2');
    const even = { ...passage, lanes: ['8 c5 4. d 2 e', '8 c4 d e f 2 g'] };
    expect(timed(even)).toBe('c5:1/8 d5:3/8 e5:1/2');
    expect(toldIn(even)).toContain('practice-against');
  });

  it('asks for a first note that is struck: one tied from before is none', () => {
    expect(sharp('4 c5= 16 c 8. d 2 e', 'C', 'snap')).toBe(written('4 c5= 16 c 8. d 2 e', 'C'));
  });

  it('is nothing to a practice for other dots', () => {
    expect(sharp('16 c5 8. d 2. e', 'C', 'overdot')).toBe(written('16 c5 8. d 2. e', 'C'));
  });
});

describe('late upbeats (the editor’s default; their end is fixed)', () => {
  it('are pressed to the beat that they lead to', () => {
    expect(sharp('2. r 4 c5 | 1 d', '2', 'upbeats late')).toBe('r:7/8 c5:1/8 d5:1');
    expect(sharp('2 c5 4 r 16 d e f g | 1 a', 'C', 'upbeats late')).toBe(written('2 c5 4 r 16 d e f g | 1 a', 'C'));
    expect(sharp('2 c5 4. r 16 d e | 1 f', 'C', 'upbeats late')).toBe('c5:1/2 r:7/16 d5:1/32 e5:1/32 f5:1');
  });

  it('meet sharpened dots in one figure: it is given its time once, and that is said', () => {
    const passage = { lanes: ['4. r 8 d5 2 e'], practices: ['overdot', 'upbeats late'], meter: '2' };
    expect(timed(passage)).toBe('r:7/16 d5:1/16 e5:1/2');
    expect(toldIn(passage)).toContain('practice-overlap');
  });
});
