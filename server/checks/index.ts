/** All checks, in the order in which they run. */
import type { PlacedProblem } from '../score/score';
import type { Check, Checked } from './check';
import { outsideCompass } from './compass';
import { unknownNames } from './names';
import { unusedDeclarations } from './unused';

export const checks: readonly Check[] = [unknownNames, unusedDeclarations, outsideCompass];

/** What all checks find in a file. */
export const checkFile = (checked: Checked): readonly PlacedProblem[] => checks.flatMap((check) => check(checked));
