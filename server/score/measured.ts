/** Bars of a measured or free system: the lanes laid beside one another in time. */
import {
  add,
  compare,
  earliest,
  equal,
  isNegative,
  isZero,
  latest,
  subtract,
  type Time,
  ZERO,
} from '../../grammar/time';
import { howMany } from './amounts';
import { mendingsOf } from './barMendings';
import {
  type BarStart,
  isThrough,
  type Laid,
  type LaidBar,
  type LaidVoice,
  lastTimed,
  none,
  type ReportIn,
  sourceOf,
  type VoiceBars,
} from './bars';
import type { LaneEvent } from './event';
import { gapsOf } from './omissions';
import type { RawBar } from './rawBars';
import { type DrawnBarline, isSpecial, type LaneSum, type Meter } from './score';

/** Whether the last note begins before the barline and is meant to sound on after it. */
const runsThrough = (bar: RawBar, start: Time, whole: Time): boolean => {
  const last = lastTimed(bar.events);
  return last?.through === true && compare(add(start, last.onset), whole) < 0;
};

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

/** A bar as it is laid among the lanes. */
interface Space {
  readonly index: number;
  /** Time of it that lies in the system before. */
  readonly before: Time;
  /** When it begins in this system, and how much of this system it takes. */
  readonly at: Time;
  readonly duration: Time;
  readonly whole: Time;
  /** What its meter asks for. */
  readonly length: Time | undefined;
  /** It goes on in the next system. */
  readonly open: boolean;
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

const areAllPlain = (present: readonly PresentBar[], length: Time): boolean => {
  for (const one of present) if (!isPlain(one, length)) return false;
  return true;
};

/** Lays the bars of a measured or free system, one after another. */
class MeasuredBars {
  private readonly count: number;
  /** By voice, how long a note of the bar before still sounds. */
  private readonly running: Time[] = [];
  private readonly starts: BarStart[][] = [];

  constructor(
    private readonly voices: readonly VoiceBars[],
    private readonly meters: readonly (Meter | undefined)[],
    private readonly report: ReportIn,
  ) {
    let count = 0;
    for (const { bars, runningOn } of voices) {
      count = Math.max(count, bars.length);
      this.running.push(runningOn);
      this.starts.push([]);
    }
    this.count = count;
  }

  lay(elapsed: Time): Laid {
    for (const voice of this.voices) this.checkCount(voice);
    const bars: LaidBar[] = [];
    let onset = ZERO;
    for (let index = 0; index < this.count; index++) {
      const bar = this.layBar(index, index === 0 ? elapsed : ZERO, onset);
      bars.push(bar);
      onset = add(onset, bar.duration);
    }
    const voices: LaidVoice[] = [];
    for (const [v, { voice }] of this.voices.entries())
      voices.push({ voice, starts: this.starts[v] ?? [], runningOn: this.running[v] ?? ZERO });
    return { bars, voices, duration: onset };
  }

  private checkCount({ bars, name }: VoiceBars): void {
    const last = bars.at(-1);
    if (bars.length === this.count || last === undefined) return;
    this.report(
      last.lane,
      'bar-count',
      last.bar.at,
      { voice: name, have: howMany(bars.length, 'bar', 'bars'), need: this.count },
      { bar: bars.length - 1 },
    );
  }

