/** Bars as sentences name them, by their numbers. */
import type { Bar } from './score';

/** "bar 5", "bars 5-7": from one to another, as findings have it. */
export const barRange = (first: string, last: string): string =>
  first === last ? `bar ${first}` : `bars ${first}-${last}`;

/** "bar 5", "bars 5 to 7": the same on pages and in panels, which are read aloud too. */
export const barsFromTo = (first: string, last: string): string =>
  first === last ? `bar ${first}` : `bars ${first} to ${last}`;

/** "bar 5", "bars 5, 7": each once. */
export function barsNamed(numbers: Iterable<string>): string {
  const all = [...new Set(numbers)];
  return `${all.length === 1 ? 'bar' : 'bars'} ${all.join(', ')}`;
}

/** A bar as it is named: by its number, and by its piece where there are several. */
export interface NamedBar {
  readonly piece: string;
  readonly number: string;
}

/** "bars 3, 7 of “Gavotte”, bar 2 of “Double”"; of a piece without a name the bars alone. */
export function barsOfPieces(all: readonly NamedBar[]): string {
  const pieces = [...new Set(all.map(({ piece }) => piece))];
  const inPieces = pieces.map((name) => {
    const numbers = all.filter(({ piece }) => piece === name).map(({ number }) => number);
    return `${barsNamed(numbers)}${name === '' ? '' : ` of “${name}”`}`;
  });
  return inPieces.join(', ');
}

/** "bar 18", "bars 1, 3-5, 8": those that follow one another together. */
export function barsInWords(indices: Iterable<number>, bars: readonly Bar[]): string {
  const numberOf = (index: number): string => bars[index]?.number ?? '';
  const runs: [number, number][] = [];
  for (const index of [...indices].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && index === last[1] + 1) last[1] = index;
    else runs.push([index, index]);
  }
  const [first] = runs;
  if (first !== undefined && runs.length === 1) return barRange(numberOf(first[0]), numberOf(first[1]));
  return `bars ${runs.map(([from, to]) => (from === to ? numberOf(from) : `${numberOf(from)}-${numberOf(to)}`)).join(', ')}`;
}
