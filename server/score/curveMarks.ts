/** The marks of curves in a system in the order in which curves begin and end. */
import { add, compare, type Time, ZERO } from '../../grammar/time';
import type { MarkForm } from '../../grammar/tree';
import type { VoiceBars } from './bars';
import type { CurveMark, EndingMark } from './curves';
import type { LaneEvent } from './event';
import type { AppliedMark, CurveEnd, DrawnBarline } from './score';

/** A voice with the marks that its notes and barlines bear. */
export interface MarkedVoice {
  readonly voice: number;
  readonly events: readonly LaneEvent[];
  readonly bars: VoiceBars['bars'];
  readonly opening: DrawnBarline | undefined;
}

/** A mark with its place. */
interface PlacedMark {
  readonly mark: CurveMark | EndingMark;
  readonly bar: number;
  readonly onset: Time;
  /** Index of its event in its voice; of a barline the event that follows it. */
  readonly event: number;
  /** A barline stands before the event that follows it, an ending before all else of its bar. */
  readonly rank: 'ending' | 'barline' | 'event';
}

const RANKS = { ending: 0, barline: 1, event: 2 } as const;

const byEvent = (a: PlacedMark, b: PlacedMark): number => a.event - b.event || RANKS[a.rank] - RANKS[b.rank];

/**
 * All marks of curves, and the endings that begin: in one voice as its events stand, of several voices what comes first in
 * time, so that a named curve may end in another voice.
 */
export function marksInOrder(
  voices: readonly MarkedVoice[],
  endings: ReadonlyMap<number, number>,
): readonly (CurveMark | EndingMark)[] {
  const lists: PlacedMark[][] = [];
  for (const voice of voices) lists.push([...onEvents(voice), ...onBarlines(voice)].sort(byEvent));
  const begun = [...endings]
    .sort(([a], [b]) => a - b)
    .map(([bar, ending]): PlacedMark => ({ mark: { ending }, bar, onset: ZERO, event: 0, rank: 'ending' }));
  return merged([begun, ...lists]).map(({ mark }) => mark);
}

export const isCurve = ({ type }: MarkForm): boolean => type === 'curveStart' || type === 'curveEnd';
const bearsCurve = (marks: readonly AppliedMark[]): boolean => {
  for (const { form } of marks) if (isCurve(form)) return true;
  return false;
};
const isOnCurve = ({ marks, members }: LaneEvent): boolean => {
  if (bearsCurve(marks)) return true;
  for (const member of members) if (bearsCurve(member.marks)) return true;
  return false;
};

function onEvents({ voice, events }: MarkedVoice): PlacedMark[] {
  const found: PlacedMark[] = [];
  // Most events bear none.
  for (let index = 0; index < events.length; index++) {
    const event = events[index] as LaneEvent;
    if (isOnCurve(event)) for (const mark of onEvent(voice, event, index)) found.push(mark);
  }
  return found;
}

function onEvent(voice: number, event: LaneEvent, index: number): PlacedMark[] {
  const pitches = event.members.map(({ spelling, octave, alteration }) => ({
    letter: spelling.letter,
    octave,
    alteration,
  }));
  const take = (marks: readonly AppliedMark[], member: number | undefined): PlacedMark[] =>
    marks
      .filter(({ form }) => isCurve(form))
      .map(({ form, source }) => {
        const end: CurveEnd = { voice, event: index, member, onBarline: false, form, source };
        const on = member === undefined ? pitches : pitches.slice(member, member + 1);
        const { bar, onset } = event;
        return { mark: { form, end, pitches: on }, bar, onset, event: index, rank: 'event' };
      });
  return [...take(event.marks, undefined), ...event.members.flatMap((member, m) => take(member.marks, m))];
}

function onBarlines({ voice, events, bars, opening }: MarkedVoice): PlacedMark[] {
  const found = onBarline(voice, events, 0, opening);
  let count = 0;
  for (const { bar } of bars) {
    count += bar.events.length;
    for (const mark of onBarline(voice, events, count, bar.closing)) found.push(mark);
  }
  return found;
}

function onBarline(
  voice: number,
  events: readonly LaneEvent[],
  event: number,
  barline: DrawnBarline | undefined,
): PlacedMark[] {
  if (barline === undefined || barline.marks.length === 0) return [];
  const before = events[event - 1];
  const onset = before === undefined ? ZERO : add(before.onset, before.duration);
  return barline.marks
    .filter(({ form }) => isCurve(form))
    .map(({ form, source }) => {
      const end: CurveEnd = { voice, event, member: undefined, onBarline: true, form, source };
      return { mark: { form, end, pitches: [] }, bar: barOf(form, before), onset, event, rank: 'barline' };
    });
}

/** What begins on a barline belongs to the bar after it, so that it may lead into a further ending. */
const barOf = ({ type }: MarkForm, before: LaneEvent | undefined): number =>
  before === undefined ? 0 : before.bar + (type === 'curveStart' ? 1 : 0);

/** An ending begins before all else of its bar. */
const comesFirst = (a: PlacedMark, b: PlacedMark): number =>
  a.bar - b.bar ||
  (a.rank === 'ending' ? -1 : b.rank === 'ending' ? 1 : compare(a.onset, b.onset) || RANKS[a.rank] - RANKS[b.rank]);

function merged(lists: readonly (readonly PlacedMark[])[]): PlacedMark[] {
  // Most voices have none.
  const waiting = lists.filter(({ length }) => length > 0).map((marks) => ({ marks, next: 0 }));
  const all: PlacedMark[] = [];
  for (;;) {
    let first: (typeof waiting)[number] | undefined;
    for (const one of waiting) {
      const [a, b] = [first?.marks[first.next], one.marks[one.next]];
      if (b !== undefined && (a === undefined || comesFirst(b, a) < 0)) first = one;
    }
    const mark = first?.marks[first.next++];
    if (mark === undefined) return all;
    all.push(mark);
  }
}
