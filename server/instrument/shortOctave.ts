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

const OTHER: Readonly<Record<Half, Half>> = { front: 'back', back: 'front' };

/** Divided sharps have the note of the short octave on one half and their own on the other. */
const broken = (half: Half): readonly ShortKey[] =>
  PLAIN.flatMap((key): readonly ShortKey[] =>
    key.lies === 6 || key.lies === 8
      ? [
          { ...key, half },
          { lies: key.lies, sounds: key.lies, half: OTHER[half] },
        ]
      : [key],
  );

/**
 * The keys of the lowest octave up to the first that sounds its own note.
 * @param half of a broken octave the half that has the note of the short octave: the front one as a rule, in another tradition
 * the back one (matthewjamesrichards.co.uk)
 */
export const shortKeys = (half: Half | undefined): readonly ShortKey[] => (half === undefined ? PLAIN : broken(half));

/** From here on every key sounds its own note. */
export const SHORT_UP_TO = 9;
