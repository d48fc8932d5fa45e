/** Work that shares its thread with others. */

/** How a host shares its thread. */
export interface Turns {
  /** Milliseconds from any beginning. */
  now(): number;
  /** Lets others have a turn. */
  pause(): Promise<void>;
}

/** Longest time in milliseconds that work keeps the thread for itself. */
const LONGEST_TURN = 10;

/**
 * Does work a piece at a time, with turns for others.
 * @param isOver whether nobody wants it any more; asked between two pieces
 * @returns undefined if it was over before the work was done
 */
export async function inTurns<Result>(
  work: Generator<undefined, Result>,
  turns: Turns,
  isOver: () => boolean,
): Promise<Result | undefined> {
  let begun = turns.now();
  let step = work.next();
  while (step.done !== true) {
    if (turns.now() - begun >= LONGEST_TURN) {
      await turns.pause();
      begun = turns.now();
    }
    if (isOver()) return undefined;
    step = work.next();
  }
  return step.value;
}
