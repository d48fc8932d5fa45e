/**
 * Types of instrument that need no compass: `instrument ruckers-single` has the keys of that type.
 *
 * Every maker built otherwise too; a compass or short octave that a file states goes before that of the type.
 */

export interface InstrumentEntry {
  readonly name: string;
  readonly title: string;
  /** The lowest and the highest note that sounds, as typed: `c2-c6`. */
  readonly compass: string;
  readonly shortOctave?: 'c/e' | 'g/b';
  /** Notes within the compass that have no key besides those that a short octave lacks. */
  readonly lacks?: readonly string[];
  readonly source: string;
}

const O_BRIEN = 'O’Brien’s catalogue (docslib.org/doc/10723997)';
const GROVE = 'Grove, first edition';

export const instrumentTypes: readonly InstrumentEntry[] = [
  {
    name: 'ruckers-single',
    title: 'single harpsichord or virginals of the Ruckers family, 45 keys',
    compass: 'c2-c6',
    shortOctave: 'c/e',
    source: `${O_BRIEN}; ${GROVE}, vol. 2, p. 66`,
  },
  {
    name: 'ruckers-double',
    title:
      'lower manual of a Ruckers double as it was built, 50 keys; the upper manual, 45 keys to c6, stood a fourth apart',
    compass: 'c2-f6',
    shortOctave: 'c/e',
    source: O_BRIEN,
  },
  {
    name: 'ruckers-ravale',
    title: 'Ruckers double after its first rebuilding, 50 keys on both manuals',
    compass: 'g1-c6',
    shortOctave: 'g/b',
    source: 'bigduck.com/configs.html',
  },
  {
    name: 'flemish-chromatic',
    title: 'Flemish harpsichord with a whole lowest octave, 1639, 51 keys',
    compass: 'c2-d6',
    source: '“Eight Ruckers pitches”, abstract',
  },
  {
    name: 'italian-c',
    title: 'Italian harpsichord or spinet of the 16th and 17th centuries, 45 keys',
    compass: 'c2-c6',
    shortOctave: 'c/e',
    source: 'from memory',
  },
  {
    name: 'italian-c-f',
    title: 'the same to f6, 50 keys',
    compass: 'c2-f6',
    shortOctave: 'c/e',
    source: 'from memory',
  },
  {
    name: 'italian-g',
    title: 'later Italian harpsichord, 50 keys',
    compass: 'g1-c6',
    shortOctave: 'g/b',
    source: 'from memory',
  },
  {
    name: 'italian-g-a',
    title: 'later Italian harpsichord without the lowest sharp, 53 keys',
    compass: 'g1-c6',
    lacks: ['g#1'],
    source: 'from memory',
  },
  {
    name: 'french-17th',
    title: 'French harpsichord or spinet of the 17th century, 50 keys',
    compass: 'g1-c6',
    shortOctave: 'g/b',
    source: `${GROVE}, vol. 3, p. 665`,
  },
  {
    name: 'french-1700',
    title: 'French harpsichord of the early 18th century, 58 keys',
    compass: 'g1-e6',
    source: 'from memory',
  },
  {
    name: 'french-18th',
    title: 'French harpsichord of the 18th century, 60 keys',
    compass: 'f1-e6',
    source: 'from memory',
  },
  {
    name: 'french-1760',
    title: 'French harpsichord from about 1760 on, 61 keys',
    compass: 'f1-f6',
    source: 'from memory',
  },
  {
    name: 'german-c',
    title: 'German harpsichord or clavichord, 49 keys; others go to d6',
    compass: 'c2-c6',
    source: 'from memory',
  },
  {
    name: 'german-f',
    title: 'German harpsichord of the 18th century, 61 keys; others begin with g1 or end with d6',
    compass: 'f1-f6',
    source: 'from memory',
  },
  {
    name: 'english-virginals',
    title:
      'English virginals of the 17th century, 49 keys; others have a short octave, go to d6, or begin with b1 or g1',
    compass: 'c2-c6',
    source: 'from memory',
  },
  {
    name: 'hitchcock-spinet',
    title: 'Hitchcock spinet, 61 keys',
    compass: 'g1-g6',
    source: `${GROVE}, vol. 2, p. 66`,
  },
  {
    name: 'kirkman',
    title: 'Kirkman or Shudi harpsichord, 60 keys',
    compass: 'f1-f6',
    lacks: ['f#1'],
    source: 'from memory',
  },
  {
    name: 'clavichord-fretted',
    title: 'fretted clavichord, 45 keys',
    compass: 'c2-c6',
    shortOctave: 'c/e',
    source: 'from memory',
  },
  {
    name: 'clavichord-unfretted',
    title: 'unfretted clavichord from about 1750 on, 61 keys',
    compass: 'f1-f6',
    source: 'from memory',
  },
  {
    name: 'organ-c',
    title: 'organ manual of the 17th century, 45 keys',
    compass: 'c2-c6',
    shortOctave: 'c/e',
    source: 'from memory',
  },
  {
    name: 'organ-c-d',
    title: 'later organ manual, in France too, without the lowest sharp, 48 keys',
    compass: 'c2-c6',
    lacks: ['c#2'],
    source: 'from memory',
  },
];
