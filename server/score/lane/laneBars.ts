/** The bars of a lane while it is read: the one that events go into, how it ends, and in which bar a problem lies. */
import type { FindingCode } from '../../../grammar/findings/catalogue';
import type { Fix, Slots } from '../../../grammar/findings/finding';
import { type Time, ZERO } from '../../../grammar/time';
import type { Span } from '../../../grammar/tree';
import { type Around, type EventLane, type LaneEvent, numberOf, surround } from '../event';
import type { RawBar } from '../rawBars';
import type { DrawnBarline, Source } from '../score';
import { gatherProportions, tupletSlots } from './proportions';
import type { LaneTask } from './task';

const none: readonly never[] = [];

const newBar = (lane: EventLane, pos: number): RawBar => ({
  events: [],
  lane,
  changes: none,
  omissions: none,
  time: ZERO,
  fills: false,
  through: false,
  broken: false,
  closing: undefined,
  closingOmitted: false,
  empty: true,
  blank: undefined,
  at: { pos, len: 1 },
});

export class LaneBars {
  readonly lane: EventLane;
  /** Those that have ended. */
  readonly ended: RawBar[] = [];
  current: RawBar;
  /** The time that has passed in the current bar. */
  offset: Time = ZERO;
  /** The segment that is being read holds something that was not understood. */
  junk = false;
  /** Events of the current bar, options counted as one. */
  count = 0;

  constructor(private readonly task: LaneTask) {
    this.lane = { voice: task.voice, index: task.index, name: task.name };
    this.current = newBar(this.lane, 0);
  }

  get lastEvent(): LaneEvent | undefined {
    return this.current.events.at(-1) ?? this.ended.at(-1)?.events.at(-1);
  }

  report(
    code: FindingCode,
    at: Span,
    slots: Slots = {},
    fixes: readonly Fix[] = none,
    bar: number = this.ended.length,
  ): void {
    this.task.report(code, at, { voice: this.task.name, ...slots }, { bar, fixes });
  }

  source(at: Span): Source {
    return { lane: this.task.index, pos: at.pos, len: at.len };
  }

  /** The number of the event that comes next, among the events around it. */
  nextNumber({ numbering }: Around): number {
    return numbering === undefined ? numberOf(this.ended.length + 1, ++this.count) : ++numbering.count;
  }

  /** @param closing undefined where the lane ends without a barline, or the barline is omitted */
  end(closing: DrawnBarline | undefined): void {
    const bar = this.current;
    bar.closing = closing;
    bar.time = this.offset;
    settleSmallNotes(bar.events);
    this.gatherTuplets(bar);
    this.ended.push(bar);
    this.current = newBar(this.lane, bar.at.pos + bar.at.len);
    this.offset = ZERO;
    this.count = 0;
  }

  /** A group that the system end parts, or of which something is omitted, cannot be judged here. */
  private gatherTuplets({ events, omissions, closing, closingOmitted }: RawBar): void {
    const parted = closing === undefined && !closingOmitted;
    const continues = this.task.continues && this.ended.length === 0;
    for (const group of gatherProportions(events)) {
      const atEnd = parted && group.events.at(-1) === events.findLast(takesTime);
      const atStart = continues && group.events[0] === events.find(takesTime);
      const first = group.events[0];
      if (atEnd || atStart || omissions.length > 0 || first === undefined) continue;
      this.report('tuplet-incomplete', first.source, tupletSlots(group.proportion));
    }
  }
}

const takesTime = ({ small }: LaneEvent): boolean => small === undefined;

const toPrevious = ({ small }: Around): Partial<Around> => ({
  small: small && { to: 'previous', group: small.group },
});

/** Small notes at the end of a bar belong to the event before them. */
function settleSmallNotes(events: readonly LaneEvent[]): void {
  const last = events.findLastIndex(takesTime);
  if (last >= 0 && last < events.length - 1) surround(events.slice(last + 1), toPrevious);
}
