/** Bars of a system before and after the lanes are laid beside one another in time. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Fix, Slots } from '../../grammar/findings/finding';
import type { Time } from '../../grammar/time';
import type { Span } from '../../grammar/tree';
import type { LaneEvent } from './event';
import type { RawBar } from './rawBars';
import type { DrawnBarline, InnerBarline, LaneSum, Meter } from './score';

/** A voice's bars as chosen among its lane and witness lanes. */
export interface VoiceBars {
  readonly voice: number;
  readonly name: string;
  readonly bars: readonly { readonly lane: number; readonly bar: RawBar }[];
  /** The barline before the first bar, where it is a special one or bears something. */
  readonly opening: DrawnBarline | undefined;
  /** Still sounding from the system before, through its barline. */
  readonly runningOn: Time;
}

/** Most bars have nothing of the kind, and share that. */
export const none: readonly never[] = [];

export interface LaidBar {
  readonly onset: Time;
  readonly duration: Time;
  /** Time of the bar that lies in the system before. */
  readonly elapsed: Time;
  readonly meter: Meter | undefined;
  readonly closing: DrawnBarline | undefined;
  readonly broken: boolean;
  readonly sums: readonly LaneSum[];
  readonly inner: readonly InnerBarline[];
}

export interface BarStart {
  readonly onset: Time;
  /** What a filler takes. */
  readonly filler: Time;
  /** How much empty time stands for each omission of the bar. */
  readonly gaps: readonly Time[];
}

export interface LaidVoice {
  readonly voice: number;
  /** By bar as typed: when its first event begins, and the time that fillers take. */
  readonly starts: readonly BarStart[];
  readonly runningOn: Time;
}

export interface Laid {
  readonly bars: readonly LaidBar[];
  readonly voices: readonly LaidVoice[];
  readonly duration: Time;
  /** Of a loose system, whose lanes have bars of their own: the common bar at a moment. */
  readonly barOf?: (onset: Time) => number;
}

export type ReportIn = (
  lane: number,
  code: FindingCode,
  at: Span,
  slots: Slots,
  more?: { readonly bar?: number; readonly fixes?: readonly Fix[] },
) => void;

/** Events of small notes take no time, so the last event of a bar is the last that does. */
export function lastTimed(events: readonly LaneEvent[]): LaneEvent | undefined {
  for (let index = events.length - 1; index >= 0; index--) {
    const event = events[index];
    if (event !== undefined && event.small === undefined) return event;
  }
  return undefined;
}

export const isThrough = (bar: RawBar): boolean => lastTimed(bar.events)?.through === true;

export const sourceOf = (lane: number, bar: RawBar): LaneSum['source'] =>
  bar.events.at(-1)?.source ?? { lane, ...bar.at };
