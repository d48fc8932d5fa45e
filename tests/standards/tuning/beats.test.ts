/**
 * Commas, beats and pitches against published numbers.
 *
 * Beats of equal temperament: Capleton's table in Journal of Neuroscience 32 (35), 2012, table 1, prints them to one decimal;
 * the three places here are computed from the definition, |n f(low) − m f(high)|, as are the commas.
 */
import { describe, expect, it } from 'vitest';
import type { Pitch } from '../../../grammar/vocabulary/pitches';
import {
  directionOf,
  FIFTH,
  FOURTH,
  type IntervalKind,
  MAJOR_SIXTH,
  MAJOR_THIRD,
  MINOR_THIRD,
  widthOf,
} from '../../../server/tuning/beats';
import { exactPitch, pitchStandards } from '../../../server/tuning/standards';
import {
  PURE_FIFTH,
  PURE_MAJOR_THIRD,
  PYTHAGOREAN_COMMA,
  SYNTONIC_COMMA,
  size,
  temperingFrom,
} from '../../../server/tuning/tempering';
import { frequencyOf, type Interval, intervalOf } from '../../../server/tuning/tuning';
import { tunedTo } from '../../helpers/tuned';

const pitch = (name: string): Pitch => ({
  letter: name[0] as Pitch['letter'],
  alteration: { '#': 1, b: -1 }[name[1] ?? ''] ?? 0,
  octave: Number(name.at(-1)),
});

/** As a tuner says it: `c4-g4 2.448 narrow`. */
const heard = (kind: IntervalKind, low: string, high: string, words: string, a: number): string =>
  told(intervalOf(tunedTo(words, a), kind, pitch(low), pitch(high)));
const told = ({ beats }: Interval): string => `${Math.abs(beats).toFixed(3)} ${directionOf(beats)}`;

describe('the commas', () => {
  it.each([
    ['the syntonic comma', SYNTONIC_COMMA, 21.50629],
    ['the Pythagorean comma', PYTHAGOREAN_COMMA, 23.46001],
    ['the schisma', PYTHAGOREAN_COMMA - SYNTONIC_COMMA, 1.953721],
    ['a pure fifth', PURE_FIFTH, 701.955001],
    ['a pure major third', PURE_MAJOR_THIRD, 386.313714],
    ['a pure minor third', -widthOf(MINOR_THIRD, 1, 1), 315.641287],
    ['a twelfth of the Pythagorean comma', size(temperingFrom('+1/12 pc')), 1.955001],
    ['a quarter of it', size(temperingFrom('+1/4 pc')), 5.865003],
    ['a quarter of the syntonic one', size(temperingFrom('+1/4 sc')), 5.376572],
    ['two sevenths of it', size(temperingFrom('+2/7 sc')), 6.144654],
  ])('%s is as wide as arithmetic has it', (_, found, cents) => {
    expect(found).toBeCloseTo(cents, 5);
  });
});

/** Lower note, hertz, then beats: major third wide, fifth narrow, fourth wide, major sixth wide, minor third narrow. */
const EQUAL_AT_440 = [
  'f3 174.614 6.929 0.591 0.789 7.924 9.423',
  'f#3 184.997 7.341 0.626 0.836 8.395 9.983',
  'g3 195.998 7.778 0.664 0.886 8.894 10.577',
  'g#3 207.652 8.241 0.703 0.938 9.423 11.206',
  'a3 220.000 8.731 0.745 0.994 9.983 11.872',
  'bb3 233.082 9.250 0.789 1.053 10.577 12.578',
  'b3 246.942 9.800 0.836 1.116 11.206 13.326',
  'c4 261.626 10.382 0.886 1.182 11.872 14.118',
  'c#4 277.183 11.000 0.938 1.253 12.578 14.958',
  'd4 293.665 11.654 0.994 1.327 13.326 15.847',
  'eb4 311.127 12.347 1.053 1.406 14.118 16.790',
  'e4 329.628 13.081 1.116 1.490 14.958 17.788',
  'f4 349.228 13.859 1.182 1.578 15.847 18.846',
  'f#4 369.994 14.683 1.253 1.672 16.790 19.967',
  'g4 391.995 15.556 1.327 1.772 17.788 21.154',
  'g#4 415.305 16.481 1.406 1.877 18.846 22.412',
  'a4 440.000 17.461 1.490 1.989 19.967 23.744',
];

