/**
 * Beats of two strings whose partials nearly meet. Strings of theory: real ones are stiff, and their partials a little sharp.
 *
 * The nth partial of the lower note is heard against the mth of the upper one, where n to m is the pure interval.
 */

export interface IntervalKind {
  readonly name: string;
  /** Places on the line of fifths from the lower note to the upper one. */
  readonly places: number;
  readonly semitones: number;
  /** The partial of the lower note that meets `upper`. */
  readonly lower: number;
  readonly upper: number;
}

export const OCTAVE: IntervalKind = { name: 'octave', places: 0, semitones: 12, lower: 2, upper: 1 };
export const FIFTH: IntervalKind = { name: 'fifth', places: 1, semitones: 7, lower: 3, upper: 2 };
export const FOURTH: IntervalKind = { name: 'fourth', places: -1, semitones: 5, lower: 4, upper: 3 };
export const MAJOR_THIRD: IntervalKind = { name: 'major third', places: 4, semitones: 4, lower: 5, upper: 4 };
export const MINOR_THIRD: IntervalKind = { name: 'minor third', places: -3, semitones: 3, lower: 6, upper: 5 };
export const MAJOR_SIXTH: IntervalKind = { name: 'major sixth', places: 3, semitones: 9, lower: 5, upper: 3 };
export const MINOR_SIXTH: IntervalKind = { name: 'minor sixth', places: -4, semitones: 8, lower: 8, upper: 5 };

/** Beats a second; positive where the interval is wider than pure. @param low frequency of the lower note in hertz */
export const beatsOf = ({ lower, upper }: IntervalKind, low: number, high: number): number =>
  upper * high - lower * low;

/** In cents; positive where the interval is wider than pure. */
export const widthOf = ({ lower, upper }: IntervalKind, low: number, high: number): number =>
  1200 * Math.log2((upper * high) / (lower * low));

export type Direction = 'wide' | 'narrow' | 'pure';

/** Slower than one beat in five minutes nobody hears. */
const STILL = 1 / 300;

export const directionOf = (beats: number): Direction =>
  Math.abs(beats) < STILL ? 'pure' : beats > 0 ? 'wide' : 'narrow';
