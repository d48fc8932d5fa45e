/** A piece voice by voice: what is struck when, in written time. Small notes, at which time stands still, are left out. */
import { add, compare, equal, type Time } from '../../grammar/time';
import { lastBegun } from '../score/clock';
import type { Piece } from '../score/score';
import { eventsOf, type PlacedEvent } from '../score/walk';

/** A note or chord, rest, gap or lacuna where it is written. */
export interface Stroke {
  readonly placed: PlacedEvent;
  readonly onset: Time;
  readonly end: Time;
  /** Its place in its line. */
  readonly index: number;
}

export const isNote = ({ placed }: Stroke): boolean => placed.event.kind === 'note';

/** A note that is struck anew: at least one of its keys is not tied to what sounds. */
export const isStruck = ({ placed: { event } }: Stroke): boolean =>
  event.kind === 'note' && event.members.some(({ tiedFrom }) => !tiedFrom);

export class Line {
  constructor(
    readonly voice: number,
    readonly strokes: readonly Stroke[],
  ) {}

  /** What stands before one of its own strokes. */
  before({ index }: Stroke): Stroke | undefined {
    return this.strokes[index - 1];
  }

  /** What follows it. */
  after({ index }: Stroke): Stroke | undefined {
    return this.strokes[index + 1];
  }

  /** What begins at a moment; undefined where nothing does. */
  beginningAt(at: Time): Stroke | undefined {
    const stroke = lastBegun(this.strokes, at);
    return stroke !== undefined && equal(stroke.onset, at) ? stroke : undefined;
  }

  /** What begins in a stretch of time, its beginning included and its end left out. */
  beginningIn(from: Time, to: Time): readonly Stroke[] {
    const first = this.firstFrom(from);
    let end = first;
    while (beginsBefore(this.strokes[end], to)) end++;
    return this.strokes.slice(first, end);
  }

  /** Whether anything begins in a stretch of time. */
  hasBeginningIn(from: Time, to: Time): boolean {
    return beginsBefore(this.strokes[this.firstFrom(from)], to);
  }

  /** The index of what begins first at a moment or later. */
  private firstFrom(at: Time): number {
    const begun = lastBegun(this.strokes, at);
    if (begun === undefined) return 0;
    return equal(begun.onset, at) ? begun.index : begun.index + 1;
  }
}

const beginsBefore = (stroke: Stroke | undefined, to: Time): boolean =>
  stroke !== undefined && compare(stroke.onset, to) < 0;

/** Strokes that follow one another from an index on and fill a time exactly; undefined where they do not, or one is no note. */
export function filling({ strokes }: Line, first: number, length: Time): readonly Stroke[] | undefined {
  const begin = strokes[first];
  if (begin === undefined) return undefined;
  const end = add(begin.onset, length);
  const found: Stroke[] = [];
  for (let index = first; ; index++) {
    const stroke = strokes[index];
    if (stroke === undefined || !isNote(stroke) || compare(stroke.end, end) > 0) return undefined;
    found.push(stroke);
    if (compare(stroke.end, end) === 0) return found;
  }
}

/** The voices of a piece, as the environment orders them: read a system at a time. */
export function* readingLines(piece: Piece): Generator<undefined, readonly Line[]> {
  const strokes = new Map<number, Unnumbered[]>();
  let last: PlacedEvent | undefined;
  for (const placed of eventsOf(piece)) {
    const { event, onset, system } = placed;
    if (system !== last?.system) yield;
    last = placed;
    if (event.small !== undefined) continue;
    const own = strokes.get(event.voice) ?? [];
    own.push({ placed, onset, end: add(onset, event.duration), index: 0 });
    strokes.set(event.voice, own);
  }
  return [...strokes].sort(([a], [b]) => a - b).map(([voice, own]) => new Line(voice, inTime(own)));
}

/** Its place in its line is known when all are there. */
type Unnumbered = Stroke & { index: number };

function inTime(strokes: Unnumbered[]): Stroke[] {
  strokes.sort((a, b) => compare(a.onset, b.onset));
  for (const [index, stroke] of strokes.entries()) stroke.index = index;
  return strokes;
}
