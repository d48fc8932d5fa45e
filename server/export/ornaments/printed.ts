/**
 * Lengths as values that can be printed: as they are where standard values have them, equal ones as a tuplet, or else
 * rounded to the smallest value of the place.
 */
import {
  add,
  compare,
  divide,
  equal,
  isZero,
  multiply,
  subtract,
  sum,
  type Time,
  time,
  toNumber,
  ZERO,
} from '../../../grammar/time';
import type { Tuplet } from '../../score/score';
import { decompose, type NoteValue, nominal, noteValue } from '../values';

/** One drawn value. */
export interface PrintedValue {
  readonly value: NoteValue;
  readonly tuplet: Tuplet | undefined;
  /** Its time, the tuplet counted. */
  readonly length: Time;
}

const THIRTY_SECOND = time(1, 32);
const SIXTY_FOURTH = time(1, 64);
/** The shortest value that MusicXML, MEI and the font all draw with its flags. */
const SHORTEST = time(1, 128);

/** The smallest value in print: a 32nd, of a quaver or less a 64th. Common practice. */
const smallestIn = (whole: Time): Time => (compare(whole, time(1, 8)) <= 0 ? SIXTY_FOURTH : THIRTY_SECOND);

/**
 * For each of the lengths that follow one another the values that tied together stand for it; undefined where there are more
 * of them than values could be told apart.
 * @param lengths before any proportion around them
 * @param begins where the first stands in its bar
 * @param written the value of the whole, which it keeps where it is not divided
 */
export function printed(
  lengths: readonly Time[],
  begins: Time,
  written: NoteValue | undefined,
): readonly (readonly PrintedValue[])[] | undefined {
  const whole = sum(lengths);
  if (lengths.length === 1 && written !== undefined && equal(nominal(written), whole)) return [[plain(written)]];
  const smallest = smallestIn(whole);
  const exact = inValues(lengths, begins, smallest);
  if (exact !== undefined) return exact;
  for (let grid = smallest; compare(grid, SHORTEST) >= 0; grid = divide(grid, time(2))) {
    const rounded = roundedTo(grid, lengths);
    const values = rounded && inValues(rounded, begins, grid);
    if (values !== undefined) return values;
  }
  return undefined;
}

// ─── as they are ─────────────────────────────────────────────────────────────────────────────────────────────────

/** Every length in values of the grid, several equal ones in those between, or in a tuplet. */
function inValues(lengths: readonly Time[], begins: Time, grid: Time): PrintedValue[][] | undefined {
  const all: PrintedValue[][] = [];
  let at = begins;
  for (let i = 0; i < lengths.length; ) {
    const length = lengths[i] ?? ZERO;
    const equals = equalsFrom(lengths, i);
    const fits = isMultiple(length, equals > 2 ? divide(grid, time(2)) : grid);
    const single = fits ? inOneOrTied(length, at) : undefined;
    const group = single === undefined ? equals : 1;
    const found = single === undefined ? inTuplet(length, group) : [single];
    if (found === undefined) return undefined;
    all.push(...found);
    at = add(at, multiply(length, time(group)));
    i += group;
  }
  return all;
}

const isMultiple = (length: Time, of: Time): boolean => divide(length, of).d === 1 && !isZero(length);

const plain = (value: NoteValue): PrintedValue => ({ value, tuplet: undefined, length: nominal(value) });

/** The longest value first where the beat allows that, else last; a long one between two quavers is divided at the next. */
function inOneOrTied(length: Time, at: Time): PrintedValue[] | undefined {
  const values = decompose(length);
  const [longest] = values ?? [];
  if (values === undefined || longest === undefined) return undefined;
  if (compare(longest.base, CROTCHET) >= 0 && !isMultipleOrZero(at, SEMIQUAVER)) {
    const next = multiply(QUAVER, time(Math.ceil(toNumber(divide(at, QUAVER)))));
    const [first, rest] = [decompose(subtract(next, at)), decompose(subtract(add(at, length), next))];
    return first && rest && [...first, ...rest].map(plain);
  }
  return (isMultipleOrZero(at, longest.base) ? values : [...values].reverse()).map(plain);
}

const [CROTCHET, QUAVER, SEMIQUAVER] = [time(1, 4), time(1, 8), time(1, 16)];

const isMultipleOrZero = (at: Time, of: Time): boolean => divide(at, of).d === 1;

function equalsFrom(lengths: readonly Time[], from: number): number {
  const length = lengths[from] ?? ZERO;
  const end = lengths.findIndex((other, i) => i > from && !equal(other, length));
  return (end < 0 ? lengths.length : end) - from;
}

/** So many notes in the time of the next smaller power of two, if together they last as long as one plain value. */
function inTuplet(length: Time, count: number): PrintedValue[][] | undefined {
  const whole = noteValue(multiply(length, time(count)), 0);
  const normal = 2 ** Math.floor(Math.log2(Math.max(1, count)));
  if (whole === undefined || normal === count) return undefined;
  const unit = divide(whole.base, time(normal));
  const value = compare(unit, SHORTEST) < 0 ? undefined : noteValue(unit, 0);
  if (value === undefined) return undefined;
  const tuplet: Tuplet = { n: count, m: normal, drawn: true, unit, complete: true, marks: [], annotations: [] };
  return Array.from({ length: count }, () => [{ value, tuplet, length }]);
}

// ─── rounded ─────────────────────────────────────────────────────────────────────────────────────────────────────

/** The lengths between the nearest lines of a grid; undefined where one would vanish or the end would move. */
function roundedTo(grid: Time, lengths: readonly Time[]): Time[] | undefined {
  let end = ZERO;
  let before = ZERO;
  const rounded: Time[] = [];
  for (const length of lengths) {
    end = add(end, length);
    const line = nearestLine(end, grid);
    if (compare(line, before) <= 0) return undefined;
    rounded.push(subtract(line, before));
    before = line;
  }
  return equal(before, end) ? rounded : undefined;
}

const nearestLine = (at: Time, grid: Time): Time => multiply(grid, time(Math.round(toNumber(divide(at, grid)))));
