/** Bars of a piece as a sentence names them. */
import type { Bar } from '../score/score';

/** "bar 18", "bars 1, 3-5, 8": each bar by its number. */
export function barsInWords(indices: Iterable<number>, bars: readonly Bar[]): string {
  const numberOf = (index: number): string => bars[index]?.number ?? '';
  const runs: [number, number][] = [];
  for (const index of [...indices].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && index === last[1] + 1) last[1] = index;
    else runs.push([index, index]);
  }
  const texts = runs.map(([from, to]) => (from === to ? numberOf(from) : `${numberOf(from)}-${numberOf(to)}`));
  const [only = ''] = texts;
  const isOne = runs.length === 1 && runs[0]?.[0] === runs[0]?.[1];
  return isOne ? `bar ${only}` : `bars ${texts.join(', ')}`;
}
