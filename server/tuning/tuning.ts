/** A temperament at a pitch: what each note is in cents and hertz. */
import { modulo } from '../../grammar/modulo';
import { KEY_OF_A4, midiOf, type Note, type Pitch } from '../../grammar/vocabulary/pitches';
import { beatsOf, type IntervalKind, widthOf } from './beats';
import { keyOf, noteAt, placeOf } from './fifths';
import { centsAbove, NOTES, octaved, placesFrom, type Temperament } from './temperament';

export interface Tuning {
  readonly temperament: Temperament;
  /** Frequency of a4 in hertz. */
  readonly pitch: number;
  /** Notes besides the twelve that have a key of their own, where keys are divided: their places on the line of fifths. */
  readonly more: readonly number[];
}

const A: Note = { letter: 'a', alteration: 0 };
const PLACE_OF_A = placeOf(A);

/** The places that have a key: the twelve of the temperament, from the flattest, then those of divided keys. */
export const placesIn = ({ temperament, more }: Tuning): readonly number[] => [
  ...placesFrom(temperament.first),
  ...more,
];

/** The note that the key of another gives: itself where it has a key, else that of the twelve on the same key. */
export function sounding({ temperament: { first }, more }: Tuning, place: number): number {
  if (more.includes(place)) return place;
  return first + modulo(place - first, NOTES);
}

/** Cents above c, within an octave. */
export const centsFromC = ({ temperament }: Tuning, place: number): number =>
  octaved(centsAbove(temperament, place) - centsAbove(temperament, 0));

/** Cents above a, within an octave. */
export const centsFromA = ({ temperament }: Tuning, place: number): number =>
  octaved(centsAbove(temperament, place) - centsAbove(temperament, PLACE_OF_A));

/** Cents above the key of equal temperament, both on the same a. */
export function offset(tuning: Tuning, place: number): number {
  const above = octaved(centsFromA(tuning, place) - 100 * (keyOf(place) - keyOf(PLACE_OF_A)));
  return above > 600 ? above - 1200 : above;
}

/** In hertz, of the note that the key gives. */
export function frequencyOf(tuning: Tuning, pitch: Pitch): number {
  const cents = 100 * (midiOf(pitch) - KEY_OF_A4) + offset(tuning, sounding(tuning, placeOf(pitch)));
  return tuning.pitch * 2 ** (cents / 1200);
}

/** The note of a place in or above an octave that begins with a key: from f3 on, eb is eb4. */
export function pitchFrom(lowest: number, place: number): Pitch {
  const midi = lowest + modulo(keyOf(place) - lowest, NOTES);
  const note = noteAt(place);
  return { ...note, octave: (midi - midiOf({ ...note, octave: 0 })) / NOTES };
}

/** Two notes that sound together. */
export interface Interval {
  readonly kind: IntervalKind;
  readonly low: Pitch;
  readonly high: Pitch;
  /** Cents by which it is wider than pure. */
  readonly width: number;
  /** A second; positive where it is wide. */
  readonly beats: number;
}

export function intervalOf(tuning: Tuning, kind: IntervalKind, low: Pitch, high: Pitch): Interval {
  const [below, above] = [frequencyOf(tuning, low), frequencyOf(tuning, high)];
  return { kind, low, high, width: widthOf(kind, below, above), beats: beatsOf(kind, below, above) };
}

/** An interval of a kind upon each of the twelve notes, the lower note in the octave from a key on. */
export const everyInterval = (tuning: Tuning, kind: IntervalKind, lowest: number): readonly Interval[] =>
  placesFrom(tuning.temperament.first).map((place) => {
    const low = pitchFrom(lowest, place);
    const high = pitchFrom(midiOf(low) + kind.semitones, sounding(tuning, place + kind.places));
    return intervalOf(tuning, kind, low, high);
  });
