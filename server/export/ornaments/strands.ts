/** What sounds in one voice: notes from beginning to end, each knowing the written notes from which it comes. */
import { grouped } from '../../../grammar/lists';
import { compare, equal, sum, type Time } from '../../../grammar/time';
import { endOf } from '../../score/clock';
import type { PerformedEvent, PerformedPiece, Realised, SoundingPitch, WrittenEvent } from '../../score/performance';
import type { AppliedMark, NoteMember } from '../../score/score';
import { eventsOf, type PlacedEvent, placeOfEvent } from '../../score/walk';

/** A note as it is played. */
export interface Strand {
  readonly pitch: SoundingPitch;
  readonly onset: Time;
  readonly end: Time;
  readonly realised: Realised | undefined;
  readonly group: Group;
}

/** All that is played for one written note, or for notes that are tied together. */
export interface Group {
  readonly from: PerformedEvent['from'];
  /** In the order of time, silences too. */
  readonly played: readonly PerformedEvent[];
  /** It is played otherwise than it is written. */
  readonly changed: boolean;
  /** Short names of the shapes that are realised. */
  readonly signs: ReadonlySet<string>;
}

/** One voice of a piece. */
export interface Part {
  readonly voice: number;
  /** What is written, in the order of the source. */
  readonly written: readonly PlacedEvent[];
  readonly groups: readonly Group[];
  /** The groups that write something at an event, by its key. */
  readonly groupsAt: ReadonlyMap<string, readonly Group[]>;
  /** By onset. */
  readonly strands: readonly Strand[];
}

/** The voices of a piece with what is written and what is played. */
export function partsOf({ piece, events }: PerformedPiece): readonly Part[] {
  const written = grouped([...eventsOf(piece)], ({ voice }) => voice.voice);
  const played = grouped(events, ({ voice }) => voice);
  return [...written].map(([voice, own]) => {
    const groups = groupsOf(played.get(voice) ?? []);
    const strands = groups.flatMap(strandsOf).sort((a, b) => compare(a.onset, b.onset));
    return { voice, written: own, groups, groupsAt: groupsAtOf(groups), strands };
  });
}

const groupsOf = (played: readonly PerformedEvent[]): readonly Group[] =>
  [...grouped(played, ({ from }) => from)].map(([from, own]) => ({
    from,
    played: own,
    changed: isChanged(from, own),
    signs: new Set(own.flatMap(({ realised }) => (realised === undefined ? [] : realised.sign.split('+')))),
  }));

function groupsAtOf(groups: readonly Group[]): ReadonlyMap<string, readonly Group[]> {
  const all = groups.flatMap((group) => group.from.map(({ placed }) => ({ group, key: placeOfEvent(placed) })));
  return new Map([...grouped(all, ({ key }) => key)].map(([key, own]) => [key, own.map(({ group }) => group)]));
}

function isChanged(from: PerformedEvent['from'], [only, ...others]: readonly PerformedEvent[]): boolean {
  if (only === undefined || others.length > 0 || only.realised !== undefined) return true;
  const duration = sum(from.map(({ placed }) => placed.event.duration));
  return !equal(only.onset, from[0].placed.onset) || !equal(only.duration, duration);
}

const strandsOf = (group: Group): Strand[] =>
  group.played.flatMap((event) =>
    event.kind !== 'note' || event.pitch === undefined || event.duration.n === 0
      ? []
      : [{ pitch: event.pitch, onset: event.onset, end: endOf(event), realised: event.realised, group }],
  );

/** What a group writes at an event; undefined where it writes nothing there. */
export const writtenAt = ({ from }: Group, placed: PlacedEvent): WrittenEvent | undefined => {
  const key = placeOfEvent(placed);
  return from.find((written) => placeOfEvent(written.placed) === key);
};

/** Whether a sign stands written out, so that its mark need not. */
export const isWrittenOut = ({ form, shapes }: AppliedMark, signs: ReadonlySet<string>): boolean =>
  form.type === 'sign' && shapes.length > 0 && shapes.every((shape) => signs.has(shape));

export const soundsAs = (pitch: SoundingPitch, { spelling, octave, alteration }: NoteMember): boolean =>
  pitch.letter === spelling.letter && pitch.octave === octave && pitch.alteration === alteration;

/** From the lowest key; of two spellings of one key the lower letter first. */
export const byHeight = (a: SoundingPitch, b: SoundingPitch): number => a.midi - b.midi || a.octave - b.octave;
