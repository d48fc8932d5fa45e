/**
 * Short and broken octaves: the lowest keys sound other notes than those by which they lie.
 *
 * Borys Medicky, keyboard layouts (borysmedicky.com/options); of divided sharps liquisearch.com/short_octave, the broken
 * octave. C/E and G/B are one layout a fourth apart.
 */

/** The half of a divided key, as it lies under the hand. */
export type Half = 'front' | 'back';

/** A key of the lowest octave, in semitones above its lowest note. */
export interface ShortKey {
  /** By which it lies: of C/E 6 is the key of f sharp. */
  readonly lies: number;
  readonly sounds: number;
  readonly half?: Half;
}

/** The lowest key lies so many semitones above the note that it sounds. */
export const LOWEST_LIES = 4;

/** Pitch class of the lowest note, by the name as it is typed. */
export const LOWEST_OF: Readonly<Record<string, number>> = { 'c/e': 0, 'g/b': 7 };

/** Of C/E the keys e, f sharp, g sharp sound c, d, e. */
const PLAIN: readonly ShortKey[] = [
  { lies: 4, sounds: 0 },
  { lies: 5, sounds: 5 },
  { lies: 6, sounds: 2 },
  { lies: 7, sounds: 7 },
  { lies: 8, sounds: 4 },
];

/**
 * Divided sharps: the front half has what the short octave gives it, the back half its own note. Another tradition has the
 * halves the other way about (matthewjamesrichards.co.uk).
 */
const BROKEN: readonly ShortKey[] = PLAIN.flatMap((key): readonly ShortKey[] =>
  key.lies === 6 || key.lies === 8
    ? [
        { ...key, half: 'front' },
        { lies: key.lies, sounds: key.lies, half: 'back' },
      ]
    : [key],
);

export const shortKeys = (broken: boolean): readonly ShortKey[] => (broken ? BROKEN : PLAIN);

/** From here on every key sounds its own note. */
export const SHORT_UP_TO = 9;
