/** Performed times as values that can be printed: as they are, in the tuplets of the source, or as a new triplet. */
import { add, compare, divide, multiply, sum, type Time, time } from '../../../grammar/time';
import type { Tuplet } from '../../score/score';
import type { PrintedValue } from '../ornaments/printed';
import { decompose, type NoteValue, nominal, noteValue } from '../values';

/** A note or rest of a passage that is played otherwise than it is written. */
export interface Timed {
  /** Performed. */
  readonly length: Time;
  /** The tuplets in which it is written. */
  readonly tuplets: readonly Tuplet[];
}

/** For each the values that tied together stand for it, and the tuplets in which they stand. */
export interface Noted {
  readonly values: readonly PrintedValue[];
  readonly tuplets: readonly Tuplet[];
}

/** The passage in standard values; undefined where it has none. One value for each is better than several that are tied. */
export function notated(passage: readonly Timed[]): readonly Noted[] | undefined {
  return (
    inTuplets(passage, single) ??
    plain(passage, single) ??
    asTriplet(passage) ??
    inTuplets(passage, tied) ??
    plain(passage, tied)
  );
}

type Drawn = (length: Time) => readonly NoteValue[] | undefined;

/** Up to two dots: what stands for a note that is stretched to a double dot. */
const MOST_DOTS = 2;
/** The shortest value that is drawn. */
const SHORTEST = time(1, 128);

function single(length: Time): readonly NoteValue[] | undefined {
  for (let dots = 0; dots <= MOST_DOTS; dots++) {
    const base = divide(length, nominal({ type: '', base: time(1), dots }));
    const value = compare(base, SHORTEST) < 0 ? undefined : noteValue(base, dots);
    if (value !== undefined) return [value];
  }
  return undefined;
}

const tied: Drawn = decompose;

const ratioOf = (tuplets: readonly Tuplet[]): Time =>
  tuplets.reduce<Time>((ratio, { n, m }) => multiply(ratio, time(n, m)), time(1));

/** In the tuplets where the source has them. */
function inTuplets(passage: readonly Timed[], drawn: Drawn): readonly Noted[] | undefined {
  if (passage.every(({ tuplets }) => tuplets.length === 0)) return undefined;
  return all(passage, ({ length, tuplets }) => {
    const ratio = ratioOf(tuplets);
    const values = drawn(multiply(length, ratio));
    return values && { tuplets, values: values.map((value) => printed(value, undefined, ratio)) };
  });
}

/** Without tuplets. */
const plain = (passage: readonly Timed[], drawn: Drawn): readonly Noted[] | undefined =>
  all(passage, ({ length }) => {
    const values = drawn(length);
    return values && { tuplets: [], values: values.map((value) => printed(value, undefined, time(1))) };
  });

/** Three in the time of two. */
function asTriplet(passage: readonly Timed[]): readonly Noted[] | undefined {
  const ratio = time(3, 2);
  const unit = divide(sum(passage.map(({ length }) => length)), time(2));
  if (noteValue(unit, 0) === undefined) return undefined;
  const tuplet: Tuplet = { n: 3, m: 2, drawn: true, unit, complete: true, marks: [], annotations: [] };
  return all(passage, ({ length }) => {
    const values = single(multiply(length, ratio));
    return values && { tuplets: [tuplet], values: values.map((value) => printed(value, tuplet, ratio)) };
  });
}

const printed = (value: NoteValue, tuplet: Tuplet | undefined, ratio: Time): PrintedValue => ({
  value,
  tuplet,
  length: divide(nominal(value), ratio),
});

function all(passage: readonly Timed[], noted: (timed: Timed) => Noted | undefined): readonly Noted[] | undefined {
  const found: Noted[] = [];
  for (const timed of passage) {
    const one = noted(timed);
    if (one === undefined) return undefined;
    found.push(one);
  }
  return found;
}

/** When each of the values of a note begins. */
export function onsetsOf(values: readonly PrintedValue[], from: Time): readonly Time[] {
  let at = from;
  return values.map(({ length }) => {
    const onset = at;
    at = add(at, length);
    return onset;
  });
}