const KINDS: readonly (readonly [IntervalKind, 'wide' | 'narrow'])[] = [
  [MAJOR_THIRD, 'wide'],
  [FIFTH, 'narrow'],
  [FOURTH, 'wide'],
  [MAJOR_SIXTH, 'wide'],
  [MINOR_THIRD, 'narrow'],
];

const CHROMATIC = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
const above = (low: string, semitones: number): string => {
  const key = CHROMATIC.indexOf(low.slice(0, -1)) + semitones;
  return `${CHROMATIC[key % 12]}${Number(low.at(-1)) + Math.floor(key / 12)}`;
};

describe('equal temperament at 440 beats as the tables print it', () => {
  it.each(EQUAL_AT_440)('%s', (row) => {
    const [low = '', hertz, ...beats] = row.split(' ');
    const tuning = tunedTo('equal');
    expect(frequencyOf(tuning, pitch(low)).toFixed(3)).toBe(hertz);
    const found = KINDS.map(([kind]) => intervalOf(tuning, kind, pitch(low), pitch(above(low, kind.semitones))));
    expect(found.map(told)).toEqual(KINDS.map(([, direction], index) => `${beats[index]} ${direction}`));
  });
  it('and a semitone lower proportionally slower', () => {
    expect(heard(MAJOR_THIRD, 'f3', 'a3', 'equal', 415)).toBe('6.536 wide');
    expect(heard(MAJOR_THIRD, 'c4', 'e4', 'equal', 415)).toBe('9.792 wide');
    expect(heard(FIFTH, 'c4', 'g4', 'equal', 415)).toBe('0.835 narrow');
  });
});

describe('quarter-comma meantone beats as arithmetic has it', () => {
  it.each([
    [440, MAJOR_THIRD, 'f3', 'a3', '0.000 pure'],
    [440, MAJOR_THIRD, 'c4', 'e4', '0.000 pure'],
    [440, MAJOR_THIRD, 'g3', 'b3', '0.000 pure'],
    [440, FIFTH, 'c4', 'g4', '2.448 narrow'],
    [440, FIFTH, 'd4', 'a4', '2.737 narrow'],
    [440, FIFTH, 'a3', 'e4', '2.047 narrow'],
    [440, FIFTH, 'f3', 'c4', '1.637 narrow'],
    [440, FIFTH, 'g3', 'd4', '1.830 narrow'],
    [415, FIFTH, 'c4', 'g4', '2.309 narrow'],
    [415, FIFTH, 'd4', 'a4', '2.582 narrow'],
  ] as const)('at %d', (a, kind, low, high, beats) => {
    expect(heard(kind, low, high, 'meantone 1/4', a)).toBe(beats);
  });
  it.each([
    [440, '263.181'],
    [415, '248.228'],
  ])('and at %d its middle C has %s hertz', (a, hertz) => {
    expect(frequencyOf(tunedTo('meantone 1/4', a), pitch('c4')).toFixed(3)).toBe(hertz);
  });
  it('has a diesis of 41.059 cents between the halves of a divided key, the flat the higher', () => {
    const tuning = tunedTo('meantone 1/4', 440, 'instrument virginals\n  split d#/eb g#/ab\n');
    const [eb, dSharp, ab, gSharp] = ['eb4', 'd#4', 'ab4', 'g#4'].map((name) => frequencyOf(tuning, pitch(name)));
    expect(1200 * Math.log2((eb ?? 0) / (dSharp ?? 0))).toBeCloseTo(41.058858, 5);
    expect(1200 * Math.log2((ab ?? 0) / (gSharp ?? 0))).toBeCloseTo(41.058858, 5);
  });
});

// Haynes has the names (northern Chorton is A+1); their frequencies are computed from 440.
describe('pitch standards', () => {
  it.each([
    ['a-2', 391.995],
    ['a-1', 415.305],
    ['a+0', 440],
    ['a+1', 466.164],
  ])('%s is at %d hertz', (name, hertz) => {
    const standard = pitchStandards.find((one) => one.name === name);
    expect(standard && exactPitch(standard)).toBeCloseTo(hertz, 3);
    expect(Math.abs((standard?.fork ?? 0) - hertz)).toBeLessThan(0.4);
  });
});
