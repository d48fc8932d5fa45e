/** Numbers of a tuning as a page prints them. */
import type { SheetInterval } from './sheet';

/** With its plus or minus; a minus is the sign of that name, and no hyphen. */
export const signed = (value: number, places: number): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(places)}`;

/** How often an interval beats in a second, and to which side of pure it lies: "1.25 narrow". */
export const beatsInFigures = ({ beats, direction }: Pick<SheetInterval, 'beats' | 'direction'>): string =>
  direction === 'pure' ? 'pure' : `${beats.toFixed(2)} ${direction}`;
