/** The known word nearest to a misspelt one. */
import type { Fix } from './findings/finding';
import { replacing } from './findings/fixes';
import type { Span } from './tree';

/** Longer words are no slip of the finger, and comparing them would cost time. */
const LONGEST = 32;

/** Nobody mistakes one of so many names for another, and comparing them all would cost time. */
const MOST_CANDIDATES = 500;

/** How many slips are forgiven: one in a short word, one more for every three letters. */
const forgiven = (word: string): number => Math.max(1, Math.floor(word.length / 3));

/**
 * Slips between two words: letters left out, added, mistaken, or two neighbours changed about. Stops counting beyond
 * `most` and then says `most + 1`.
 */
function slips(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row[j] = Math.min(
        (last[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (last[j - 1] ?? 0) + (same ? 0 : 1),
        swapped ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
      );
    }
    if (Math.min(...row) > most) return most + 1;
    [before, last] = [last, row];
  }
  return last[b.length] ?? most + 1;
}

/** The candidate nearest to `word`, the first of equals; undefined where none is near enough to be meant. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > LONGEST) return undefined;
  const small = word.toLowerCase();
  let best: string | undefined;
  let fewest = forgiven(word);
  let left = MOST_CANDIDATES;
  for (const candidate of candidates) {
    if (left-- === 0) break;
    // A word of one or two letters is near to everything; only its capitals may be mistaken.
    const most = Math.min(fewest, candidate.length - 2);
    const count = candidate.toLowerCase() === small ? 0 : slips(small, candidate.toLowerCase(), Math.max(most, 0));
    if (count > Math.max(most, 0) || (count === fewest && best !== undefined)) continue;
    best = candidate;
    fewest = count;
  }
  return best;
}

/** So many names are told where one of them was expected. */
const MOST_LISTED = 20;

/** "K, L, M"; of very many names the first ones. */
export function namesListed(names: Iterable<string>): string {
  const all = [...names];
  if (all.length === 0) return 'none';
  return all.length <= MOST_LISTED ? all.join(', ') : `${all.slice(0, MOST_LISTED).join(', ')} …`;
}

/** Writes the nearest known name in the place of one that nothing gives. */
export function nameInstead(name: string, at: Span, known: Iterable<string>): readonly Fix[] {
  const meant = nearest(name, known);
  return meant === undefined ? [] : [replacing(at, meant)];
}
