/** Tunings by the words that stand after `tuning`. */
import { parseFile } from '../../grammar/parse';
import { analyse } from '../../server/document/analysis';
import { tuningOf } from '../../server/readings/tunings';
import { centsFromC, type Tuning } from '../../server/tuning/tuning';
import { scoreOf } from './music';

/** The tuning of a file that states it, with what else it declares. */
export const tunedTo = (words: string, pitch = 440, more = ''): Tuning => tuningIn(`tuning ${words}\n${more}`, pitch);

export const tuningIn = (statements: string, pitch = 440): Tuning =>
  tuningOf(
    scoreOf(analyse('tuned.bent', parseFile(`bentside 1\npitch a4 = ${pitch}\n${statements}`))).environment,
    'written',
  );

/** The twelve notes from c upwards, as the lists of temperaments print them. */
export const FROM_C = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'g#', 'a', 'bb', 'b'];
export const FROM_A = [...FROM_C.slice(9), ...FROM_C.slice(0, 9)];

/** The place of a note on the line of fifths, by its name. */
export const place = (name: string): number =>
  'fcgdaeb'.indexOf(name[0] ?? '') - 1 + 7 * (name.length > 1 ? (name[1] === '#' ? 1 : -1) * (name.length - 1) : 0);

export const centsOf = (tuning: Tuning, name: string): number => centsFromC(tuning, place(name));
