/** How a piece is gone through from a moment on: to its end, or round and round. */
import type { PlayedNote } from '../../../server/features/protocol';
import type { Stretch, Timeline } from './timeline';

/** A string that is plucked, in seconds since the course was begun. */
export interface Struck {
  readonly note: PlayedNote;
  readonly at: number;
  readonly until: number;
}

/** No loop is shorter: it would be no music, and never end. */
const SHORTEST = 0.1;

export class Course {
  private readonly loop: Stretch | undefined;
  private readonly from: number;

  /** @param from seconds in the piece; outside the loop its beginning is taken */
  constructor(
    readonly timeline: Timeline,
    from: number,
    loop?: Stretch,
  ) {
    this.loop = loop !== undefined && loop.until - loop.from >= SHORTEST ? loop : undefined;
    this.from = this.loop === undefined || (this.loop.from <= from && from < this.loop.until) ? from : this.loop.from;
  }

  /** The second of the piece after so many seconds; undefined when it is over. */
  at(elapsed: number): number | undefined {
    const second = this.from + elapsed;
    if (this.loop === undefined) return second < this.timeline.length ? second : undefined;
    const { from, until } = this.loop;
    return second < until ? second : from + ((second - until) % (until - from));
  }

  /** What is struck between two moments of the course; what sounds at the end of the loop is let go there. */
  struckIn(begin: number, end: number): Struck[] {
    const found: Struck[] = [];
    for (const { stretch, shift } of this.laps(begin, end)) {
      for (const note of this.timeline.struckIn(stretch)) {
        const until = Math.min(note.until, this.loop?.until ?? note.until);
        found.push({ note, at: note.at + shift, until: until + shift });
      }
    }
    return found;
  }

  /** The stretches of the piece between two moments, and what is to be added to make moments of their seconds. */
  private *laps(begin: number, end: number): Generator<{ readonly stretch: Stretch; readonly shift: number }> {
    const { from, loop } = this;
    const first = loop === undefined ? Number.POSITIVE_INFINITY : loop.until - from;
    if (begin < first) yield { stretch: { from: from + begin, until: from + Math.min(end, first) }, shift: -from };
    if (loop === undefined) return;
    const length = loop.until - loop.from;
    const lap = Math.max(0, Math.floor((begin - first) / length));
    for (let start = first + lap * length; start < end; start += length) {
      const shift = start - loop.from;
      // At its ends the bars' own seconds are taken: what is begun with the loop must not be missed by a rounding.
      const stretch = {
        from: begin <= start ? loop.from : begin - shift,
        until: end >= start + length ? loop.until : end - shift,
      };
      if (stretch.until > stretch.from) yield { stretch, shift };
    }
  }
}
