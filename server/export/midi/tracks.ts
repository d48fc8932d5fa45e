/** Notes as keys of channels, track by track: no key is struck twice at once on a channel. */
import { add, type Time } from '../../../grammar/time';
import { instrumentName } from '../../instrument/instrument';
import type { Environment } from '../../score/environment';
import type { Score } from '../../score/score';
import type { SoundingNote, SoundingPiece } from '../sounding';
import { manualNamesIn } from '../stops';
import type { Keyboard } from './keys';

/** A key from its stroke until it comes up, in ticks from the beginning. */
export interface PlayedKey {
  readonly key: number;
  readonly channel: number;
  readonly from: number;
  readonly to: number;
}

export interface Track {
  readonly name: string;
  readonly keys: readonly PlayedKey[];
}

/** By which a note is called into a track. */
function namesFor(
  { environment }: Score,
  { piece }: SoundingPiece,
  by: 'voice' | 'manual',
): (note: SoundingNote) => string {
  const voices = environment.voices.map(({ name }) => name);
  if (by === 'voice') return ({ voice }) => voices[voice] ?? '';
  const manualOf = manualNamesIn(piece);
  return (note) => manualOf(note) ?? 'manual';
}

interface Tracked extends PlayedKey {
  readonly track: string;
}

/** @param ticksOf of a time in semibreves */
export function playedKeys(
  score: Score,
  pieces: readonly { readonly piece: SoundingPiece; readonly start: Time }[],
  keyboard: Keyboard,
  by: 'voice' | 'manual',
  ticksOf: (length: Time) => number,
): readonly Track[] {
  const names: string[] = by === 'voice' ? score.environment.voices.map(({ name }) => name) : [];
  const keys = pieces.flatMap(({ piece, start }) => {
    const nameOf = namesFor(score, piece, by);
    return piece.notes.map((note): Tracked => {
      const track = nameOf(note);
      if (!names.includes(track)) names.push(track);
      const onset = add(start, note.onset);
      const from = ticksOf(onset);
      const to = Math.max(from + 1, ticksOf(add(onset, note.duration)));
      const channel = keyboard.channelOf(note.pitch, names.indexOf(track));
      return { track, key: keyboard.keyOf(note.pitch), channel, from, to };
    });
  });
  const apart = oneAtATime(keys);
  return names
    .map((name) => ({ name, keys: apart.filter(({ track }) => track === name) }))
    .filter((track) => track.keys.length > 0);
}

/** Of notes on one key and channel each ends where the next begins; of two that begin together the longer one stays. */
function oneAtATime(keys: readonly Tracked[]): readonly Tracked[] {
  const byKey = new Map<number, Tracked[]>();
  for (const one of keys) {
    const id = one.channel * 128 + one.key;
    const list = byKey.get(id);
    if (list === undefined) byKey.set(id, [one]);
    else list.push(one);
  }
  return [...byKey.values()].flatMap((list) => {
    const sorted = list.sort((a, b) => a.from - b.from || b.to - a.to);
    const single = sorted.filter((one, index) => one.from !== sorted[index - 1]?.from);
    return single.map((one, index) => ({ ...one, to: Math.min(one.to, single[index + 1]?.from ?? one.to) }));
  });
}

/** General MIDI, from 0: harpsichord; church organ for whatever is called an organ; clavinet for a clavichord. */
const PROGRAMS: readonly (readonly [RegExp, number])[] = [
  [/organ|regal/, 19],
  [/clavichord/, 7],
];
const HARPSICHORD = 6;

/** The sound that comes nearest to the instrument’s name. */
export function programOf(environment: Environment): number {
  const name = instrumentName(environment);
  return PROGRAMS.find(([pattern]) => pattern.test(name))?.[1] ?? HARPSICHORD;
}
