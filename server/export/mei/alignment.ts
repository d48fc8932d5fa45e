/** Where lists differ from a main one, and what each has there. */

/** A stretch of the main list, from an index to before another, and what stands in its place; an empty stretch is an insertion. */
interface Hunk<T> {
  readonly from: number;
  readonly to: number;
  readonly items: readonly T[];
}

/** A stretch of the main list in which some list differs. */
export interface Difference<T> {
  readonly from: number;
  readonly to: number;
  /** What each of the other lists has there, in their order. */
  readonly items: readonly (readonly T[])[];
}

/** Lists laid beside a main one. */
export interface Alignment<T> {
  /** The stretches in which any of the lists differs from the main one. */
  readonly differences: readonly Difference<T>[];
  /** By list: the item that is the same as one of the main list; undefined where it has none. */
  readonly same: readonly ((index: number) => T | undefined)[];
}

/** The key of what is the same as nothing. */
const OWN = '';

/**
 * Lays lists beside a main one; items of one key are the same.
 * @param isOwn whether an item of the list with this index is its own, whatever its key
 */
export function align<T>(
  main: readonly T[],
  others: readonly (readonly T[])[],
  keyOf: (item: T) => string,
  isOwn: (item: T, list: number) => boolean,
): Alignment<T> {
  const keys = main.map(keyOf);
  const aligned = others.map(
    (other, list) =>
      new Aligned(
        keys,
        other,
        other.map((item) => (isOwn(item, list) ? OWN : keyOf(item))),
      ),
  );
  const stretches: { from: number; to: number }[] = [];
  const all = aligned.flatMap(({ hunks }) => hunks).sort((a, b) => a.from - b.from || a.to - b.to);
  for (const { from, to } of all) {
    const last = stretches.at(-1);
    if (last !== undefined && from <= last.to) last.to = Math.max(last.to, to);
    else stretches.push({ from, to });
  }
  return {
    differences: stretches.map(({ from, to }) => ({ from, to, items: aligned.map((one) => one.between(from, to)) })),
    same: aligned.map(
      ({ same }) =>
        (index) =>
          same.get(index),
    ),
  };
}

/** One list laid beside the main one. */
class Aligned<T> {
  readonly hunks: readonly Hunk<T>[];
  /** By index in the main list: the same item in this one. */
  readonly same: ReadonlyMap<number, T>;

  constructor(main: readonly string[], items: readonly T[], keys: readonly string[]) {
    const pairs = commonPairs(main, keys);
    this.same = new Map(pairs.flatMap(([a, b]) => (items[b] === undefined ? [] : [[a, items[b]]])));
    const hunks: Hunk<T>[] = [];
    let at = 0;
    let own = 0;
    for (const [a, b] of [...pairs, [main.length, keys.length] as const]) {
      if (a > at || b > own) hunks.push({ from: at, to: a, items: items.slice(own, b) });
      at = a + 1;
      own = b + 1;
    }
    this.hunks = hunks;
  }

  /** What this list has where the main one has a stretch. */
  between(from: number, to: number): readonly T[] {
    const found: T[] = [];
    const hunks = this.hunks.filter((hunk) => hunk.from >= from && hunk.to <= to);
    for (let at = from; at <= to; ) {
      const hunk = hunks.find((one) => one.from === at);
      if (hunk !== undefined) {
        found.push(...hunk.items);
        hunks.splice(hunks.indexOf(hunk), 1);
        at = hunk.to;
        if (hunk.to > hunk.from) continue;
      }
      const item = at < to ? this.same.get(at) : undefined;
      if (item !== undefined) found.push(item);
      at += 1;
    }
    return found;
  }
}

/** Indices of a longest common subsequence. */
function commonPairs(a: readonly string[], b: readonly string[]): readonly (readonly [number, number])[] {
  const pairs: [number, number][] = [];
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) {
    pairs.push([start, start]);
    start += 1;
  }
  let tail = 0;
  while (tail < a.length - start && tail < b.length - start && a[a.length - 1 - tail] === b[b.length - 1 - tail])
    tail += 1;
  pairs.push(
    ...longest(a.slice(start, a.length - tail), b.slice(start, b.length - tail)).map(([i, j]): [number, number] => [
      i + start,
      j + start,
    ]),
  );
  for (let i = tail; i > 0; i--) pairs.push([a.length - i, b.length - i]);
  return pairs;
}

function longest(a: readonly string[], b: readonly string[]): [number, number][] {
  const width = b.length + 1;
  const lengths = new Uint32Array((a.length + 1) * width);
  const at = (i: number, j: number): number => lengths[i * width + j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--) {
      lengths[i * width + j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const pairs: [number, number][] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    if (a[i] === b[j]) pairs.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i += 1;
    else j += 1;
  }
  return pairs;
}
