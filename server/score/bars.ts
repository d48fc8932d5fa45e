/** Bars of a system: the lanes laid beside one another in time. */

import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Fix, Slots } from '../../grammar/findings/finding';
import {
  add,
  compare,
  divide,
  earliest,
  equal,
  isNegative,
  isZero,
  latest,
  subtract,
  type Time,
  time,
  ZERO,
} from '../../grammar/time';
import type { Span } from '../../grammar/tree';
import { howMany } from './amounts';
import type { LaneEvent } from './event';
import type { RawBar } from './lane';
import { gapsOf } from './omissions';
import { type DrawnBarline, type InnerBarline, isSpecial, type LaneSum, type Meter } from './score';

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
function lastTimed(events: readonly LaneEvent[]): LaneEvent | undefined {
  for (let index = events.length - 1; index >= 0; index--) {
    const event = events[index];
    if (event !== undefined && event.small === undefined) return event;
  }
  return undefined;
}

export const isThrough = (bar: RawBar): boolean => lastTimed(bar.events)?.through === true;

/** Whether the last note begins before the barline and is meant to sound on after it. */
const runsThrough = (bar: RawBar, start: Time, whole: Time): boolean => {
  const last = lastTimed(bar.events);
  return last?.through === true && compare(add(start, last.onset), whole) < 0;
};

/** What a dot on the bar's last note adds, and the change of text that sets it; undefined where that would spoil other things. */
function dotFix(bar: RawBar, after: VoiceBars['bars']): LaneSum['dot'] {
  const last = bar.events.at(-1);
  const value = last?.value;
  if (last === undefined || value?.duration === undefined || value.proportion !== undefined) return undefined;
  if (last.tuplets.length > 0 || last.small !== undefined || last.spans.length > 0) return undefined;
  // Rival options take the same time; a lacuna has a value of its own.
  if (last.chosen.length > 0 || last.kind === 'lost') return undefined;
  const dotted = value.text.replace(/\??$/, '.$&');
  const typed = last.typed ?? { pos: last.source.pos, len: 0 };
  // A doubtful value does not stick, so nothing after it relied on it.
  const kept = value.doubtful ? [] : keepingValue(value.text, last.source.lane, after);
  if (kept === undefined) return undefined;
  const edits = [{ pos: typed.pos, len: typed.len, text: last.typed === undefined ? `${dotted} ` : dotted }, ...kept];
  return {
    adds: divide(value.base, time(1 << (value.dots + 1))),
    fix: { title: `write ${dotted} before the last note`, edits },
  };
}

/** What follows and had a value without typing it has it typed; undefined where that cannot be told. */
function keepingValue(text: string, lane: number, after: VoiceBars['bars']): Fix['edits'] | undefined {
  for (const entry of after) {
    // Rival options may have relied on the value, and so may what was not understood or stands in another lane.
    if (entry.lane !== lane || entry.bar.broken || entry.bar.omissions.length > 0) return undefined;
    for (const event of entry.bar.events) {
      if (event.chosen.length > 0) return undefined;
      // Small notes type their own values, which end with them; fillers and lacunae have none that sticks.
      if (event.small !== undefined || event.kind === 'lost' || event.typed?.form.doubtful === true) continue;
      if (event.typed !== undefined || event.tuplets.some(({ drawn }) => drawn)) return [];
      if (!event.fills) return [{ pos: event.source.pos, len: 0, text: `${text} ` }];
    }
  }
  return [];
}

export const sourceOf = (lane: number, bar: RawBar): LaneSum['source'] =>
  bar.events.at(-1)?.source ?? { lane, ...bar.at };

/** A barline with what stands on it in two lanes. */
const withAllOn = (barline: DrawnBarline, a: DrawnBarline, b: DrawnBarline): DrawnBarline =>
  a === b
    ? barline
    : {
        shape: barline.shape,
        editors: barline.editors,
        marks: [...a.marks, ...b.marks],
        annotations: [...a.annotations, ...b.annotations],
      };

