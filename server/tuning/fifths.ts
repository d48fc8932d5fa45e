/**
 * The line of fifths: … bb f c g d a e b f# …
 *
 * A note without octave is its place there, counted from c: g is 1, f is −1, f# is 6, bb is −2. Twelve places further lies
 * another note on the same key.
 */
import { modulo } from '../../grammar/modulo';
import type { Spelling } from '../../grammar/tree';
import { ALTERATIONS, accidentalNames, type Note, signOf } from '../../grammar/vocabulary/pitches';

const LINE: readonly Spelling['letter'][] = ['f', 'c', 'g', 'd', 'a', 'e', 'b'];

export const placeOf = ({ letter, alteration }: Note): number => LINE.indexOf(letter) - 1 + 7 * alteration;

/** The place of a note that a statement names. */
export const placeOfSpelling = ({ letter, accidental }: Spelling): number =>
  placeOf({ letter, alteration: accidental === undefined ? 0 : ALTERATIONS[accidental] });

export function noteAt(place: number): Note {
  const letter = LINE[modulo(place + 1, 7)] ?? 'c';
  return { letter, alteration: Math.floor((place + 1) / 7) };
}

/** As it is typed: `f#`, `bb`. Beyond double signs, which nobody types, they are put one after another. */
export function noteName(place: number): string {
  const { letter, alteration } = noteAt(place);
  if (alteration === 0) return letter;
  return `${letter}${signOf(alteration) ?? (alteration < 0 ? 'b' : '#').repeat(Math.abs(alteration))}`;
}

/** In words: "f sharp", "b flat"; beyond double signs as it is typed. */
export function noteInWords(place: number): string {
  const { letter, alteration } = noteAt(place);
  const sign = signOf(alteration);
  if (alteration === 0 || sign === undefined) return noteName(place);
  return `${letter} ${accidentalNames[sign]}`;
}

/** The key in the octave: 0 for c, 1 for c#, 11 for b. */
export const keyOf = (place: number): number => modulo(place * 7, 12);

/** A fifth by its lower note: `g#-eb` where the upper one is not the next on the line. */
export const fifthName = (lower: number, upper = lower + 1): string => `${noteName(lower)}-${noteName(upper)}`;
