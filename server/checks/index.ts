/** All checks, in the order in which they run. */
import type { PlacedProblem, Score } from '../score/score';
import { accidentalEnds, sharedLine } from './accidentals';
import type { Check, Given } from './check';
import { clefsAtHeads, clefsRestated } from './clefs';
import { outsideCompass, shortOctave } from './compass';
import { consecutives } from './consecutives';
import { custodes } from './custodes';
import { falseRelation } from './falseRelation';
import { farFromStave, octaveSlips } from './heights';
import { leadingNotes } from './leadingNote';
import { unknownNames } from './names';
import { orderAgainstRepeats } from './order';
import { nearlyRepeated } from './repeats';
import { unusedDeclarations } from './unused';
import { silentWitnesses } from './witnesses';

export const checks: readonly Check[] = [
  unknownNames,
  unusedDeclarations,
  silentWitnesses,
  orderAgainstRepeats,
  outsideCompass,
  shortOctave,
  clefsAtHeads,
  clefsRestated,
  custodes,
  farFromStave,
  octaveSlips,
  accidentalEnds,
  sharedLine,
  falseRelation,
  leadingNotes,
  consecutives,
  nearlyRepeated,
];

/**
 * What all checks find in a file.
 * @param scores those of all choices, `written` first
 */
export function checkFile(file: Omit<Given, 'score'>, scores: readonly Score[]): readonly PlacedProblem[] {
  return checks.flatMap((one) => {
    const seen = one.needs.includes('score') ? scores : scores.slice(0, 1);
    return seen.flatMap((score) => one.run({ ...file, score }));
  });
}
