/** How long the notes of a sign are whose number is settled: pincés, turns, appoggiaturas, slides, cuts. */
import {
  add,
  compare,
  divide,
  earliest,
  isZero,
  latest,
  multiply,
  subtract,
  type Time,
  time,
  ZERO,
} from '../../grammar/time';
import { lasting, partOf } from '../score/clock';
import { type Atom, isFixed, isMain, type Slice, sumOf, withinNote } from './atoms';
import { evenPart, isTooQuick, type Place, SHORTEST_STROKE, seconds, shareOnGrid } from './place';

/** Seconds. A stroke lasts 60 to 90 ms; where a note has no time for that it has fewer strokes, or none. Common practice. */
export const STROKE = 0.075;
/** Each note of a slide lasts an eighth of its main note, but no longer than this. Common practice. */
const SLIDING = 0.09;
/** Up to the one a pincé has one pair of strokes, above the other a long one has three. Common practice. */
const PINCE = { one: 0.8, three: 1.8 } as const;
/** A turn over a longer note is played in its first crotchet, or in half a second. Common practice. */
const TURN = 0.5;
/** A cut note sounds at least so long; a suspended one is late by no more than this. Common practice. */
const CUT = { sounds: 0.08, late: 0.25 } as const;

/** The slices of atoms that fill a note; undefined where the note is too short for them. */
export function figure(atoms: readonly Atom[], place: Place): readonly Slice[] | undefined {
  const sized = atoms.map((atom) => withLean(atom, place));
  if (isTurn(sized) && seconds(place) > TURN) return turn(sized, place);
  const [first] = sized;
  if (first?.step === undefined && first !== undefined && isFixed(first)) return suspension(sized, first, place);
  const fixed = withinNote(sized, place);
  const room = subtract(place.length, sumOf(fixed.filter(isFixed).map(({ length }) => length)));
  return fixed.some(({ length }) => length === 'open') ? aroundOpen(fixed, room, place) : evenly(fixed, room, place);
}

const withLean = (atom: Atom, place: Place): Atom =>
  atom.length === 'lean' ? { step: atom.step, length: shareOnGrid(place, place.appoggiatura, place.length) } : atom;

// ─── turns ───────────────────────────────────────────────────────────────────────────────────────────────────────

const isTurn = (atoms: readonly Atom[]): boolean =>
  atoms.length >= 3 && atoms.every(({ length }) => length === 'quick');

/** All notes in the first crotchet, or in about half a second; then the last one stands. */
function turn(atoms: readonly Atom[], place: Place): Slice[] {
  const crotchet = time(1, 4);
  const fits = compare(crotchet, place.length) < 0 && seconds(place, crotchet) <= TURN;
  const group = fits ? crotchet : partOf(place.clock, place.length, TURN, 2);
  const stroke = printable(divide(group, time(atoms.length)), place);
  return [
    ...atoms.map(({ step }) => ({ step, length: stroke })),
    { step: atoms.at(-1)?.step, length: subtract(place.length, multiply(stroke, time(atoms.length))) },
  ];
}

/** In print the longest value that is no longer: the smallest, doubled as often as it can be. */
function printable(length: Time, { grid }: Place): Time {
  if (grid === undefined) return length;
  let value = grid;
  while (compare(value, length) > 0) value = divide(value, time(2));
  while (compare(multiply(value, time(2)), length) <= 0) value = multiply(value, time(2));
  return value;
}

// ─── cuts ────────────────────────────────────────────────────────────────────────────────────────────────────────

function suspension(atoms: readonly Atom[], silence: Slice, place: Place): readonly Slice[] | undefined {
  const late = shareOnGrid(
    place,
    earliest(silence.length, partOf(place.clock, place.length, CUT.late, 2)),
    place.length,
  );
  const rest = figure(atoms.slice(1), { ...place, length: subtract(place.length, late) });
  return rest && [{ step: undefined, length: late }, ...rest];
}

// ─── strokes around a note that stands ───────────────────────────────────────────────────────────────────────────

const isQuick = (atom: Atom | undefined): boolean => atom?.length === 'quick';

/** The share of its room that the note that stands keeps: half, or a third beside many strokes. */
const standing = (strokes: number): Time => (strokes <= 3 ? time(1, 2) : time(1, 3));

function aroundOpen(atoms: readonly Atom[], room: Time, place: Place): readonly Slice[] | undefined {
  const silent = atoms.some(({ step, length }) => length === 'open' && step === undefined);
  if (silent) return cut(atoms, room, place);
  for (let all = sizedPince(atoms, seconds(place, room)); ; ) {
    const strokes = all.filter(isQuick).length;
    const stroke =
      strokes === 0 ? ZERO : isSlide(all) ? slidingIn(room, strokes, place) : strokeIn(room, strokes, place);
    const fewer = withoutPair(all);
    if (strokes === 0 || isLongEnough(stroke, place, fewer !== undefined)) return filled(all, stroke, room);
    if (fewer === undefined) return undefined;
    all = fewer;
  }
}

