/** Keys of written pitches. */
import type { Spelling } from '../tree';

const semitones: Readonly<Record<Spelling['letter'], number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
const alterations = { '#': 1, '##': 2, b: -1, bb: -2, n: 0 } as const;

/** Semitones of a pitch above the c of octave 0; an octave left out counts as 0. */
export const semitonesOf = (pitch: Spelling): number =>
  12 * (pitch.octave ?? 0) +
  semitones[pitch.letter] +
  (pitch.accidental === undefined ? 0 : alterations[pitch.accidental]);
