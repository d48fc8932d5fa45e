/** Short notes that lead to a beat: after a dot, or after a rest. */
import { add, compare, divide, equal, multiply, subtract, type Time, time } from '../../grammar/time';
import { type Grid, isGroup } from './grid';
import { filling, isNote, isStruck, type Line, type Stroke } from './lines';

export interface Figure {
  readonly line: Line;
  /** What is lengthened: the dotted note, what is tied to it, or the rest. */
  readonly long: Stroke;
  /** The dotted note without its dot; undefined of a rest. */
  readonly undotted: Time | undefined;
  readonly notes: readonly Stroke[];
  readonly onset: Time;
  readonly end: Time;
}

/** Notes longer than this keep their dots: dotted minims are played as written (Quantz 1752, V.20, XVII.vii.58). */
const LONGEST = time(1, 4);
const THREE_HALVES = time(3, 2);

const lengthOf = ({ onset, end }: { readonly onset: Time; readonly end: Time }): Time => subtract(end, onset);

/** A dotted note with what fills its group, three parts to one. */
function dottedAt(line: Line, long: Stroke, grid: Grid): Figure | undefined {
  const { value } = long.placed.event;
  if (value?.dots !== 1 || !isNote(long) || compare(value.base, LONGEST) > 0) return undefined;
  if (!equal(lengthOf(long), multiply(value.base, THREE_HALVES))) return undefined;
  if (!isGroup(grid, long.onset, multiply(value.base, time(2)))) return undefined;
  const notes = filling(line, long.index + 1, divide(value.base, time(2)));
  return figureOf(line, long, value.base, notes);
}

/** What may follow a rest as an upbeat figure: a semiquaver or a quaver in all. */
const AFTER_RESTS = [time(1, 16), time(1, 8)];

/** Notes after a rest that are to the beat as what follows a dot is to its group. */
function afterRestAt(line: Line, long: Stroke, grid: Grid): Figure | undefined {
  if (long.placed.event.kind !== 'rest') return undefined;
  for (const length of AFTER_RESTS) {
    const group = multiply(length, time(4));
    const notes = filling(line, long.index + 1, length);
    const figure = figureOf(line, long, undefined, notes);
    if (figure !== undefined && isGroup(grid, subtract(figure.end, group), group)) return figure;
  }
  return undefined;
}

/** Longer notes make no run; Quantz 1752, XVII.vii.58, speaks of demisemiquavers, three or more. */
const RUN = { longest: time(1, 32), fewest: 3 } as const;

export const isRun = (notes: readonly Stroke[]): boolean => notes.length >= RUN.fewest;

/** A run from a rest, or from a note that is tied to the one before it, to the next beat. */
function runAt(line: Line, long: Stroke, grid: Grid): Figure | undefined {
  if (isStruck(long)) return undefined;
  const notes = filling(line, long.index + 1, toNextBeat(grid, long.end)) ?? [];
  const isQuick = notes.every((note) => compare(lengthOf(note), RUN.longest) <= 0);
  return isRun(notes) && isQuick ? figureOf(line, long, undefined, notes) : undefined;
}

function figureOf(
  line: Line,
  long: Stroke,
  undotted: Time | undefined,
  notes: readonly Stroke[] | undefined,
): Figure | undefined {
  const [first] = notes ?? [];
  const last = notes?.at(-1);
  if (notes === undefined || first === undefined || last === undefined || !isStruck(first)) return undefined;
  return { line, long, undotted, notes, onset: first.onset, end: last.end };
}

/** The figures after dots and rests that end in a bar. */
export function figuresIn(line: Line, grid: Grid): Figure[] {
  const found: Figure[] = [];
  for (const stroke of line.beginningIn(grid.bar.onset, grid.end)) {
    const figure = dottedAt(line, stroke, grid) ?? afterRestAt(line, stroke, grid) ?? runAt(line, stroke, grid);
    if (figure !== undefined) found.push(figure);
  }
  return found;
}

/** Notes from a rest to the next beat or the end of the bar, no longer in all than half of a beat, or a third of a threefold one. */
export function upbeatsIn(line: Line, grid: Grid): Figure[] {
  const { bar, end, beat, division } = grid;
  const most = compare(beat, division) > 0 ? division : divide(beat, time(2));
  const found: Figure[] = [];
  for (const rest of line.beginningIn(bar.onset, end)) {
    if (rest.placed.event.kind !== 'rest') continue;
    const length = toNextBeat(grid, rest.end);
    const figure =
      compare(length, most) > 0 ? undefined : figureOf(line, rest, undefined, filling(line, rest.index + 1, length));
    if (figure !== undefined) found.push(figure);
  }
  return found;
}

function toNextBeat({ start, beat, end }: Grid, at: Time): Time {
  let next = start;
  while (compare(next, at) <= 0) next = add(next, beat);
  return subtract(compare(next, end) > 0 ? end : next, at);
}
