/** What a sign finds where it stands, as far as it tells in how long its notes are. */
import {
  divide,
  earliest,
  isNegative,
  isZero,
  latest,
  multiply,
  subtract,
  type Time,
  time,
  toNumber,
} from '../../grammar/time';
import { type Clock, oneOf, secondsOf } from '../score/clock';

export interface Place {
  /** The performed value of the note. */
  readonly length: Time;
  readonly clock: Clock;
  /** Strokes of a trill a second where the recipe does not say. */
  readonly strokes: number;
  /** The movement is slow: appoggiaturas of trills last longer. */
  readonly slow: boolean;
  /** The dots with which the note sounds. */
  readonly dots: number;
  /** How long a trill stands on its note when its strokes are done, where the note has time for both. */
  readonly stop: Time;
  /** The note after it is its anticipation: a trill stops before that and has no suffix. */
  readonly anticipated: boolean;
  /** A close follows, and the table does not tell a trill that leans from one that does not: it leans here. */
  readonly cadential: boolean;
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

/** Seconds below which a stroke is not played. Common practice. */
export const SHORTEST_STROKE = 0.06;

/** Notes a second: as a rule, in slow and in gay movements. Common practice. */
export const STROKES = { usual: 11, slow: 8.5, gay: 12.5 } as const;
/** Beats a minute below and above which a movement is slow or gay. Common practice. */
const PACE = { slow: 50, gay: 100 } as const;

/** How quick trills are where a beat lasts so long. */
export function paceOf(clock: Clock, beat: Time): Pick<Place, 'strokes' | 'slow'> {
  if (clock.unmeasured) return { strokes: STROKES.usual, slow: false };
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

/** Whether no hand plays a stroke of this length; in print the tempo does not matter. */
export const isTooQuick = (place: Place, stroke: Time): boolean =>
  place.grid === undefined && seconds(place, stroke) < SHORTEST_STROKE;

export const share = (length: Time, n: number, d: number): Time => multiply(length, time(n, d));

/**
 * The smallest value in print: a 32nd, or a 64th where the note is a quaver or less. In a tuplet it is that value of the
 * tuplet: two thirds of a 32nd among triplets, so that every length is a value that can be written there.
 */
export function gridOf(length: Time): Time {
  const value = toNumber(length) <= 1 / 8 ? 64 : 32;
  let among = Number(length.d);
  while (among % 2 === 0) among /= 2;
  const inTheTimeOf = 2 ** Math.floor(Math.log2(among));
  return divided(time(inTheTimeOf, among * value), length);
}

/** A value halved until a length is a multiple of it. */
function divided(value: Time, length: Time): Time {
  let part = value;
  while (divide(length, part).d !== 1) part = divide(part, time(2));
  return part;
}

/** A length on the grid of print, or as it is in performance. */
export function onGrid({ grid }: Pick<Place, 'grid'>, length: Time): Time {
  if (grid === undefined) return length;
  return multiply(grid, time(Math.round(toNumber(length) / toNumber(grid))));
}

/** One of so many equal parts, in print the longest that can be written. */
export function evenPart(length: Time, parts: number, { grid }: Pick<Place, 'grid'>): Time {
  const each = divide(length, time(parts));
  if (grid === undefined || isZero(each) || isNegative(each)) return each;
  const whole = Math.floor(toNumber(divide(each, grid)));
  return whole > 0 ? multiply(grid, time(whole)) : evenPart(length, parts, { grid: divide(grid, time(2)) });
}

/** As on the grid, but not nothing of something, and never more than there is. */
export function shareOnGrid(place: Pick<Place, 'grid'>, length: Time, whole: Time): Time {
  const rounded = onGrid(place, length);
  if (place.grid === undefined || isZero(length)) return rounded;
  return latest(earliest(rounded, subtract(whole, place.grid)), place.grid);
}
