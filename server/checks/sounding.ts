/**
 * One walk over a system: its notes from stroke to end, and what lets a check see at a glance that it has nothing to say.
 *
 * Times are whole numbers of ticks of a unit that fits all times of the system, so that checks compare plain numbers.
 */
import { keepingLast } from '../../grammar/keeping';
import type { Time } from '../../grammar/time';
import { isThreefold } from '../score/clock';
import { degreeOf } from '../score/heights';
import {
  isSpecial,
  type Meter,
  type NoteMember,
  type SystemBar,
  type SystemScore,
  type SystemVoice,
  type VoiceEvent,
} from '../score/score';

/** A note from its stroke to its end, tied notes joined. Times count from the start of the system looked at. */
export interface Sounding {
  readonly voice: number;
  readonly onset: number;
  readonly end: number;
  readonly midi: number;
  /** White keys above c0. */
  readonly step: number;
  /** As it is struck. */
  readonly member: NoteMember;
  readonly event: VoiceEvent;
  readonly bar: LineBar;
  /** A tie leads on from its last written note. */
  readonly leadsOn: boolean;
}

export type Line = readonly Sounding[];

/** A bar as notes know it. */
export interface LineBar {
  /** In the system looked at (0) or in the one before (-1). */
  readonly system: 0 | -1;
  /** Index in its system's bars. */
  readonly bar: number;
  /** What stands in it is told; else it was told where it stands. */
  readonly own: boolean;
  readonly start: number;
  /** Length of a beat; 0 in free music or without a meter. */
  readonly beat: number;
  /** How many beats its meter counts, dotted ones by their parts: 6 of 6/8. */
  readonly beats: number;
  /** Double bars, repeats and further endings part strains: two bars of one number stand in one strain. */
  readonly strain: number;
}

/** A member of a note or chord in its voice. */
export interface Struck {
  readonly voice: SystemVoice;
  /** Index in the voice's events. */
  readonly index: number;
  readonly event: VoiceEvent;
  readonly member: NoteMember;
}

/** Lowest and highest position of the notes on a stave. */
export interface Heights {
  low: number;
  high: number;
}

/** Bars and lines in ticks of one unit. */
export interface Laid {
  readonly bars: readonly LineBar[];
  /** Voice by voice in the order of the lanes. */
  readonly lines: readonly Line[];
}

/** What a walk over all members shows. */
export interface Survey {
  /** A unit that fits all times of the system; 0 where there is none. */
  readonly unit: number;
  /** MIDI keys of the lowest and highest note, small notes too. */
  readonly low: number;
  readonly high: number;
  /** By stave, small notes too. */
  readonly heights: readonly (Heights | undefined)[];
}

export const isSounding = (event: VoiceEvent): boolean => event.kind === 'note' && event.small === undefined;

/** The members of which something holds, small notes' too. */
export function membersWhere(
  { voices }: SystemScore,
  holds: (member: NoteMember, event: VoiceEvent) => boolean,
): readonly Struck[] {
  const found: Struck[] = [];
  for (const voice of voices) {
    for (let index = 0; index < voice.events.length; index++) {
      const event = voice.events[index] as VoiceEvent;
      for (const member of event.members) if (holds(member, event)) found.push({ voice, index, event, member });
    }
  }
  return found;
}

// ─── ticks ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** Fits what is usual: down to 1/128, triplets of triplets, quintuplets, septuplets. So most systems have one unit. */
const USUAL_UNIT = 40320;
/** Times of a system in such units stay whole and exact. */
const FINEST_UNIT = 2 ** 36;

/** The least common multiple; 0 where it is too great or either is none. */
export function commonUnit(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  if (a % b === 0) return a;
  let [greater, smaller] = [a, b];
  while (smaller !== 0) [greater, smaller] = [smaller, greater % smaller];
  const least = (a / greater) * b;
  return least <= FINEST_UNIT ? least : 0;
}

const fitting = (unit: number, { d }: Time): number => (typeof d === 'number' ? commonUnit(unit, d) : 0);

/** A time in ticks of a unit that fits it. */
export const ticksOf = ({ n, d }: Time, unit: number): number => (n as number) * (unit / (d as number));

/** A unit for all times of a system, and for the beats of its meters; 0 if there is none. */
function unitOf({ voices, bars, duration, carryOut }: SystemScore): number {
  let unit = fitting(USUAL_UNIT, duration);
  if (carryOut.open !== undefined) unit = fitting(unit, carryOut.open.elapsed);
  for (const { onset, meter } of bars) {
    unit = fitting(unit, onset);
    if (meter !== undefined) unit = commonUnit(unit, meter.beatValue);
  }
  for (const { events } of voices) {
    for (const { onset, duration: length } of events) unit = fitting(fitting(unit, onset), length);
  }
  return Number.isSafeInteger(Number(duration.n) * unit) ? unit : 0;
}

