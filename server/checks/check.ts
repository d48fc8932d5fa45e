/** What a check is. */
import type { FileTree } from '../../grammar/tree';
import type { Environment } from '../score/environment';
import type { PlacedProblem, Score } from '../score/score';

/** What there is to look at; a check takes what it needs. */
export interface Checked {
  readonly tree: FileTree;
  readonly environment: Environment;
  /** The score as written. */
  readonly score: Score;
}

export type Check = (checked: Checked) => readonly PlacedProblem[];
