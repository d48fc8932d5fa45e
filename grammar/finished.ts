/** Runs work that can be done piece by piece to its end. */
export function finished<Result>(work: Generator<undefined, Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
