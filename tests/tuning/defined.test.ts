/**
 * Temperaments that a file defines by parts of commas, by beats or as what is left. The arithmetic is that of twelve fifths and
 * seven octaves, 1200 log2(f2/f1), and of partials that meet, |3 f(low) − 2 f(high)|.
 */
import { describe, expect, it } from 'vitest';
import { directionOf, FIFTH } from '../../server/tuning/beats';
import { size, sumOf } from '../../server/tuning/tempering';
import { everyInterval, type Tuning } from '../../server/tuning/tuning';
import { centsOf, tunedTo, tuningIn } from '../helpers/tuned';

const EB_TO_GSHARP = ['eb', 'bb', 'f', 'c', 'g', 'd', 'a', 'e', 'b', 'f#', 'c#', 'g#'];

/** Cents from pure of the fifth upon a note, to three places. */
const fifthOn = ({ temperament }: Tuning, note: string): string =>
  size(
    temperament.fifths[EB_TO_GSHARP.indexOf(note)] ?? { sc: { n: 0, d: 1 }, pc: { n: 0, d: 1 }, cents: Number.NaN },
  ).toFixed(3);

/** How the fifth upon a note beats in an octave that begins with a key. */
const beatsOn = (tuning: Tuning, note: string, lowest: number): string => {
  const interval = everyInterval(tuning, FIFTH, lowest)[EB_TO_GSHARP.indexOf(note)];
  return `${Math.abs(interval?.beats ?? Number.NaN).toFixed(3)} ${directionOf(interval?.beats ?? 0)}`;
};

describe('a temperament by parts of commas', () => {
  it('is pure where no row names a fifth', () => {
    const tuning = tunedTo('house', 415, 'temperament house\n  c-g -1/4 sc\n  g#-eb rest\n');
    expect(fifthOn(tuning, 'c')).toBe('-5.377');
    expect(fifthOn(tuning, 'f')).toBe('0.000');
    expect(fifthOn(tuning, 'g#')).toBe('-18.083');
  });
  it('takes the other fifths from where it comes from', () => {
    const tuning = tunedTo('house', 415, 'temperament house from vallotti\n  c-g -1/12 pc\n  c#-g# -1/12 pc\n');
    expect(['c', 'c#', 'g', 'eb', 'g#'].map((note) => fifthOn(tuning, note))).toEqual([
      '-1.955',
      '-1.955',
      '-3.910',
      '0.000',
      '0.000',
    ]);
  });
  it('makes a fifth pure that is none where it comes from', () => {
    const tuning = tunedTo('house', 415, 'temperament house from vallotti\n  c-g pure\n  g#-eb rest\n');
    expect(['c', 'g', 'g#'].map((note) => fifthOn(tuning, note))).toEqual(['0.000', '-3.910', '-3.910']);
  });
  it('is the same as Vallotti’s where its rows are', () => {
    const rows = 'f-c c-g g-d d-a a-e e-b'.split(' ').map((fifth) => `  ${fifth} -1/6 pc\n`);
    const house = tunedTo('house', 440, `temperament house\n${rows.join('')}`);
    const vallotti = tunedTo('vallotti');
    for (const note of EB_TO_GSHARP) expect(centsOf(house, note)).toBe(centsOf(vallotti, note));
  });
  it('closes its circle at the fifth that takes the rest, and names its notes by it', () => {
    const tuning = tunedTo('house', 440, 'temperament house from pythagorean\n  b-f# rest\n');
    expect(tuning.temperament.first).toBe(6);
    expect(size(sumOf(tuning.temperament.fifths))).toBeCloseTo(-23.46001, 5);
    // The narrow fifth of the one it comes from stays, and so nothing is left.
    expect(size(tuning.temperament.fifths[11] ?? sumOf([]))).toBeCloseTo(0, 9);
  });
});

