/** What a check is. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Fix, Slots } from '../../grammar/findings/finding';
import { nearest } from '../../grammar/nearest';
import type { FileTree, Span } from '../../grammar/tree';
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
  readonly run: (given: Given) => readonly PlacedProblem[];
}

/** A check that sees what it says it needs and nothing else. */
export const check = <Needed extends Need>(
  name: string,
  needs: readonly Needed[],
  run: (given: Pick<Given, Needed>) => readonly PlacedProblem[],
): Check => ({ name, needs, run });

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
  fixes: readonly Fix[] = [],
): PlacedProblem => ({
  problem: { code, pos, len, slots, ...(fixes.length === 0 ? {} : { fixes }) },
  block,
  lane,
  ...(statement === undefined ? {} : { statement }),
});

/** Writes the nearest known name in the place of one that nothing gives. */
export function nameInstead(name: string, at: Span, known: Iterable<string>): readonly Fix[] {
  const meant = nearest(name, known);
  return meant === undefined ? [] : [{ title: `write ${meant}`, edits: [{ pos: at.pos, len: at.len, text: meant }] }];
}
