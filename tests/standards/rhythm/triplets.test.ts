/**
 * Dots and quavers against triplets.
 *
 * The short note with the third of the triplet: common in keyboard music of the mid-eighteenth century (from memory). After
 * it: Quantz, Versuch, 1752, V.22 (from memory). Each by itself, exactly: Türk, Klavierschule, 1789, I.64 (confirmed by a
 * text). The three are of equal rank: none is ever taken by default.
 */
import { describe, expect, it } from 'vitest';
import { strikes, timed, toldIn } from '../../helpers/rhythm';

const TRIPLETS = '8x c4 d e 2. f';
const against = (duple: string, answer: string): { lanes: string[]; practices: string[] } => ({
  lanes: [duple, TRIPLETS],
  practices: answer === '' ? [] : [`assimilate ${answer}`],
});

describe('a dotted pair against a triplet', () => {
  const pair = '8. c5 16 d 2. e';

  it('goes with it as two to one', () => {
    expect(timed(against(pair, 'triplet'))).toBe('c5:1/6 d5:1/12 e5:3/4');
    expect(strikes(against(pair, 'triplet'), 1)).toBe('0 1/12 1/6 1/4');
  });

  it('strikes after its third note, as each is written', () => {
    expect(strikes(against(pair, 'literal'), 0)).toBe('0 3/16 1/4');
    expect(strikes(against(pair, 'literal'), 1)).toBe('0 1/12 1/6 1/4');
  });

  it('takes its third note along', () => {
    expect(strikes(against(pair, 'duple'), 0)).toBe('0 3/16 1/4');
    expect(strikes(against(pair, 'duple'), 1)).toBe('0 3/32 3/16 1/4');
  });

  it('is still sharper by Quantz’s rule where the dots are stretched', () => {
    const passage = { lanes: [pair, TRIPLETS], practices: ['assimilate literal', 'overdot'] };
    expect(strikes(passage, 0)).toBe('0 7/32 1/4');
  });
});

describe('other duple figures against a triplet', () => {
  it('of two equal notes go as two to one', () => {
    expect(timed(against('8 c5 d 2. e', 'triplet'))).toBe('c5:1/6 d5:1/12 e5:3/4');
  });

  it('of a quaver and two semiquavers become a triplet', () => {
    expect(timed(against('8 c5 16 d e 2. f', 'triplet'))).toBe('c5:1/12 d5:1/12 e5:1/12 f5:3/4');
    expect(timed(against('16 c5 d 8 e 2. f', 'triplet'))).toBe('c5:1/12 d5:1/12 e5:1/12 f5:3/4');
  });

  it('draw the triplet to themselves, note by note', () => {
    expect(strikes(against('8 c5 16 d e 2. f', 'duple'), 1)).toBe('0 1/8 3/16 1/4');
    expect(strikes(against('8 c5 d 2. e', 'duple'), 1)).toBe('0 1/16 1/8 1/4');
  });

  it('of four notes stay four against three', () => {
    expect(timed(against('16 c5 d e f 2. g', 'triplet'))).toBe('c5:1/16 d5:1/16 e5:1/16 f5:1/16 g5:3/4');
  });
});

describe('a triplet of a long and a short note', () => {
  const PAIRS = '8. c5 16 d 8. e 16 f 2 g';

  it('is met by a dotted pair on any beat, the long note first or the short one', () => {
    const lanes = [PAIRS, '{3in2 4 c4 8 d} {3in2 8 e 4 f} 2 g'];
    expect(timed({ lanes, practices: ['assimilate triplet'] })).toBe('c5:1/6 d5:1/12 e5:1/6 f5:1/12 g5:1/2');
  });

  it('may have a rest for one of its thirds', () => {
    const lanes = [PAIRS, '{3in2 8 r c4 d} {3in2 8 e r f} 2 g'];
    expect(timed({ lanes, practices: ['assimilate triplet'] })).toBe('c5:1/6 d5:1/12 e5:1/6 f5:1/12 g5:1/2');
  });
});

describe('threefold time (two against three in gigues: from memory)', () => {
  const THREES = '8 c5 d e f g a';

  it('draws two in the place of three to itself, or is drawn to them', () => {
    const lanes = [THREES, '{2in3 8 c4 d} 4. e'];
    expect(timed({ lanes, practices: ['assimilate triplet'], meter: '6/8' }, 1)).toBe('c4:1/4 d4:1/8 e4:3/8');
    expect(timed({ lanes, practices: ['assimilate literal'], meter: '6/8' }, 1)).toBe('c4:3/16 d4:3/16 e4:3/8');
  });

  it('has dotted figures of its own, which are no duple ones', () => {
    const lanes = ['8. c5 16 d 8 e 4. f', '8 c4 d e 4. f'];
    expect(timed({ lanes, practices: ['assimilate triplet'], meter: '6/8' })).toBe('c5:3/16 d5:1/16 e5:1/8 f5:3/8');
  });
});

describe('no answer', () => {
  it('is taken by default: the place is offered as one to decide', () => {
    expect(timed(against('8. c5 16 d 2. e', ''))).toBe('c5:3/16 d5:1/16 e5:3/4');
    expect(toldIn(against('8. c5 16 d 2. e', ''))).toEqual(['practice-candidate']);
  });

  it('is asked for where something is said, be it that each stands as written', () => {
    expect(toldIn(against('8. c5 16 d 2. e', 'literal'))).toEqual([]);
  });

  it('acts where the duple voice is alone', () => {
    const alone = { lanes: ['8. c5 16 d 2. e', '4 c4 2. d'], practices: ['assimilate triplet'] };
    expect(timed(alone)).toBe('c5:3/16 d5:1/16 e5:3/4');
    expect(toldIn(alone)).toEqual(['practice-idle']);
  });
});

describe('minims divided in three', () => {
  it('are met by dotted crotchets, under one figure three or several', () => {
    const lanes = ['4. c5 8 d 4. e 8 f', '{3in2 4 c4 d e f g a}'];
    expect(timed({ lanes, practices: ['assimilate triplet'] })).toBe('c5:1/3 d5:1/6 e5:1/3 f5:1/6');
  });
});