// ─── bars ────────────────────────────────────────────────────────────────────────────────────────────────────────

/** In fractions of the beat value: a beat of 6/4, 6/8, 9/8, 12/8 is dotted. */
const beatOf = ({ beats, beatValue }: Meter, unit: number): number =>
  (isThreefold({ beats }) ? 3 : 1) * (unit / beatValue);

/** Whether a double bar or a repeat stands between two bars. */
export const isDivided = (before: SystemBar | undefined, after: SystemBar | undefined): boolean =>
  isSpecial(before?.closing) || isSpecial(after?.opening);

export const isFurtherEnding = ({ ending }: SystemBar): boolean => (ending ?? 1) > 1;

/** Whether a further ending, too, parts two bars. */
export const isParted = (before: SystemBar | undefined, after: SystemBar | undefined): boolean =>
  isDivided(before, after) || (after !== undefined && isFurtherEnding(after));

function barsOf({ bars, kind }: SystemScore, unit: number): readonly LineBar[] {
  let strain = 0;
  return bars.map(({ onset, meter }, bar): LineBar => {
    if (bar > 0 && isParted(bars[bar - 1], bars[bar])) strain++;
    const beat = meter === undefined || kind !== 'measured' ? 0 : beatOf(meter, unit);
    return { system: 0, bar, own: true, start: ticksOf(onset, unit), beat, beats: meter?.beats ?? 0, strain };
  });
}

// ─── notes ───────────────────────────────────────────────────────────────────────────────────────────────────────

/** The same note with other times. All notes have one shape, written out: looks go over them again and again. */
export const soundingLike = (
  { voice, midi, step, member, event }: Sounding,
  onset: number,
  end: number,
  bar: LineBar,
  leadsOn: boolean,
): Sounding => ({ voice, onset, end, midi, step, member, event, bar, leadsOn });

type Growing = { -readonly [Field in keyof Sounding]: Sounding[Field] };

/** The note to which another is tied: it ends where the other begins, and a tie leads on from it. */
export function tiedBefore<Note extends Sounding>(earlier: readonly Note[], note: Sounding): Note | undefined {
  if (!note.member.tiedFrom) return undefined;
  return earlier.findLast(
    ({ midi, step, end, leadsOn }) => leadsOn && midi === note.midi && step === note.step && end === note.onset,
  );
}

/** Index of the first event of a bar or of those after it. */
function firstIn(events: readonly VoiceEvent[], bar: number): number {
  let [low, high] = [0, events.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((events[middle] as VoiceEvent).bar < bar) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The notes of a voice in some of its bars by their onset, with what is tied to them. */
export function notesIn(
  { events }: SystemVoice,
  bars: readonly LineBar[],
  unit: number,
  from = 0,
  to = bars.length,
): Line {
  const found: Growing[] = [];
  for (let index = from === 0 ? 0 : firstIn(events, from); index < events.length; index++) {
    const event = events[index] as VoiceEvent;
    if (event.bar >= to) break;
    const bar = bars[event.bar];
    if (bar === undefined || !isSounding(event)) continue;
    const onset = ticksOf(event.onset, unit);
    const end = onset + ticksOf(event.duration, unit);
    for (const member of event.members) {
      const leadsOn = member.tie !== undefined;
      const step = degreeOf(member);
      const note: Growing = { voice: event.voice, onset, end, midi: member.midi, step, member, event, bar, leadsOn };
      const before = tiedBefore(found, note);
      if (before === undefined) found.push(note);
      else {
        before.end = end;
        before.leadsOn = leadsOn;
      }
    }
  }
  return found;
}

export const surveyOf = keepingLast((score: SystemScore): Survey => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const heights: (Heights | undefined)[] = [];
  for (const { events } of score.voices) {
    for (const { members } of events) {
      for (const member of members) {
        const { midi, stave } = member;
        if (midi < low) low = midi;
        if (midi > high) high = midi;
        const onStave = heights[stave];
        const position = degreeOf(member);
        if (onStave === undefined) heights[stave] = { low: position, high: position };
        else if (position < onStave.low) onStave.low = position;
        else if (position > onStave.high) onStave.high = position;
      }
    }
  }
  return { unit: unitOf(score), low, high, heights };
});

const laidByUnit = keepingLast((_: SystemScore) => new Map<number, Laid>());

/** All notes of a system by voice. @param unit one that fits it */
export function laidOut(score: SystemScore, unit: number): Laid {
  const byUnit = laidByUnit(score);
  const known = byUnit.get(unit);
  if (known !== undefined) return known;
  const bars = barsOf(score, unit);
  const laid = { bars, lines: score.voices.map((voice) => notesIn(voice, bars, unit)) };
  byUnit.set(unit, laid);
  return laid;
}