/** The barline that the lanes agree on; a plain one agrees with any. */
function closingOf(voices: readonly VoiceBars[], index: number, report: ReportIn): DrawnBarline | undefined {
  let found: DrawnBarline | undefined;
  for (const { bars, name } of voices) {
    const entry = bars[index];
    const closing = entry?.bar.closing;
    if (entry === undefined || closing === undefined) continue;
    if (found === undefined || (!isSpecial(found) && isSpecial(closing))) {
      found = found === undefined ? closing : withAllOn(closing, found, closing);
    } else {
      if (isSpecial(closing) && closing.shape !== found.shape) {
        const { pos, len } = entry.bar.at;
        report(
          entry.lane,
          'barlines-disagree',
          { pos: pos + len - 1, len: 1 },
          { voice: name, here: closing.shape, there: found.shape },
          {
            bar: index,
          },
        );
      }
      found = withAllOn(found, found, closing);
    }
  }
  return found;
}

/** A lane's part in a bar that is laid. */
interface PresentBar {
  readonly v: number;
  readonly voice: number;
  readonly name: string;
  readonly lane: number;
  readonly bar: RawBar;
  /** How long a note of the bar before still sounds. */
  readonly run: Time;
  /** From the beginning of the bar, also where that lies in the system before. */
  readonly total: Time;
}

/** Nothing rare about it: what is typed fills the bar exactly. Most are so. */
const isPlain = ({ bar, run, total }: PresentBar, length: Time): boolean =>
  equal(total, length) &&
  !bar.fills &&
  !bar.through &&
  !bar.broken &&
  bar.blank === undefined &&
  bar.omissions.length === 0 &&
  isZero(run);

/**
 * Lays the bars of a measured or free system: each lane's n-th bar is the system's n-th.
 * @param elapsed time of the first bar that lies in the system before
 * @param meterOf the meter in force in a bar; undefined in free music
 */
