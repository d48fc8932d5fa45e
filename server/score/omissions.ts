/** What a witness leaves out (`omit`): bars that go with it, and empty time where the other lanes go on. */
import { add, compare, earliest, isZero, subtract, type Time, ZERO } from '../../grammar/time';
import type { BarStart, VoiceBars } from './bars';
import { type EventLane, LaneEvent, noExtras, noNotes, nothingAround } from './event';
import type { Omission, RawBar, RawChange } from './rawBars';

/** A bar of a voice, with the lane it was taken from. */
type Entry = VoiceBars['bars'][number];

const omits = ({ bar }: Entry): boolean => bar.omissions.length > 0;
const hasOmissions = ({ bars }: VoiceBars): boolean => bars.some(omits);

/**
 * The bars without those that every voice omits: a barline that all omit parts nothing, and a bar of which nothing is
 * left has no barline.
 * @param continues the first bar has begun in the system before, so that something of it is left
 */
export function withoutOmitted(voices: readonly VoiceBars[], continues: boolean): readonly VoiceBars[] {
  if (!voices.some(hasOmissions)) return voices;
  const groups = groupsOf(voices);
  const joined = voices.map((voice) => ({
    ...voice,
    bars: groups.flatMap((group) => joinedEntry(group.flatMap((index) => voice.bars[index] ?? []))),
  }));
  const count = Math.max(0, ...joined.map(({ bars }) => bars.length));
  const gone = new Set(
    Array.from({ length: count }, (_, index) => index).filter(
      (index) => !(continues && index === 0) && isGone(joined.map(({ bars }) => bars[index])),
    ),
  );
  return gone.size === 0 ? joined : joined.map((voice) => ({ ...voice, bars: kept(voice.bars, gone) }));
}

/** Indices of bars that make one bar when omitted barlines are taken away. */
function groupsOf(voices: readonly VoiceBars[]): number[][] {
  const count = Math.max(0, ...voices.map(({ bars }) => bars.length));
  const groups: number[][] = [];
  let group: number[] = [];
  for (let index = 0; index < count; index++) {
    group.push(index);
    const present = voices.flatMap(({ bars }) => bars[index] ?? []);
    if (index + 1 < count && present.every(({ bar }) => bar.closingOmitted)) continue;
    groups.push(group);
    group = [];
  }
  return groups;
}

const joinedEntry = (entries: readonly Entry[]): Entry[] => {
  const [first, ...rest] = entries;
  return first === undefined ? [] : [rest.reduce((a, b) => ({ lane: a.lane, bar: joinedBar(a.bar, b.bar) }), first)];
};

function joinedBar(a: RawBar, b: RawBar): RawBar {
  const later = <T extends { readonly offset: Time }>(one: T): T => ({ ...one, offset: add(a.time, one.offset) });
  return {
    events: [...a.events, ...b.events.map((event) => event.movedBy(a.time))],
    lane: a.lane,
    changes: [
      ...a.changes,
      ...b.changes.map((one): RawChange => ({ ...later(one), first: one.first && a.events.length === 0 })),
    ],
    omissions: [...a.omissions, ...b.omissions.map((one) => ({ ...later(one), event: one.event + a.events.length }))],
    time: add(a.time, b.time),
    fills: a.fills || b.fills,
    through: a.through || b.through,
    broken: a.broken || b.broken,
    closing: b.closing,
    closingOmitted: b.closingOmitted,
    empty: a.empty && b.empty,
    blank: a.blank ?? b.blank,
    at: a.at,
  };
}

const isGone = (entries: readonly (Entry | undefined)[]): boolean =>
  entries.every((entry) => entry === undefined || (entry.bar.events.length === 0 && entry.bar.omissions.length > 0));

/** What changes in a bar that is gone changes in the next one. */
function kept(entries: readonly Entry[], gone: ReadonlySet<number>): Entry[] {
  const left: Entry[] = [];
  let waiting: RawChange[] = [];
  entries.forEach((entry, index) => {
    // An ending goes with its bar.
    if (gone.has(index)) waiting.push(...entry.bar.changes.filter(({ change }) => change.change.word !== 'ending'));
    else {
      const changes = [...waiting.map((one) => ({ ...one, offset: ZERO, first: true })), ...entry.bar.changes];
      left.push(waiting.length === 0 ? entry : { ...entry, bar: { ...entry.bar, changes } });
      waiting = [];
    }
  });
  return left;
}

const noGaps: readonly Time[] = [];

/** How much empty time stands for each omission of a bar that the other lanes fill: its own time, the last what is left. */
export function gapsOf(bar: RawBar, lacking: Time): readonly Time[] {
  if (bar.omissions.length === 0) return noGaps;
  let left = compare(lacking, ZERO) > 0 ? lacking : ZERO;
  return bar.omissions.map((one, index) => {
    const isLast = index === bar.omissions.length - 1;
    const gap = isLast || one.time === undefined ? left : earliest(one.time, left);
    left = subtract(left, gap);
    return gap;
  });
}

const isTime = (time: Time): boolean => !isZero(time);
const hasGap = ({ gaps }: BarStart): boolean => gaps.some(isTime);

/** A voice's bars with gaps where a witness has nothing while the other lanes go on. */
export function withGaps(voice: VoiceBars, starts: readonly BarStart[]): VoiceBars {
  if (!starts.some(hasGap)) return voice;
  return {
    ...voice,
    bars: voice.bars.map((one, index) => {
      const start = starts[index];
      return start === undefined || !hasGap(start) ? one : { ...one, bar: withGapsIn(one.bar, start.gaps) };
    }),
  };
}

function withGapsIn(bar: RawBar, gaps: readonly Time[]): RawBar {
  const events: LaneEvent[] = [];
  const waiting = bar.omissions.map((omission, index) => ({ omission, gap: gaps[index] ?? ZERO }));
  let shift = ZERO;
  const gapsBefore = (index: number): void => {
    while ((waiting[0]?.omission.event ?? Number.POSITIVE_INFINITY) <= index) {
      const { omission, gap } = waiting.shift() as (typeof waiting)[number];
      if (!isZero(gap)) events.push(gapEvent(bar.lane, omission, gap, add(omission.offset, shift)));
      shift = add(shift, gap);
    }
  };
  bar.events.forEach((event, index) => {
    gapsBefore(index);
    events.push(event.movedBy(shift));
  });
  gapsBefore(bar.events.length);
  const changes = bar.changes.map((one) => ({ ...one, offset: add(one.offset, shiftOf(one, bar, gaps)) }));
  return { ...bar, events, changes, time: add(bar.time, shift) };
}

/** A change typed before an omission takes effect before the gap. */
const shiftOf = (change: RawChange, bar: RawBar, gaps: readonly Time[]): Time =>
  bar.omissions.reduce(
    (shift, one, index) => (one.source.pos < change.source.pos ? add(shift, gaps[index] ?? ZERO) : shift),
    ZERO,
  );

const gapEvent = (lane: EventLane, { stave, address, source }: Omission, duration: Time, offset: Time): LaneEvent => {
  const around = { ...nothingAround, numbering: { prefix: address, count: 0 } };
  return new LaneEvent(
    lane,
    'gap',
    stave,
    offset,
    duration,
    undefined,
    noNotes,
    around,
    0,
    source.pos,
    source.len,
    0,
    noExtras,
    undefined,
  );
};
