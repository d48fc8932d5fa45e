/** How a teaching sheet names bars and files. */
import type { Bar } from '../../score/score';

/** “bar 5”, “bars 5, 7”. */
export const inBars = (numbers: readonly string[]): string =>
  `${numbers.length === 1 ? 'bar' : 'bars'} ${[...new Set(numbers)].join(', ')}`;

/** “bar 5”, “bars 1 to 3”. */
export const barsFromTo = (first: Bar, last: Bar): string =>
  first === last ? `bar ${first.number}` : `bars ${first.number} to ${last.number}`;

export const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

/** Without its folder. */
export const fileName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
