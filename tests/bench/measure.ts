/** Times compared in one process: what is compared takes turns, so that a busy machine slows all alike. */

/** Something to be timed; what it gives back is kept alive until the clock has stopped. */
export type Task = () => unknown;

export const median = (numbers: readonly number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
};

/**
 * Time of the processor, all threads together: what else a machine has to do does not count, nor what the task before
 * left to be collected.
 */
function milliseconds(task: Task): number {
  // A full collection would throw optimised code away too.
  collector()({ type: 'minor' });
  const start = process.cpuUsage();
  const made = task();
  const { user, system } = process.cpuUsage(start);
  if (made === undefined) throw new Error('nothing was made');
  return (user + system) / 1000;
}

/**
 * The median of each task in milliseconds. As many rounds go before to warm up: until then the engine compiles what it finds
 * to be run again and again, on threads whose time counts, and compiles it anew where more shapes of things are met.
 */
export function medians<Name extends string>(
  tasks: Readonly<Record<Name, Task>>,
  rounds: number,
  warmUp = rounds,
): Record<Name, number> {
  const names = Object.keys(tasks) as Name[];
  const times = new Map<Name, number[]>(names.map((name) => [name, []]));
  for (let round = -warmUp; round < rounds; round++) {
    for (const name of names) {
      const taken = milliseconds(tasks[name]);
      if (round >= 0) times.get(name)?.push(taken);
    }
  }
  return Object.fromEntries(names.map((name) => [name, median(times.get(name) ?? [])])) as Record<Name, number>;
}

/** Bytes that what a task makes keeps on the heap. Needs `--expose-gc`. */
export function kept(task: Task): number {
  const before = heap();
  const made = task();
  const after = heap();
  return made === undefined ? Number.NaN : after - before;
}

/** The same after the event loop has had a turn: what is held loosely is let go only then. */
export async function keptLater(task: Task): Promise<number> {
  const before = heap();
  const made = task();
  await new Promise((resolve) => setTimeout(resolve, 20));
  const after = heap();
  return made === undefined ? Number.NaN : after - before;
}

/** Node's collector, which `--expose-gc` shows. */
function collector(): NonNullable<typeof gc> {
  if (gc === undefined) throw new Error('run node with --expose-gc');
  return gc;
}

function heap(): number {
  // Without options: a collection of type major leaves alone what is held loosely.
  collector()();
  collector()();
  return process.memoryUsage().heapUsed;
}

/** One line of the result. */
export interface Line {
  readonly what: string;
  readonly measured: string;
  readonly ratio?: number | undefined;
  /** The ratio that is wished for; nothing is said where none is. */
  readonly wished?: number | undefined;
}

export const ms = (time: number): string => `${time < 10 ? time.toFixed(2) : time.toFixed(1)} ms`;

export function print(title: string, lines: readonly Line[]): void {
  const width = Math.max(48, ...lines.map(({ what }) => what.length));
  console.log(`\n${title}`);
  for (const { what, measured, ratio, wished } of lines) {
    const compared = ratio === undefined ? '' : ratio.toFixed(3).padStart(9);
    const verdict =
      ratio === undefined || wished === undefined
        ? ''
        : `  wished < ${wished.toFixed(3)}  ${ratio < wished ? 'yes' : 'NO'}`;
    console.log(`  ${what.padEnd(width)} ${measured.padStart(12)}${compared}${verdict}`);
  }
}
