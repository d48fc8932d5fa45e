/** What a temperament makes of each key: how wide the thirds and fifths of its chords are. */
import { modulo } from '../../grammar/modulo';
import { FIFTH, MAJOR_THIRD, MINOR_THIRD } from './beats';
import { noteName } from './fifths';
import { placesFrom } from './temperament';
import { everyInterval, type Tuning } from './tuning';

export type Mode = 'major' | 'minor';

export interface KeyColour {
  /** The tonic: `eb`. */
  readonly tonic: string;
  readonly mode: Mode;
  /** Cents by which the third of the tonic chord is from pure, wide positive. */
  readonly third: number;
  /** The same of its fifth. */
  readonly fifth: number;
  /** The mean of the thirds on tonic, fourth and fifth, each without its sign: how restless the key is. */
  readonly unrest: number;
  readonly word: string;
}

/** What is said beside the figures of keys. */
export const KEY_FIGURES =
  'Third and fifth of the tonic chord, in cents wider (+) or narrower (−) than pure; unrest is the mean distance of the thirds on tonic, fourth and fifth.';

/** The mean distance of the thirds from pure, in cents, up to which a key is called so. Common practice has no fixed words. */
const WORDS: readonly (readonly [number, string])[] = [
  [3, 'still'],
  [10, 'sweet'],
  [14.5, 'even'],
  [18, 'bright'],
  [23, 'sharp'],
  [Number.POSITIVE_INFINITY, 'howling'],
];

/** A chord with a fifth that is so far from pure is a howl, whatever its third. */
const WOLF = 10;

const wordFor = (unrest: number, fifth: number): string =>
  Math.abs(fifth) > WOLF ? 'howling' : (WORDS.find(([most]) => unrest <= most)?.[1] ?? '');

/** All keys whose tonic is one of the twelve notes, from the flattest; major before minor. */
export function keyColours(tuning: Tuning): readonly KeyColour[] {
  const places = placesFrom(tuning.temperament.first);
  const widths = (kind: typeof FIFTH): readonly number[] => everyInterval(tuning, kind, 60).map(({ width }) => width);
  const fifths = widths(FIFTH);
  const thirds = { major: widths(MAJOR_THIRD), minor: widths(MINOR_THIRD) };
  return (['major', 'minor'] as const).flatMap((mode) =>
    places.map((place, index) => {
      const third = thirds[mode][index] ?? 0;
      const fifth = fifths[index] ?? 0;
      // Its fourth is the fifth below, its fifth the one above.
      const around = [index - 1, index, index + 1].map((i) => Math.abs(thirds[mode][modulo(i, 12)] ?? 0));
      const unrest = around.reduce((sum, one) => sum + one, 0) / around.length;
      return { tonic: noteName(place), mode, third, fifth, unrest, word: wordFor(unrest, fifth) };
    }),
  );
}
