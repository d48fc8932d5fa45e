/** The problems of one lane, so many and no more: a megabyte of stray brackets must not become a million objects. */
import type { Problem } from '../findings/finding';

/** Problems kept of one lane; further ones are only counted. */
export const MOST_PROBLEMS = 1000;

export class ProblemList {
  private readonly kept: Problem[] = [];
  private firstLeftOut: Problem | undefined;
  private leftOut = 0;

  push(problem: Problem): void {
    if (this.kept.length < MOST_PROBLEMS) {
      this.kept.push(problem);
      return;
    }
    this.firstLeftOut ??= problem;
    this.leftOut++;
  }

  /** What was kept, and one problem more that tells how many were not. */
  all(): readonly Problem[] {
    if (this.firstLeftOut === undefined) return this.kept;
    const { pos, len } = this.firstLeftOut;
    return [...this.kept, { code: 'and-more', pos, len, slots: { count: this.leftOut, where: 'lane' } }];
  }
}

/** A problem of a part where it lies in the lane. */
export const movedProblem = (problem: Problem, by: number): Problem => ({
  ...problem,
  pos: problem.pos + by,
  ...(problem.fixes === undefined
    ? {}
    : {
        fixes: problem.fixes.map((fix) => ({
          ...fix,
          edits: fix.edits.map((edit) => ({ ...edit, pos: edit.pos + by })),
        })),
      }),
});
