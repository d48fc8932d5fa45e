/**
 * What makes notes equal that would be unequal: facts of inequality (from memory unless said otherwise) name the words, dots
 * or strokes, leaps, repeated notes, curves over more than two, triplets, syncopation, smaller values among them.
 */
import { add, equal, isMultiple, multiply, subtract, time, wholeTimes } from '../../grammar/time';
import { degreeOf } from '../score/heights';
import type { AppliedMark } from '../score/score';
import type { Cell, Member } from './inegal';
import { isNote, isStruck, type Stroke } from './lines';
import type { View } from './view';

/** A mark in the lane says that these are unequal, whatever would make them equal. */
export const isMarked = ({ acting }: Member): boolean => acting.span !== undefined;

// ─── what forbids it to all voices ───────────────────────────────────────────────────────────────────────────────

export const forbids = (view: View, cell: Cell): boolean =>
  !cell.members.some(isMarked) &&
  (cell.members.some((member) => isDotted(view, member)) || hasSmaller(view, cell) || view.words.equalAt(cell.onset));

/** Dots or strokes over the notes; a dot over the second of two under one curve says that it is the longer one. */
const isDotted = (view: View, { first, second }: Member): boolean =>
  isDetached(first) || (isDetached(second) && !leansOnSecond(view, { first, second }));

/** Two notes under a curve with a dot over the second, which is the more leaned on (Couperin, table of 1713, from memory). */
export const leansOnSecond = ({ curves }: View, { first, second }: Pick<Member, 'first' | 'second'>): boolean =>
  curves.pairTo(second) && isDetached(second) && !isDetached(first);

const isDetached = ({ placed: { event } }: Stroke): boolean =>
  event.marks.some(detaches) || event.members.some(({ marks }) => marks.some(detaches));

const detaches = ({ form }: AppliedMark): boolean =>
  form.type === 'other' && (form.name === 'dot' || form.name === 'stroke');

/** Triplets and smaller values anywhere in the beat, in any voice that the practice is for. */
function hasSmaller(view: View, { grid, onset, unit }: Cell): boolean {
  const { start, beat } = grid;
  const from = add(start, multiply(beat, time(wholeTimes(subtract(onset, start), beat))));
  return view.lines.some((line) =>
    line
      .beginningIn(from, add(from, beat))
      .some(
        (stroke) => !isMultiple(subtract(stroke.onset, start), unit) && view.ruling.at('inegal', stroke) !== undefined,
      ),
  );
}

// ─── why a voice does not ask for it ─────────────────────────────────────────────────────────────────────────────

/** Whether what a voice has there is no pair that would be unequal by itself. */
export function asksNot(view: View, cell: Cell, member: Member): boolean {
  const { first, second, acting } = member;
  if (!isPair(cell, member)) return true;
  if (isMarked(member)) return false;
  if (isRepeated(first, second)) return true;
  return view.curves.longTo(second) || (acting.how.stepwise && !goesByStep(member));
}

/** Two of the value, the second struck anew: neither tied over, which is syncopation, nor dotted. A rest may be the first. */
const isPair = ({ onset, unit }: Cell, { first, second }: Member): boolean =>
  isStruck(second) &&
  first.placed.event.kind !== 'lost' &&
  equal(first.onset, onset) &&
  equal(second.end, add(second.onset, unit)) &&
  second.placed.event.members.every(({ tie }) => tie === undefined);

const isRepeated = (first: Stroke, second: Stroke): boolean =>
  isNote(first) && degrees(first).join() === degrees(second).join();

/** The two of the pair, and the way to it. */
function goesByStep({ line, first, second }: Member): boolean {
  const before = line.before(first);
  return !isLeap(first, second) && (before === undefined || !isLeap(before, first));
}

/** More than a step between the highest notes; to or from a rest there is none. */
export function isLeap(first: Stroke, second: Stroke): boolean {
  if (!isNote(first) || !isNote(second)) return false;
  return Math.abs(Math.max(...degrees(first)) - Math.max(...degrees(second))) > 1;
}

const degrees = ({ placed }: Stroke): number[] => placed.event.members.map(degreeOf).sort((a, b) => a - b);
