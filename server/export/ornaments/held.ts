/**
 * Notes of a chord that are held while another of them bears a sign: written out in one voice they would be tied from stroke
 * to stroke, so they have a voice of their own for as long.
 */
import { add, compare, earliest, latest, subtract, type Time } from '../../../grammar/time';
import { endOf } from '../../score/clock';
import type { Environment } from '../../score/environment';
import type { Piece, ScoreSystem, SystemVoice, Tuplet, VoiceEvent } from '../../score/score';
import { addressOfPart, BARE, eventLike } from './events';
import type { Region } from './regions';
import { byHeight, type Group, writtenAt } from './strands';

/** A region without the notes that are held all through it, and these as an event. */
export interface Divided {
  readonly region: Region;
  readonly held: VoiceEvent;
}

/** Divides a chord in which only some notes are played otherwise; undefined where there is none, or ties bind it. */
export function divided(region: Region): Divided | undefined {
  const { placed, groups, slices } = region;
  const held = groups.filter((group) => isHeld(group, region));
  const isPlayed = slices.every(({ strands }) => strands.some(({ group }) => !held.includes(group)));
  if (held.length === 0 || slices.length < 2 || !isPlayed) return undefined;
  const { event } = placed;
  const members = event.members.filter((note) => held.some((group) => writtenAt(group, placed)?.member === note));
  const parts = slices.flatMap(({ values }) => values).length;
  const stems = isAbove(held, region) ? 'up' : 'down';
  return {
    region: {
      placed: { ...placed, event: eventLike(event, { stems: event.stems ?? (stems === 'up' ? 'down' : 'up') }) },
      groups: groups.filter((group) => !held.includes(group)),
      slices: slices.map((slice) => ({
        ...slice,
        strands: slice.strands.filter(({ group }) => !held.includes(group)),
      })),
    },
    held: eventLike(event, {
      ...BARE,
      members,
      stems,
      beam: undefined,
      tuplets: event.tuplets.map(undrawn),
      address: addressOfPart(event, parts + 1),
    }),
  };
}

function isHeld(group: Group, { placed, slices }: Region): boolean {
  const member = writtenAt(group, placed)?.member;
  if (group.changed || member === undefined || member.tiedFrom || member.tie !== undefined) return false;
  return slices.every(({ strands }) => strands.some((strand) => strand.group === group));
}

/** Whether the held notes lie above what is played. */
function isAbove(held: readonly Group[], { slices }: Region): boolean {
  const all = slices[0]?.strands ?? [];
  const [highest] = [...all].sort((a, b) => byHeight(b.pitch, a.pitch));
  return highest !== undefined && held.includes(highest.group);
}

/** The figure of a tuplet stands once. */
const undrawn = (tuplet: Tuplet): Tuplet => ({ ...tuplet, drawn: false });

// ─── voices ──────────────────────────────────────────────────────────────────────────────────────────────────────

/** The voices that hold, each for one of the score's. */
export class HeldVoices {
  /** By the voice that they stand beside. */
  private readonly indices = new Map<number, number>();

  constructor(private readonly environment: Environment) {}

  of(voice: number): number {
    const index = this.indices.get(voice) ?? this.environment.voices.length + this.indices.size;
    this.indices.set(voice, index);
    return index;
  }

  /** With a declaration for each. */
  declared(): Environment {
    const { voices } = this.environment;
    const more = [...this.indices.keys()].flatMap((voice) => {
      const declared = voices[voice];
      return declared === undefined ? [] : [{ ...declared, name: `${declared.name}+`, beside: voice }];
    });
    return more.length === 0 ? this.environment : { ...this.environment, voices: [...voices, ...more] };
  }
}

/** What is held in a system, by voice, in the order of time. */
export type HeldEvents = ReadonlyMap<number, readonly VoiceEvent[]>;

/** The piece with voices for what is held, by the blocks of its systems. */
export function withHeld(piece: Piece, held: ReadonlyMap<number, HeldEvents>): Piece {
  if (held.size === 0) return piece;
  const systems = piece.systems.map((system) => {
    const own = held.get(system.block);
    if (own === undefined) return system;
    const voices = [...own].map(([voice, events]) => heldVoice(piece, system, voice, events));
    return { ...system, score: { ...system.score, voices: [...system.score.voices, ...voices] } };
  });
  return { ...piece, systems };
}

function heldVoice(piece: Piece, system: ScoreSystem, voice: number, events: readonly VoiceEvent[]): SystemVoice {
  const ends = add(system.onset, system.score.duration);
  const all = [...new Set(events.map(({ bar }) => bar))].flatMap((index) => {
    const bar = piece.bars[system.firstBar + index];
    if (bar === undefined) return [];
    return withGaps(
      events.filter((event) => event.bar === index).map((event) => eventLike(event, { voice })),
      subtract(latest(bar.onset, system.onset), system.onset),
      subtract(earliest(endOf(bar), ends), system.onset),
    );
  });
  return { voice, lane: events[0]?.source.lane ?? 0, events: all };
}

/** Time in which nothing is drawn before, between and after events. */
function withGaps(events: readonly VoiceEvent[], from: Time, to: Time): readonly VoiceEvent[] {
  let now = from;
  const all: VoiceEvent[] = [];
  const pass = (until: Time, like: VoiceEvent, number: number): void => {
    if (compare(now, until) < 0) all.push(gapLike(like, now, subtract(until, now), number));
  };
  for (const event of events) {
    pass(event.onset, event, 1);
    all.push(event);
    now = endOf(event);
  }
  const last = events.at(-1);
  if (last !== undefined) pass(to, last, 2);
  return all;
}

const gapLike = (event: VoiceEvent, onset: Time, duration: Time, number: number): VoiceEvent =>
  eventLike(event, {
    ...BARE,
    kind: 'gap',
    onset,
    duration,
    value: undefined,
    members: [],
    tuplets: [],
    spans: [],
    beam: undefined,
    address: `${event.address}-r${number}`,
  });