export function layMeasured(
  voices: readonly VoiceBars[],
  elapsed: Time,
  meterOf: (bar: number) => Meter | undefined,
  report: ReportIn,
): Laid {
  const count = Math.max(0, ...voices.map(({ bars }) => bars.length));
  for (const { bars, name } of voices) {
    const last = bars.at(-1);
    if (bars.length === count || last === undefined) continue;
    report(
      last.lane,
      'bar-count',
      last.bar.at,
      { voice: name, have: howMany(bars.length, 'bar', 'bars'), need: count },
      { bar: bars.length - 1 },
    );
  }
  const running = voices.map((voice) => voice.runningOn);
  const starts = voices.map((): BarStart[] => []);
  const laid: LaidBar[] = [];
  let onset = ZERO;
  for (let index = 0; index < count; index++) {
    const bar = layBar(index, index === 0 ? elapsed : ZERO, onset);
    laid.push(bar);
    onset = add(onset, bar.duration);
  }
  return {
    bars: laid,
    voices: voices.map(({ voice }, v) => ({ voice, starts: starts[v] ?? [], runningOn: running[v] ?? ZERO })),
    duration: onset,
  };

  function layBar(index: number, before: Time, at: Time): LaidBar {
    const meter = meterOf(index);
    const present: PresentBar[] = [];
    voices.forEach(({ bars, name, voice }, v) => {
      const entry = bars[index];
      if (entry === undefined) return;
      const run = running[v] ?? ZERO;
      const total = add(before, add(run, entry.bar.time));
      present.push({ v, voice, name, lane: entry.lane, bar: entry.bar, run, total });
    });
    const closing = closingOf(voices, index, report);
    const isLast = index === count - 1;
    const open = closing === undefined && isLast;
    checkBreaks(index, present, closing, isLast);
    const length = open ? undefined : meter?.length;
    if (length !== undefined && present.every((one) => isPlain(one, length))) {
      for (const { v } of present) starts[v]?.push({ onset: at, filler: ZERO, gaps: none });
      const duration = subtract(length, before);
      return { onset: at, duration, elapsed: before, meter, closing, broken: false, sums: none, inner: none };
    }
    const known = present.filter(
      ({ bar, run }) => !bar.fills && !bar.broken && (bar.blank === undefined || !isZero(run)),
    );
    // What a witness leaves out is measured by the lanes that have it all, if there are any.
    const complete = known.filter(({ bar }) => bar.omissions.length === 0);
    // Beside a filler what is omitted leaves the bar as long as its meter says.
    const filled = present.some(({ bar }) => bar.fills);
    const sure = complete.length > 0 ? complete : filled ? [] : known;
    const totals = sure.map(({ total, bar }) =>
      length !== undefined && (isThrough(bar) || bar.blank !== undefined) && compare(total, length) > 0
        ? length
        : total,
    );
    const whole = consensus(totals, length, before, present);
    const duration = isNegative(subtract(whole, before)) ? ZERO : subtract(whole, before);
    const sums: LaneSum[] = [];
    let disagree = false;
    for (const { v, voice, name, lane, bar, run, total } of present) {
      const rest = subtract(subtract(duration, run), bar.time);
      const gaps = bar.fills || bar.broken ? [] : gapsOf(bar, rest);
      // Under a note that fills the bar from before, a filler has no time of its own.
      const onset = bar.fills ? earliest(add(at, run), add(at, duration)) : add(at, run);
      starts[v]?.push({ onset, filler: isNegative(rest) ? ZERO : rest, gaps });
      running[v] = ZERO;
      const over = subtract(total, whole);
      if (bar.blank !== undefined && compare(run, duration) < 0) {
        report(lane, 'empty-bar', bar.blank.at, { voice: name }, { bar: index, fixes: bar.blank.fixes });
        disagree = true;
        continue;
      }
      const covered = compare(run, duration) >= 0 && (bar.events.length === 0 || bar.fills);
      const runsOn = !bar.broken && (covered || runsThrough(bar, add(before, run), whole));
      if (runsOn && compare(over, ZERO) > 0) {
        running[v] = over;
        const last = lastTimed(bar.events);
        for (const event of bar.events) if (event !== last) reportThrough(event, lane, name, index);
        continue;
      }
      if (compare(over, ZERO) <= 0) for (const event of bar.events) reportThrough(event, lane, name, index);
      if (bar.broken) continue;
      if (bar.fills) {
        if (compare(over, ZERO) > 0 && !isZero(bar.time))
          sums.push({ voice, time: total, source: sourceOf(lane, bar), dot: undefined });
        continue;
      }
      const wanted = length ?? whole;
      if (equal(total, wanted) && equal(total, whole)) continue;
      // A witness that omits something may have less time than the meter asks for.
      if (bar.omissions.length > 0 && compare(over, ZERO) <= 0) continue;
      if (!equal(total, whole)) disagree = true;
      const after = voices[v]?.bars.slice(index + 1) ?? [];
      if (open) reportOpen(lane, bar, name, index);
      else sums.push({ voice, time: total, source: sourceOf(lane, bar), dot: dotFix(bar, after) });
    }
    return {
      onset: at,
      duration,
      elapsed: before,
      meter,
      closing,
      broken: disagree || present.some(({ bar }) => bar.broken),
      sums: sums.length === 0 ? none : sums.slice(),
      inner: none,
    };
  }

  function reportThrough(event: LaneEvent, lane: number, name: string, index: number): void {
    if (event.through) report(lane, 'through-without-need', event.source, { voice: name }, { bar: index });
  }

  function reportOpen(lane: number, bar: RawBar, name: string, index: number): void {
    report(lane, 'lanes-break-apart', sourceOf(lane, bar), { voice: name }, { bar: index });
  }

  function checkBreaks(
    index: number,
    present: readonly PresentBar[],
    closing: DrawnBarline | undefined,
    isLast: boolean,
  ): void {
    if (!isLast || closing === undefined) return;
    for (const { lane, bar, name } of present) {
      if (bar.closing === undefined && !bar.closingOmitted)
        report(lane, 'barline-missing', sourceOf(lane, bar), { voice: name }, { bar: index });
    }
  }
}

/** How long a bar is: the meter's length if any lane has it or none says otherwise, else the longest lane. */
function consensus(
  totals: readonly Time[],
  length: Time | undefined,
  before: Time,
  present: readonly PresentBar[],
): Time {
  if (totals.length === 0) return length ?? present.reduce((whole, one) => latest(whole, one.total), before);
  if (length !== undefined && totals.some((total) => equal(total, length))) return length;
  return totals.reduce(latest, before);
}
