/** The walk through the steps of a laying, without the page that shows it. */
import { pluck } from '../../../server/sound/pluck';
import type { ShownStep } from '../messages';

/** The strings that later steps set: all others are laid when a step is done, or have not moved. */
export const notYetLaid = (steps: readonly ShownStep[], at: number): ReadonlySet<string> =>
  new Set(steps.slice(at + 1).map(({ tunes }) => tunes));

/** Where a step forward or back leads; the walk ends at both ends. */
export const stepFrom = (steps: readonly ShownStep[], at: number, by: number): number =>
  Math.max(0, Math.min(steps.length - 1, at + by));

/** Frequencies of both strings as the step wants them, or with the one that is tuned moved until it is pure. */
export function frequenciesOf(
  { interval, tunes, hertz, partials }: ShownStep,
  way: 'tempered' | 'pure',
): readonly number[] {
  if (way === 'tempered') return hertz;
  const [low, high] = hertz;
  const [ofLow, ofHigh] = partials;
  const setsLower = interval.startsWith(`${tunes}-`);
  return setsLower ? [(high * ofHigh) / ofLow, high] : [low, (low * ofLow) / ofHigh];
}

/** Seconds: long enough for two of the slowest beats that are counted. */
const SECONDS = 6;
/** Seconds in which a string falls by sixty decibels: longer than strings of the keyboard ring, so that slow beats are heard. */
const DECAY = 12;
/** Seconds in which it is damped at the end. */
const DAMPING = 0.3;

/** Both strings plucked at once: their partials beat where they meet. @param rate samples a second */
export function sounded(frequencies: readonly number[], rate: number): Float32Array {
  const strings = frequencies.map((frequency) =>
    pluck({ frequency, seconds: SECONDS, rate, decay: DECAY, damping: DAMPING }),
  );
  return Float32Array.from(strings[0] ?? [], (_, n) => strings.reduce((sum, string) => sum + (string[n] ?? 0), 0));
}
