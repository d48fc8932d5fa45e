/** A lane read by itself: its bars before the other lanes, pitch and time in the system come in. */
import type { Fix } from '../../grammar/findings/finding';
import type { Time } from '../../grammar/time';
import type { ChangeItem, Span } from '../../grammar/tree';
import type { EventLane, LaneEvent } from './event';
import type { DrawnBarline, Source } from './score';

export interface RawChange {
  readonly change: ChangeItem;
  readonly offset: Time;
  readonly stave: number;
  readonly source: Source;
  /** No event of its bar stands before it. */
  readonly first: boolean;
}

/** What a witness leaves out here (`omit`), which takes time in the others. */
export interface Omission {
  /** From the beginning of the lane's bar. */
  readonly offset: Time;
  /** Index of the event before which it stands. */
  readonly event: number;
  /** What the first option that has something takes; undefined where that is not known. */
  readonly time: Time | undefined;
  readonly stave: number;
  readonly address: string;
  readonly source: Source;
}

export interface RawBar {
  readonly events: LaneEvent[];
  /** Whose its events are. */
  readonly lane: EventLane;
  changes: readonly RawChange[];
  omissions: readonly Omission[];
  /** Sum of what has a duration of its own, omissions left out. */
  time: Time;
  /** Its last event fills the bar, or the rest of it is lost. */
  fills: boolean;
  /** An event of it runs through the barline, or is meant to. */
  through: boolean;
  broken: boolean;
  closing: DrawnBarline | undefined;
  /** The barline at its end is one that the witness omits. */
  closingOmitted: boolean;
  /** Nothing at all is typed in it. */
  empty: boolean;
  /** Nothing stands where something should, unless a note still sounds from the bar before; and what would mend it. */
  blank: { readonly at: Span; readonly fixes: readonly Fix[] } | undefined;
  /** Place in the lane's text. */
  at: Span;
}

/** A lane read through. */
export interface ReadLane {
  readonly bars: readonly RawBar[];
  /** The barline before the first bar, where it is a special one or bears something. */
  readonly opening: DrawnBarline | undefined;
}
