/** Two bars of three as one of three twos, accents one, three, five of six (facts of hemiola and courante, from memory). */
import { describe, expect, it } from 'vitest';
import { performedIn, type Timed, timed, toldIn } from '../../helpers/rhythm';

const hemiolas = (passage: Timed): string[] =>
  performedIn(passage).pieces.flatMap(({ hemiolas: found = [] }) =>
    found.map(({ from, to }) => `${from.number}-${to.number}`),
  );
const inThree = (...lanes: string[]): Timed => ({ lanes, practices: ['hemiola'], meter: '3/4' });

describe('a hemiola', () => {
  it('is shown by three equal notes over two bars of three', () => {
    expect(hemiolas(inThree('2. c5 | 2 d 4 e= | 4 e 2 f | 2. g', '2. c4 | c | c | c'))).toEqual(['2-3']);
  });

  it('is shown by three minims in a bar of six crotchets, as in courantes', () => {
    expect(hemiolas({ lanes: ['2 c5 d e | 2. f g'], practices: ['hemiola'], meter: '6/4' })).toEqual(['1-1']);
  });

  it('is shown by blackened notes', () => {
    expect(hemiolas(inThree('{black 2 c5 4 d | e 2 f} | 2. g'))).toEqual(['1-2']);
  });

  it('is none where the bars go in threes', () => {
    expect(hemiolas(inThree('2. c5 | 4 d e f | 2. g'))).toEqual([]);
    expect(toldIn(inThree('2. c5 | 4 d e f'))).toEqual(['practice-idle']);
  });

  it('moves no note', () => {
    expect(timed(inThree('2 d5 4 e= | 4 e 2 f'))).toBe('d5:1/2 e5:1/2 f5:1/2');
  });

  it('makes beats of two: a dotted pair on the second of them is a group', () => {
    const bar = ['2 c5 4. d 8 e 2 f', '2 c4 d e'];
    const sharp = { lanes: bar, practices: ['overdot'], meter: '6/4' };
    expect(timed(sharp)).toBe('c5:1/2 d5:3/8 e5:1/8 f5:1/2');
    expect(timed({ ...sharp, practices: ['overdot', 'hemiola'] })).toBe('c5:1/2 d5:7/16 e5:1/16 f5:1/2');
  });

  describe('over two bars', () => {
    const shown = '2 c5 4 d= | 4 d 2 e | 2. f';
    const sharp = (lane: string, ...practices: string[]): string =>
      timed({ lanes: [shown, lane], practices: ['overdot', ...practices], meter: '3/4' }, 1);

    it('makes a dotted pair on the second beat of a bar of three syncopation', () => {
      const lane = '4 c4 4. d 8 e | 2. f | g';
      expect(sharp(lane)).toBe('c4:1/4 d4:7/16 e4:1/16 f4:3/4 g4:3/4');
      expect(sharp(lane, 'hemiola')).toBe('c4:1/4 d4:3/8 e4:1/8 f4:3/4 g4:3/4');
    });

    it('makes one a group that lies across the barline', () => {
      const lane = "2 c4 4. d'through | 8 e 2 f | 2. g";
      expect(sharp(lane)).toBe('c4:1/2 d4:3/8 e4:1/8 f4:1/2 g4:3/4');
      expect(sharp(lane, 'hemiola')).toBe('c4:1/2 d4:7/16 e4:1/16 f4:1/2 g4:3/4');
    });

    it('lets unequal notes go on in pairs', () => {
      const lanes = [shown, '8 c4 d e f g a | g f e d c d | 2. c'];
      const unequal = { lanes, practices: ['inegal 8 2:1'], meter: '3/4' };
      expect(timed({ ...unequal, practices: ['inegal 8 2:1', 'hemiola'] }, 1)).toBe(timed(unequal, 1));
    });
  });
});
