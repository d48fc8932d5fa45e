/** Written values in the words of MusicXML. */
import {
  add,
  bigGcd,
  compare,
  divide,
  equal,
  format,
  isZero,
  multiply,
  subtract,
  type Time,
  time,
  ZERO,
} from '../../grammar/time';
import type { ValueForm } from '../../grammar/tree';

/** A value that can be drawn: a base and its dots. */
export interface NoteValue {
  /** As MusicXML's `note-type-value`. */
  readonly type: string;
  readonly base: Time;
  readonly dots: number;
}

/** MusicXML 4.0, simple type `note-type-value`, from the longest to the shortest. */
const TYPES: readonly (readonly [Time, string])[] = [
  [time(8), 'maxima'],
  [time(4), 'long'],
  [time(2), 'breve'],
  [time(1), 'whole'],
  [time(1, 2), 'half'],
  [time(1, 4), 'quarter'],
  [time(1, 8), 'eighth'],
  [time(1, 16), '16th'],
  [time(1, 32), '32nd'],
  [time(1, 64), '64th'],
  [time(1, 128), '128th'],
];

const TYPE_OF: ReadonlyMap<string, string> = new Map(TYPES.map(([base, type]) => [format(base), type]));

/** The value of a base with so many dots; undefined where MusicXML has no such base. */
export function noteValue(base: Time, dots: number): NoteValue | undefined {
  const type = TYPE_OF.get(format(base));
  return type === undefined ? undefined : { type, base, dots };
}

/** The value as the source writes it, without its proportion. */
export const writtenValue = (form: ValueForm | undefined): NoteValue | undefined =>
  form === undefined ? undefined : noteValue(form.base, form.dots);

/** Length of a value without proportion: each dot adds half of what stands before it. */
export function nominal(value: NoteValue): Time {
  let length = value.base;
  let dot = value.base;
  for (let i = 0; i < value.dots; i++) {
    dot = multiply(dot, time(1, 2));
    length = add(length, dot);
  }
  return length;
}

/** Values of one dot or none, the longest first. */
const PIECES: readonly (readonly [Time, NoteValue])[] = TYPES.flatMap(([base, type]) =>
  [1, 0].map((dots): readonly [Time, NoteValue] => {
    const value = { type, base, dots };
    return [nominal(value), value];
  }),
);

/** The values that tied together last so long, the longest first; undefined where no drawn values do. */
export function decompose(duration: Time): readonly NoteValue[] | undefined {
  const values: NoteValue[] = [];
  let rest = duration;
  for (const [length, value] of PIECES) {
    while (compare(length, rest) <= 0) {
      values.push(value);
      rest = subtract(rest, length);
    }
  }
  return isZero(rest) && values.length > 0 ? values : undefined;
}

/** Beams or flags of a value: 1 of a quaver, 2 of a semiquaver; 0 from the crotchet up. */
export function flags(value: NoteValue | undefined): number {
  const index = TYPES.findIndex(([, type]) => type === value?.type);
  return Math.max(0, index - 5);
}

/** Whether a note of this value bears a stem: all but the semibreve and breve. */
export const hasStem = (value: NoteValue | undefined): boolean =>
  value !== undefined && value.type !== 'whole' && value.type !== 'breve';

/** `actual` notes in the time of `normal`. */
export interface Ratio {
  readonly actual: number;
  readonly normal: number;
}

/** How a value must be shortened or lengthened to last so long; undefined where it need not be. */
export function ratioOf(value: NoteValue | undefined, duration: Time): Ratio | undefined {
  if (value === undefined || isZero(duration)) return undefined;
  const length = nominal(value);
  if (equal(length, duration)) return undefined;
  const ratio = divide(length, duration);
  return { actual: Number(ratio.n), normal: Number(ratio.d) };
}

/** The time that a ratio of so many in the time of so many makes of a length. */
export const inRatio = (length: Time, ratio: Ratio): Time => multiply(length, time(ratio.normal, ratio.actual));

/** Divisions of a crotchet needed for all these times to be whole numbers. */
export function divisionsFor(times: Iterable<Time>): bigint {
  let divisions = 1n;
  for (const t of times) {
    const d = BigInt(multiply(t, time(4)).d);
    if (divisions % d !== 0n) divisions = (divisions * d) / bigGcd(divisions, d);
  }
  return divisions;
}

/** A time as a whole number of divisions, for `duration`. */
export function inDivisions(t: Time, divisions: bigint): string {
  const quarters = multiply(t, time(4));
  return `${(BigInt(quarters.n) * divisions) / BigInt(quarters.d)}`;
}

/** A decimal with up to four places, for tempi and shares, where exactness ends. */
export const decimal = (value: number): string => `${Math.round(value * 10_000) / 10_000}`;

export const total = (values: Iterable<NoteValue>): Time => {
  let length = ZERO;
  for (const value of values) length = add(length, nominal(value));
  return length;
};
