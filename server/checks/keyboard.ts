/** The keys that the file declares. */
import { allOf, clauseOf } from '../../grammar/statements/read';
import type { Environment } from '../score/environment';

/** MIDI keys (c4 is 60): the lowest and highest note that sounds, and those between that a short octave lacks. */
export interface Keyboard {
  readonly low: number;
  readonly high: number;
  readonly shortOctave: string | undefined;
  readonly lacks: readonly number[];
}

/** By the letter of the lowest sounding note: its pitch class, and semitones from there up to its lowest key. */
const SHORT: Readonly<Record<string, { readonly sounds: number; readonly keyAbove: number }>> = {
  'c/e': { sounds: 0, keyAbove: 4 },
  'g/b': { sounds: 7, keyAbove: 4 },
};

/**
 * What a short octave lacks, in semitones above its lowest note: of C/E c#, eb, f#, g#; of G/B g#, bb, c#, eb. Where its
 * sharps are divided the upper two are there. Borys Medicky, keyboard layouts (borysmedicky.com/options).
 */
const LACKING = { plain: [1, 3, 6, 8], broken: [1, 3] } as const;

/** The keyboard of the file's `instrument`; undefined if it states no compass. */
export function keyboardOf({ compass, statements }: Environment): Keyboard | undefined {
  if (compass === undefined) return undefined;
  const instrument = statements.find(
    ({ statement, declared }) => statement.keyword === 'instrument' && declared.file === undefined,
  );
  const clause = instrument && clauseOf(instrument.statement, 'short-octave');
  const [shortOctave, broken] = allOf(clause?.args ?? [], 'word').map(({ text }) => text);
  const kind = shortOctave === undefined ? undefined : SHORT[shortOctave];
  if (kind === undefined) return { ...compass, shortOctave: undefined, lacks: [] };
  // The compass may name the lowest key or what it sounds.
  const isKey = compass.low % 12 === (kind.sounds + kind.keyAbove) % 12;
  const low = isKey ? compass.low - kind.keyAbove : compass.low;
  const lacking = broken === undefined ? LACKING.plain : LACKING.broken;
  const lacks = low % 12 === kind.sounds ? lacking.map((above) => low + above) : [];
  return { low, high: compass.high, shortOctave, lacks };
}
