/** Everything that can be said of one version of a file: its environment, its scores, its findings. */
import type { Finding } from '../../grammar/findings/finding';
import type { FileTree } from '../../grammar/tree';
import type { Environment } from '../score/environment';
import type { Score } from '../score/score';
import type { NamedTree } from './absolute';
import { Document } from './document';
import type { Levels } from './levels';

export interface Analysis {
  readonly file: string;
  readonly tree: FileTree;
  readonly environment: Environment;
  /** `written`, then the readings, witnesses and layers declared. */
  readonly choices: readonly string[];
  /** The score of a choice; undefined if the file declares no such reading or witness. */
  score(choice: string): Score | undefined;
  /**
   * By place. Made when first asked for.
   * @param played what is found where its readings are played, to stand among the others
   */
  findings(played?: readonly Finding[]): readonly Finding[];
  /** The same a piece at a time; `findings` then has them. */
  proofing(): Generator<undefined, readonly Finding[]>;
}

export interface AnalysisOptions {
  /** Levels other than the catalogue's. */
  readonly levels?: Levels;
  /** Whether the music itself is judged: voice leading, accidentals that may be missing. As a rule it is. */
  readonly counsel?: boolean;
  /** Findings made elsewhere, such as those of includes. */
  readonly also?: readonly Finding[];
}

/**
 * Analyses a file: a document of one version.
 * @param file its name, as the host calls it
 * @param included the files it includes, directly or not, each after those that it includes itself
 */
export const analyse = (
  file: string,
  tree: FileTree,
  included: readonly NamedTree[] = [],
  options: AnalysisOptions = {},
): Analysis => new Document(file).read(tree, { ...options, included });