  /** @param before time of the bar that lies in the system before */
  private layBar(index: number, before: Time, at: Time): LaidBar {
    const meter = this.meters[index];
    const present = this.presentIn(index, before);
    const closing = closingOf(this.voices, index, this.report);
    const isLast = index === this.count - 1;
    const open = closing === undefined && isLast;
    if (isLast && closing !== undefined) this.checkBreaks(index, present);
    const length = open ? undefined : meter?.length;
    if (length !== undefined && areAllPlain(present, length)) {
      for (const { v } of present) this.starts[v]?.push({ onset: at, filler: ZERO, gaps: none });
      const duration = subtract(length, before);
      return { onset: at, duration, elapsed: before, meter, closing, broken: false, sums: none, inner: none };
    }
    const whole = wholeOf(present, length, before);
    const duration = isNegative(subtract(whole, before)) ? ZERO : subtract(whole, before);
    const space: Space = { index, before, at, whole, duration, length, open };
    const sums: LaneSum[] = [];
    let disagree = false;
    for (const one of present) if (this.layIn(one, space, sums)) disagree = true;
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

  private presentIn(index: number, before: Time): PresentBar[] {
    const present: PresentBar[] = [];
    for (let v = 0; v < this.voices.length; v++) {
      const { bars, name, voice } = this.voices[v] as VoiceBars;
      const entry = bars[index];
      if (entry === undefined) continue;
      const run = this.running[v] ?? ZERO;
      const total = add(before, add(run, entry.bar.time));
      present.push({ v, voice, name, lane: entry.lane, bar: entry.bar, run, total });
    }
    return present;
  }

  /** Lays a lane's part in a bar that is not plain; whether it disagrees with the others. */
  private layIn(present: PresentBar, space: Space, sums: LaneSum[]): boolean {
    const { v, voice, name, lane, bar, run, total } = present;
    const { index, before, at, whole, duration, length, open } = space;
    const rest = subtract(subtract(duration, run), bar.time);
    const gaps = bar.fills || bar.broken ? [] : gapsOf(bar, rest);
    // Under a note that fills the bar from before, a filler has no time of its own.
    const onset = bar.fills ? earliest(add(at, run), add(at, duration)) : add(at, run);
    this.starts[v]?.push({ onset, filler: isNegative(rest) ? ZERO : rest, gaps });
    this.running[v] = ZERO;
    const over = subtract(total, whole);
    if (bar.blank !== undefined && compare(run, duration) < 0) {
      this.report(lane, 'empty-bar', bar.blank.at, { voice: name }, { bar: index, fixes: bar.blank.fixes });
      return true;
    }
    const covered = compare(run, duration) >= 0 && (bar.events.length === 0 || bar.fills);
    const runsOn = !bar.broken && (covered || runsThrough(bar, add(before, run), whole));
    if (runsOn && compare(over, ZERO) > 0) {
      this.running[v] = over;
      this.reportThrough(present, index, lastTimed(bar.events));
      return false;
    }
    if (compare(over, ZERO) <= 0) this.reportThrough(present, index);
    if (bar.broken) return false;
    if (bar.fills) {
      if (compare(over, ZERO) > 0 && !isZero(bar.time))
        sums.push({ voice, time: total, source: sourceOf(lane, bar), mendings: none });
      return false;
    }
    const wanted = length ?? whole;
    if (equal(total, wanted) && equal(total, whole)) return false;
    // A witness that omits something may have less time than the meter asks for.
    if (bar.omissions.length > 0 && compare(over, ZERO) <= 0) return false;
    if (open) this.report(lane, 'lanes-break-apart', sourceOf(lane, bar), { voice: name }, { bar: index });
    else {
      const after = this.voices[v]?.bars.slice(index + 1) ?? [];
      const mendings = mendingsOf(bar, total, wanted, after);
      sums.push({ voice, time: total, source: sourceOf(lane, bar), mendings });
    }
    return !equal(total, whole);
  }

  /** @param apart the one event that has to run through the barline */
  private reportThrough({ bar, lane, name }: PresentBar, index: number, apart?: LaneEvent): void {
    for (const event of bar.events) {
      if (event.through && event !== apart)
        this.report(lane, 'through-without-need', event.source, { voice: name }, { bar: index });
    }
  }

  private checkBreaks(index: number, present: readonly PresentBar[]): void {
    for (const { lane, bar, name } of present) {
      if (bar.closing === undefined && !bar.closingOmitted)
        this.report(lane, 'barline-missing', sourceOf(lane, bar), { voice: name }, { bar: index });
    }
  }
}

/**
 * Lays the bars of a measured or free system: each lane's n-th bar is the system's n-th.
 * @param elapsed time of the first bar that lies in the system before
 * @param meters by bar, those in force; undefined in free music
 */
export const layMeasured = (
  voices: readonly VoiceBars[],
  elapsed: Time,
  meters: readonly (Meter | undefined)[],
  report: ReportIn,
): Laid => new MeasuredBars(voices, meters, report).lay(elapsed);

/** How long a bar is by what its lanes have in it. */
function wholeOf(present: readonly PresentBar[], length: Time | undefined, before: Time): Time {
  const known = present.filter(
    ({ bar, run }) => !bar.fills && !bar.broken && (bar.blank === undefined || !isZero(run)),
  );
  // What a witness leaves out is measured by the lanes that have it all, if there are any.
  const complete = known.filter(({ bar }) => bar.omissions.length === 0);
  // Beside a filler what is omitted leaves the bar as long as its meter says.
  const filled = present.some(({ bar }) => bar.fills);
  const sure = complete.length > 0 ? complete : filled ? [] : known;
  const totals = sure.map(({ total, bar }) =>
    length !== undefined && (isThrough(bar) || bar.blank !== undefined) && compare(total, length) > 0 ? length : total,
  );
  return consensus(totals, length, before, present);
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
