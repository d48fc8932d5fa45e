/** All checks, in the order in which they run. */
import type { PlacedProblem, Score } from '../score/score';
import type { Check, Given } from './check';
import { clefsAtHeads } from './clefs';
import { outsideCompass } from './compass';
import { unknownNames } from './names';
import { unusedDeclarations } from './unused';

export const checks: readonly Check[] = [unknownNames, unusedDeclarations, outsideCompass, clefsAtHeads];

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