describe('a temperament by beats', () => {
  const LAID = `temperament ear
  c4-g4 2.0 beats narrow
  g3-d4 1.5 beats narrow
  d4-a4 1.0 beats narrow
  f3-c4 0.5 beats wide
  a3-e4 1.2 beats narrow
  e4-b4 0 beats narrow
  g#-eb rest
`;
  it.each([392, 415, 440])('beats as it says at a4 = %d, and closes', (a) => {
    const tuning = tunedTo('ear', a, LAID);
    expect(beatsOn(tuning, 'c', 60)).toBe('2.000 narrow');
    expect(beatsOn(tuning, 'g', 53)).toBe('1.500 narrow');
    expect(beatsOn(tuning, 'd', 60)).toBe('1.000 narrow');
    expect(beatsOn(tuning, 'f', 53)).toBe('0.500 wide');
    expect(beatsOn(tuning, 'a', 53)).toBe('1.200 narrow');
    expect(beatsOn(tuning, 'e', 60)).toBe('0.000 pure');
    expect(size(sumOf(tuning.temperament.fifths))).toBeCloseTo(-23.46001, 5);
  });
  it('gives the fifths of equal temperament for its published beats', () => {
    // Capleton, Journal of Neuroscience 32 (35), 2012, table 1; with three places from the definition.
    const tuning = tunedTo(
      'ear',
      440,
      'temperament ear\n  c4-g4 0.886 beats narrow\n  d4-a4 0.994 beats narrow\n  a3-e4 0.745 beats narrow\n  g#-eb rest\n',
    );
    for (const note of ['d', 'a']) expect(Number(fifthOn(tuning, note))).toBeCloseTo(-1.955, 2);
  });
  it('is also told by the twelfth, or by the fourth below', () => {
    const [fifth, twelfth, fourth] = ['c4-g4 2.0', 'c3-g4 2.0', 'c4-g3 2.0'].map((row, index) =>
      tunedTo('ear', 440, `temperament ear\n  ${row} beats ${index === 2 ? 'wide' : 'narrow'}\n  g#-eb rest\n`),
    );
    // 3 f(c3) against f(g4) beats twice as slowly as the fifth above c4 of the same size, 3 f(c4) against 4 f(g3) as fast.
    expect(fifthOn(fifth as Tuning, 'c')).toBe(fifthOn(fourth as Tuning, 'c'));
    expect(Number(fifthOn(twelfth as Tuning, 'c')) / Number(fifthOn(fifth as Tuning, 'c'))).toBeCloseTo(2, 2);
  });
  it('comes from one that is laid by beats itself', () => {
    const tuning = tunedTo('ear', 415, `${LAID}temperament second from ear\n  bb3-f4 1.0 beats narrow\n`);
    const child = tuningIn(`tuning second\n${LAID}temperament second from ear\n  bb3-f4 1.0 beats narrow\n`, 415);
    expect(fifthOn(child, 'c')).toBe(fifthOn(tuning, 'c'));
    expect(beatsOn(child, 'bb', 53)).toBe('1.000 narrow');
    expect(size(sumOf(child.temperament.fifths))).toBeCloseTo(-23.46001, 5);
  });
});

describe('a meantone', () => {
  it('has its wolf where it is said, and its notes from there on', () => {
    const tuning = tunedTo('meantone 1/4 wolf c#-ab');
    expect(tuning.temperament.first).toBe(-4);
    expect(centsOf(tuning, 'ab')).toBeCloseTo(813.686, 3);
    expect(size(tuning.temperament.fifths[11] ?? sumOf([]))).toBeCloseTo(35.682, 3);
  });
  it('may divide the Pythagorean comma, with a wolf or without', () => {
    expect(centsOf(tunedTo('meantone 1/6 pc'), 'g')).toBeCloseTo(698.045, 3);
    expect(centsOf(tunedTo('meantone 1/6 pc wolf c#-ab'), 'ab')).toBeCloseTo(807.82, 3);
    expect(centsOf(tunedTo('meantone 1/6 sc wolf c#-ab'), 'g')).toBeCloseTo(698.371, 3);
  });
  it('of an eleventh of the syntonic comma comes near equal temperament', () => {
    const tuning = tunedTo('meantone 1/11');
    for (const [index, note] of EB_TO_GSHARP.entries()) {
      expect(Math.abs(centsOf(tuning, note) - 100 * ((index * 7 + 3) % 12))).toBeLessThan(0.02);
    }
  });
});
