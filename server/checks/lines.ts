/** The voices of a system as lines of sounding notes, with what the system before leaves sounding. */
import { add, compare, divide, equal, multiply, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { Spelling } from '../../grammar/tree';
import type { Meter, NoteMember, SystemScore, SystemVoice, VoiceEvent } from '../score/score';
import type { BarPlace, View } from './systems';

/** A note from its stroke to its end, tied notes joined. */
export interface Sounding {
  readonly voice: number;
  /** From the start of the system looked at; negative in the one before. */
  readonly onset: Time;
  readonly end: Time;
  /** As it is struck. */
  readonly member: NoteMember;
  readonly event: VoiceEvent;
  readonly at: BarPlace;
}

export type Line = readonly Sounding[];

// ─── names ───────────────────────────────────────────────────────────────────────────────────────────────────────

type Pitch = Pick<NoteMember, 'spelling' | 'octave' | 'alteration'>;

const SIGNS = ['bb', 'b', '', '#', '##'];
const SIGNS_IN_WORDS = [' double flat', ' flat', ' natural', ' sharp', ' double sharp'];

/** The sounding note as it is typed: `f#4`. */
export const noteName = ({ spelling, alteration, octave }: Pitch): string =>
  `${spelling.letter}${SIGNS[alteration + 2] ?? ''}${octave}`;

/** Without its octave: "f sharp". */
export const inWords = ({ spelling, alteration }: Pick<Pitch, 'spelling' | 'alteration'>): string =>
  `${spelling.letter}${SIGNS_IN_WORDS[alteration + 2] ?? ''}`;

const STEPS: Readonly<Record<Spelling['letter'], number>> = { c: 0, d: 1, e: 2, f: 3, g: 4, a: 5, b: 6 };
/** White keys above c0. */
export const positionOf = ({ spelling, octave }: Pick<Pitch, 'spelling' | 'octave'>): number =>
  octave * 7 + STEPS[spelling.letter];

/** The number of an event in its bar, as its address has it. */
export const eventNumber = ({ address }: VoiceEvent): string => address.slice(address.indexOf('.') + 1);

/** A member of a note or chord in its voice. */
export interface Struck {
  readonly voice: SystemVoice;
  /** Index in the voice's events. */
  readonly index: number;
  readonly event: VoiceEvent;
  readonly member: NoteMember;
}

/** The members of which something holds, small notes' too. */
export function membersWhere(
  { voices }: SystemScore,
  holds: (member: NoteMember, event: VoiceEvent) => boolean,
): readonly Struck[] {
  const found: Struck[] = [];
  for (const voice of voices) {
    for (const [index, event] of voice.events.entries()) {
      for (const member of event.members) if (holds(member, event)) found.push({ voice, index, event, member });
    }
  }
  return found;
}

// ─── lines ───────────────────────────────────────────────────────────────────────────────────────────────────────

export const isSounding = (event: VoiceEvent): boolean => event.kind === 'note' && event.small === undefined;

/** All struck notes of a voice by their onset, with what is tied to them. */
function struckNotes(score: SystemScore, index: number): Sounding[] {
  const voice = score.voices[index];
  const found: Sounding[] = [];
  for (const event of voice?.events ?? []) {
    if (!isSounding(event)) continue;
    const end = add(event.onset, event.duration);
    for (const member of event.members) {
      const tied = member.tiedFrom ? found.findLastIndex((one) => isTiedTo(one, member, event)) : -1;
      const before = found[tied];
      if (before === undefined)
        found.push({ voice: event.voice, onset: event.onset, end, member, event, at: { system: 0, bar: event.bar } });
      else found[tied] = { ...before, end };
    }
  }
  return found;
}

const isTiedTo = (one: Sounding, member: NoteMember, { onset }: VoiceEvent): boolean =>
  one.member.midi === member.midi && equal(one.end, onset);

/** By the system's voices, so that notes do not outlive their events. */
const keptNotes = new WeakMap<SystemScore['voices'], readonly Line[]>();

/** All notes of a system, voice by voice in the order of its lanes. */
export function notesOf(score: SystemScore): readonly Line[] {
  const { voices } = score;
  const notes = keptNotes.get(voices) ?? voices.map((_, index) => struckNotes(score, index));
  keptNotes.set(voices, notes);
  return notes;
}

const shifted = (note: Sounding, by: Time): Sounding => ({
  ...note,
  onset: subtract(note.onset, by),
  end: subtract(note.end, by),
  at: { ...note.at, system: -1 },
});

/** So many notes before the system's first are enough for what the checks ask. */
const LOOK_BACK = 6;

/** Keeps what is made of a system and the one before it while both stay the same. */
function keptOver(make: (view: View) => readonly Line[]): (view: View) => readonly Line[] {
  const kept = new WeakMap<SystemScore['voices'], { before: View['before']; key: string; made: readonly Line[] }>();
  return (view) => {
    const { before, facts } = view;
    const { voices } = view.score;
    const known = kept.get(voices);
    if (known !== undefined && known.before === before && known.key === facts.key) return known.made;
    const made = make(view);
    kept.set(voices, { before, key: facts.key, made });
    return made;
  };
}

/** The notes of each voice of a system, with the last of the system before; none of a voice without a lane here. */
export const notesOver = keptOver(({ score, before }) => {
  const earlier = before === undefined ? [] : notesOf(before);
  return notesOf(score).map((line, index) => {
    const voice = score.voices[index]?.voice;
    const lane = before?.voices.findIndex((one) => one.voice === voice) ?? -1;
    const last = (earlier[lane] ?? []).slice(-LOOK_BACK).map((note) => shifted(note, before?.duration ?? ZERO));
    return joined(last, line);
  });
});

/** Notes tied over the system end become one. */
function joined(last: readonly Sounding[], line: Line): Line {
  const tails = new Map<Sounding, Sounding>();
  const rest = line.filter((note) => {
    if (!note.member.tiedFrom) return true;
    const from = last.find((one) => one.member.midi === note.member.midi && equal(one.end, note.onset));
    if (from !== undefined) tails.set(from, { ...from, end: note.end });
    return from === undefined;
  });
  return [...last.map((one) => tails.get(one) ?? one), ...rest];
}

/**
 * One note at a time: of a chord the outer note in the outermost voices; an inner voice has no one line where it has
 * chords.
 */
export function melodyOf(line: Line, part: 'highest' | 'lowest' | 'inner'): Line {
  const found: Sounding[] = [];
  for (let index = 0; index < line.length; ) {
    const first = line[index] as Sounding;
    let next = index + 1;
    while (next < line.length && line[next]?.event === first.event) next++;
    const chord = line.slice(index, next).sort((a, b) => a.member.midi - b.member.midi);
    const one = part === 'lowest' ? chord[0] : part === 'highest' || chord.length === 1 ? chord.at(-1) : undefined;
    if (one !== undefined) found.push(one);
    index = next;
  }
  return found;
}

/** The line of each voice that a system has, in the order of the declarations; the first is the highest. */
export const melodiesOver = keptOver((view) => {
  const last = view.facts.voices.length - 1;
  return notesOver(view)
    .map((line, index) => ({ line, voice: view.score.voices[index]?.voice ?? 0 }))
    .sort((a, b) => a.voice - b.voice)
    .map(({ line, voice }) => melodyOf(line, voice === last ? 'lowest' : voice === 0 ? 'highest' : 'inner'));
});

/** Index of the first note of a line for which something holds that holds for all after it. */
function firstWhere(line: Line, holds: (note: Sounding) => boolean): number {
  let [low, high] = [0, line.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(line[middle] as Sounding)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** How many notes of a line begin at a moment or before it. */
export const countTo = (line: Line, moment: Time): number =>
  firstWhere(line, ({ onset }) => compare(onset, moment) > 0);

/** The notes that begin at one moment or after it, and before another. */
export const between = (line: Line, from: Time, to: Time): Line =>
  line.slice(
    firstWhere(line, ({ onset }) => compare(onset, from) >= 0),
    firstWhere(line, ({ onset }) => compare(onset, to) >= 0),
  );

/** So many notes back the widest chords are still whole. */
const FEW = 12;

/** The last few notes of a line that begin at a moment or before it: what sounds then, or has just ended, is among them. */
export function lastTo(line: Line, moment: Time): Line {
  const count = countTo(line, moment);
  return line.slice(Math.max(0, count - FEW), count);
}

// ─── time ────────────────────────────────────────────────────────────────────────────────────────────────────────

/** The beat of a meter; of 6/4, 6/8, 9/8, 12/8 a dotted one. */
export const beatOf = ({ beats, beatValue }: Meter): Time =>
  beats > 3 && beats % 3 === 0 ? time(3, beatValue) : time(1, beatValue);

const barIn = ({ score, before }: View, { system, bar }: BarPlace): SystemScore['bars'][number] | undefined =>
  (system === 0 ? score : before)?.bars[bar];

/** Time from the beginning of a note's bar, also where that lies in the system before; undefined in free music. */
function inBar(view: View, note: Pick<Sounding, 'onset' | 'at'>): Time | undefined {
  const bar = barIn(view, note.at);
  if (bar?.meter === undefined || view.score.kind !== 'measured') return undefined;
  if (note.at.system === 0) {
    const elapsed = bar.continues ? (view.before?.carryOut.open?.elapsed ?? ZERO) : ZERO;
    return add(subtract(note.onset, bar.onset), elapsed);
  }
  // What the bar has from yet another system before is not known; it is taken for a whole one.
  return subtract(add(note.onset, view.before?.duration ?? ZERO), bar.onset);
}

/** The beat on which or in which a note stands, counted from 0, and whether it stands on it. */
export function beatIn(
  view: View,
  note: Pick<Sounding, 'onset' | 'at'>,
): { readonly beat: number; readonly on: boolean; readonly length: Time } | undefined {
  const meter = barIn(view, note.at)?.meter;
  const offset = inBar(view, note);
  if (meter === undefined || offset === undefined || compare(offset, ZERO) < 0) return undefined;
  const length = beatOf(meter);
  const beats = divide(offset, length);
  const beat = Math.floor(Number(beats.n) / Number(beats.d));
  // Fractions of hundreds of digits are beyond any music.
  if (!Number.isSafeInteger(beat)) return undefined;
  return { beat, on: equal(multiply(length, time(beat)), offset), length };
}

/** Whether a double bar, a repeat or a second ending stands between two bars of a view. */
export function isParted(view: View, from: BarPlace, to: BarPlace): boolean {
  for (let place = from; isBefore(place, to); ) {
    const next = placeAfter(view, place);
    const shapes = [barIn(view, place)?.closing?.shape, barIn(view, next)?.opening];
    if (shapes.some((shape) => shape !== undefined && shape !== '|') || (barIn(view, next)?.ending ?? 1) > 1)
      return true;
    place = next;
  }
  return false;
}

const isBefore = (a: BarPlace, b: BarPlace): boolean => a.system < b.system || (a.system === b.system && a.bar < b.bar);

const placeAfter = ({ before }: View, { system, bar }: BarPlace): BarPlace =>
  system === -1 && bar + 1 >= (before?.bars.length ?? 0) ? { system: 0, bar: 0 } : { system, bar: bar + 1 };
