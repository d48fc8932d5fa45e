/** One worker of `npm run fuzz`: tries the seeds from one number to another and tells what came of it. */
import { check, sources } from './check';
import { textOf } from './edits';

/** What a worker tells the process that started it. */
export type Told =
  | { readonly kind: 'progress'; readonly done: number; readonly findings: number }
  | { readonly kind: 'failure'; readonly seed: number; readonly text: string; readonly why: string };

const tell = (told: Told): void => {
  process.send?.(told);
};

const [from = 1, to = 1000] = process.argv.slice(2).map(Number);
const EVERY = 500;
const texts = sources();
let found = 0;
for (let seed = from; seed <= to; seed++) {
  const text = textOf(seed, texts);
  try {
    found += check(text).length;
  } catch (error) {
    tell({ kind: 'failure', seed, text, why: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
  if ((seed - from + 1) % EVERY === 0 || seed === to) {
    tell({ kind: 'progress', done: seed - from + 1, findings: found });
    // Lets the message out: the loop itself never waits.
    await new Promise((resolve) => setImmediate(resolve));
  }
}
