/** One worker of `npm run fuzz` and `npm run law`: tries the seeds from one number to another and tells what came of it. */
import { keepsLaw } from '../document/law';
import { check, checkExports, sources } from './check';
import { textOf } from './edits';

/** What a worker tells the process that started it. */
export type Told =
  | { readonly kind: 'progress'; readonly done: number; readonly counted: number }
  | { readonly kind: 'failure'; readonly seed: number; readonly text: string; readonly why: string };

/** What is tried with one seed; gives a number to add up, or throws. */
interface Trial {
  /** Seeds after which the process is told. */
  readonly every: number;
  readonly run: (seed: number, texts: readonly string[]) => number;
  /** What is kept of a seed that failed. */
  readonly text: (seed: number, texts: readonly string[]) => string;
}

/** To export a text takes many times as long as to judge it, so only every so manieth is. */
const EXPORTED = 50;

function tryText(seed: number, texts: readonly string[]): number {
  const text = textOf(seed, texts);
  const findings = check(text).length;
  if (seed % EXPORTED === 0) checkExports(text);
  return findings;
}

/** Edits that each seed of the law makes. */
const STEPS = 20;

const trials: Readonly<Record<string, Trial>> = {
  texts: { every: 500, run: tryText, text: textOf },
  law: {
    every: 10,
    run: (seed, texts) => keepsLaw(seed, texts, STEPS),
    text: (seed, texts) => texts[seed % texts.length] ?? '',
  },
};

const tell = (told: Told): void => {
  process.send?.(told);
};

const [kind = '', ...numbers] = process.argv.slice(2);
const [from = 1, to = 1] = numbers.map(Number);
const trial = trials[kind];
if (trial === undefined) throw new Error(`no trial ${kind}`);
const texts = sources();
let counted = 0;
for (let seed = from; seed <= to; seed++) {
  try {
    counted += trial.run(seed, texts);
  } catch (error) {
    const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
    tell({ kind: 'failure', seed, text: trial.text(seed, texts), why });
  }
  if ((seed - from + 1) % trial.every === 0 || seed === to) {
    tell({ kind: 'progress', done: seed - from + 1, counted });
    // Lets the message out: the loop itself never waits.
    await new Promise((resolve) => setImmediate(resolve));
  }
}
