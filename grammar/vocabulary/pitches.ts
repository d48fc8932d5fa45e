/** Pitches by letter, alteration and octave. */
import type { AccidentalSign, Spelling } from '../tree';

type ByLetter = Readonly<Record<Spelling['letter'], number>>;

/** White keys above c. */
export const STEPS: ByLetter = { c: 0, d: 1, e: 2, f: 3, g: 4, a: 5, b: 6 };
export const SEMITONES: ByLetter = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
/** In semitones. */
export const ALTERATIONS: Readonly<Record<AccidentalSign, number>> = { '##': 2, '#': 1, n: 0, b: -1, bb: -2 };

/** No keyboard goes beyond this octave (common practice: the largest of the time end at f6 or g6). */
export const HIGHEST_OCTAVE = 7;

/** As they are called. */
export const accidentalNames: Readonly<Record<AccidentalSign, string>> = {
  '##': 'double sharp',
  '#': 'sharp',
  n: 'natural',
  b: 'flat',
  bb: 'double flat',
};

const SIGNS: Readonly<Record<number, AccidentalSign>> = { [-2]: 'bb', [-1]: 'b', 0: 'n', 1: '#', 2: '##' };

/** The sign that says an alteration; undefined beyond double sharp and double flat. */
export const signOf = (alteration: number): AccidentalSign | undefined => SIGNS[alteration];

/** A letter with its alteration in semitones. */
export interface Note {
  readonly letter: Spelling['letter'];
  readonly alteration: number;
}

/** A note in its octave, c4 the middle C. */
export interface Pitch extends Note {
  readonly octave: number;
}

/** What sounds, as it is typed: `f#4`; without a sign where nothing is altered. */
export const pitchText = (pitch: Pitch): string =>
  `${pitch.letter}${pitch.alteration === 0 ? '' : (signOf(pitch.alteration) ?? '')}${pitch.octave}`;

/** Semitones of a pitch above the c of octave 0; an octave left out counts as 0. */
export const semitonesOf = (pitch: Spelling): number =>
  12 * (pitch.octave ?? 0) +
  SEMITONES[pitch.letter] +
  (pitch.accidental === undefined ? 0 : ALTERATIONS[pitch.accidental]);

/** MIDI key of the c of octave 0. */
const KEY_OF_C0 = 12;
/** MIDI key of a4, by whose frequency a pitch is called. */
export const KEY_OF_A4 = 69;

/** MIDI key: c4 is 60. */
export const midiOf = ({ letter, octave, alteration }: Pitch): number =>
  KEY_OF_C0 + 12 * octave + SEMITONES[letter] + alteration;

/** MIDI key of a pitch as it is typed. */
export const midiOfTyped = (pitch: Spelling): number => KEY_OF_C0 + semitonesOf(pitch);
