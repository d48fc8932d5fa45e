/** What a check is. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { type Fix, problemOf, type Slots } from '../../grammar/findings/finding';
import type { BlockContents, FileTree, Span } from '../../grammar/tree';
import type { Environment } from '../score/environment';
import type { PlacedProblem, Score } from '../score/score';

/** What there is to look at. */
export interface Given {
  readonly tree: FileTree;
  readonly environment: Environment;
  /** The score of one choice; a check that needs it looks at every choice in turn. */
  readonly score: Score;
}

export type Need = keyof Given;

/** Looks over a whole file for one kind of thing. */
export interface Check {
  readonly name: string;
  readonly needs: readonly Need[];
  /** It looks at the score as written, and what it finds concerns the text of all readings. */
  readonly ofWritten: boolean;
  readonly run: (given: Given) => readonly PlacedProblem[];
}

/** A check that sees what it says it needs and nothing else. */
export const check = <Needed extends Need>(
  name: string,
  needs: readonly Needed[],
  run: (given: Pick<Given, Needed>) => readonly PlacedProblem[],
): Check => ({ name, needs, ofWritten: !(needs as readonly Need[]).includes('score'), run: steadily(run) });

/** A check of the score as written alone: it would say the same, or nothing worth saying, of other readings. */
export const checkOfWritten = <Needed extends Need>(...given: Parameters<typeof check<Needed>>): Check => ({
  ...check(...given),
  ofWritten: true,
});

/** What is found again in a block left alone is the same object: whoever tells findings apart need not look at them. */
function steadily(run: Check['run']): Check['run'] {
  const kept = new WeakMap<BlockContents, ReadonlyMap<string, PlacedProblem>>();
  return (given) => {
    const here = new Map<BlockContents, Map<string, PlacedProblem>>();
    const found = run(given).map((placed) => {
      const contents = given.tree.blocks[placed.block]?.contents;
      if (contents === undefined) return placed;
      const key = JSON.stringify(placed);
      const same = kept.get(contents)?.get(key) ?? placed;
      here.set(contents, (here.get(contents) ?? new Map<string, PlacedProblem>()).set(key, same));
      return same;
    });
    for (const [contents, problems] of here) kept.set(contents, problems);
    return found;
  };
}

/** A place in a lane, in a statement or, with neither, in its block. */
export interface Spot extends Span {
  readonly block: number;
  readonly lane?: number | undefined;
  readonly statement?: number | undefined;
}

/** A problem at its place. */
export const problemAt = (
  code: FindingCode,
  { pos, len, block, lane, statement }: Spot,
  slots: Slots,
  fixes?: readonly Fix[],
): PlacedProblem => ({
  problem: problemOf(code, { pos, len }, slots, fixes),
  block,
  lane,
  ...(statement === undefined ? {} : { statement }),
});