/** As long as a hand needs; in print, where the sign could have fewer strokes, half of the smallest value. */
function isLongEnough(stroke: Time, place: Place, canBeFewer: boolean): boolean {
  if (place.grid === undefined) return !isTooQuick(place, stroke);
  return !canBeFewer || compare(stroke, divide(place.grid, time(2))) >= 0;
}

/** Two or more notes that lead to the main note, which is none of them. */
function isSlide(atoms: readonly Atom[]): boolean {
  const quick = atoms.filter(isQuick);
  return quick.length > 1 && quick.length < atoms.length && quick.every(({ step }) => !isMain(step));
}

/** An eighth of the note, or what a stroke has at least and what a slide has at most. In print it is the smallest value. */
function slidingIn(room: Time, strokes: number, place: Place): Time {
  const eighth = seconds(place, room) / 8;
  if (place.grid !== undefined) return strokeIn(room, strokes, place);
  return partOf(place.clock, room, Math.min(SLIDING, Math.max(SHORTEST_STROKE, eighth)), 2 * strokes);
}

/**
 * About as long as a stroke is, but the note that stands keeps its share, or, after two strokes on a short note, as much as one. In print it
 * is the smallest value.
 */
function strokeIn(room: Time, strokes: number, place: Place): Time {
  const most = divide(subtract(room, multiply(room, standing(strokes))), time(strokes));
  if (place.grid === undefined || isZero(most)) {
    const usual = partOf(place.clock, room, STROKE, strokes <= 3 ? strokes * 2 : strokes * 1.5);
    const isShort = isTooQuick(place, usual) && seconds(place, room) >= SHORTEST_STROKE * 3;
    return isShort && strokes <= 2 ? lasting(place.clock, SHORTEST_STROKE) : usual;
  }
  const half = divide(place.grid, time(2));
  if (compare(place.grid, most) <= 0) return place.grid;
  return compare(half, most) <= 0 ? half : evenPart(room, strokes + 1, { grid: half });
}

function filled(atoms: readonly Atom[], stroke: Time, room: Time): Slice[] {
  const strokes = atoms.filter(isQuick).length;
  const stands = subtract(room, multiply(stroke, time(strokes)));
  return atoms.map(({ step, length }) => ({
    step,
    length: length === 'quick' ? stroke : length === 'open' ? stands : (length as Time),
  }));
}

/** A pair of strokes fewer, where one says the same as that before it; undefined where none does. */
function withoutPair(atoms: readonly Atom[]): Atom[] | undefined {
  const isSame = (i: number): boolean =>
    isQuick(atoms[i]) && isQuick(atoms[i + 2]) && atoms[i]?.step?.step === atoms[i + 2]?.step?.step;
  const first = atoms.findIndex((_, index) => isSame(index) && isSame(index + 1));
  return first < 0 ? undefined : atoms.filter((_, index) => index !== first && index !== first + 1);
}

/** A long pincé on a short note is a short one, on a very long note it has one pair more. */
function sizedPince(atoms: readonly Atom[], duration: number): readonly Atom[] {
  const quick = atoms.filter(isQuick);
  const isLongPince = quick.length >= 4 && quick.every(({ step }) => isMain(step) || step?.step === -1);
  if (!isLongPince) return atoms;
  if (duration <= PINCE.one) return withoutPair(atoms) ?? atoms;
  if (duration <= PINCE.three) return atoms;
  const first = atoms.findIndex(isQuick);
  return [...atoms.slice(0, first), ...atoms.slice(first, first + 2), ...atoms.slice(first)];
}

/** A note cut short by silence: it sounds a least time, however short the value. */
function cut(atoms: readonly Atom[], room: Time, place: Place): readonly Slice[] | undefined {
  const sounding = atoms.filter(({ step }) => step !== undefined);
  const quick = sounding.filter(isQuick).length;
  const stroke = quick === 0 ? ZERO : strokeIn(room, quick, place);
  const sounds = subtract(place.length, subtract(room, multiply(stroke, time(quick))));
  if (seconds(place, sounds) >= CUT.sounds) return filled(atoms, stroke, room);
  if (seconds(place) < CUT.sounds) return undefined;
  const least = partOf(place.clock, place.length, CUT.sounds, 1);
  return filled(atoms, ZERO, room).map(({ step, length }) =>
    step === undefined
      ? { step, length: subtract(place.length, latest(sounds, least)) }
      : { step, length: latest(length, least) },
  );
}

// ─── what fills the note evenly ──────────────────────────────────────────────────────────────────────────────────

/** What has no length of its own shares what the rest leaves; where all have one, the last lasts to the end. */
function evenly(atoms: readonly Atom[], room: Time, place: Place): readonly Slice[] | undefined {
  const open = atoms.filter(isQuick).length;
  const each = open === 0 ? ZERO : evenPart(room, open, place);
  if (open > 1 && isTooQuick(place, each)) return undefined;
  const left = subtract(room, multiply(each, time(open)));
  return atoms.map((atom, index) => {
    const length = isFixed(atom) ? atom.length : each;
    return { step: atom.step, length: index === atoms.length - 1 ? add(length, left) : length };
  });
}
