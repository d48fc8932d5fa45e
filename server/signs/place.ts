/** What a sign finds where it stands, as far as it tells in how long its notes are. */
import { divide, multiply, subtract, type Time, time, toNumber } from '../../grammar/time';
import { type Clock, oneOf, secondsOf } from '../score/clock';

export interface Place {
  /** The performed value of the note. */
  readonly length: Time;
  readonly clock: Clock;
  /** Strokes of a trill a second where the recipe does not say. */
  readonly strokes: number;
  /** The movement is slow: appoggiaturas of trills last longer. */
  readonly slow: boolean;
  /** Dots of the written note. */
  readonly dots: number;
  /** A last short note before a barline, or a short note after a dot: no room for more than two strokes. */
  readonly upbeat: boolean;
  /** The note before is the upper neighbour and leads over by a slur. */
  readonly tied: boolean;
  /** How long an appoggiatura lasts here. */
  readonly appoggiatura: Time;
  /** Trills begin slowly by the rule of this table. */
  readonly slowStart: boolean;
  /** In print all values are multiples of this; in performance there is none. */
  readonly grid: Time | undefined;
}

/** Notes a second: as a rule, in slow and in gay movements. Common practice. */
const STROKES = { usual: 11, slow: 8.5, gay: 12.5 } as const;
/** Beats a minute below and above which a movement is slow or gay. Common practice. */
const PACE = { slow: 50, gay: 100 } as const;

/** How quick trills are where a beat lasts so long. */
export function paceOf(clock: Clock, beat: Time): Pick<Place, 'strokes' | 'slow'> {
  const beatsPerMinute = 60 / secondsOf(clock, beat);
  if (beatsPerMinute < PACE.slow) return { strokes: STROKES.slow, slow: true };
  return { strokes: beatsPerMinute > PACE.gay ? STROKES.gay : STROKES.usual, slow: false };
}

/** The pulse that Quantz takes as measure, Versuch XVII.vii.55 (from memory): beats a minute. */
const PULSE = 80;

/** The length of a note of a speed that a recipe states. */
export function speedOf(
  { kind, number }: { readonly kind: 'second' | 'pulse' | 'value'; readonly number: number },
  clock: Clock,
): Time {
  if (kind === 'value') return time(1, number);
  return oneOf(clock, kind === 'second' ? number : (number * PULSE) / 60);
}

export const seconds = (place: Place, length: Time = place.length): number => secondsOf(place.clock, length);

export const share = (length: Time, n: number, d: number): Time => multiply(length, time(n, d));

/** The part of a dotted value that its dots add. */
export const dotOf = (length: Time, dots: number): Time => {
  const base = divide(length, time(2 ** (dots + 1) - 1, 2 ** dots));
  return subtract(length, base);
};

const THIRTY_SECOND = time(1, 32);
const SIXTY_FOURTH = time(1, 64);

/** The smallest value in print: a 32nd, a 64th where the note is a quaver or less; in tuplets a part that fits. */
export function gridOf(length: Time): Time {
  const grid = toNumber(length) <= 1 / 8 ? SIXTY_FOURTH : THIRTY_SECOND;
  const parts = Math.max(1, Math.round(toNumber(length) / toNumber(grid)));
  return divide(length, time(parts));
}

/** A length on the grid of print, or as it is in performance. */
export function onGrid({ grid }: Pick<Place, 'grid'>, length: Time): Time {
  if (grid === undefined) return length;
  return multiply(grid, time(Math.round(toNumber(length) / toNumber(grid))));
}
