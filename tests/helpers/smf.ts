/** Standard MIDI Files (RP-001), read by a package that knows nothing of ours. */
import { type MidiEvent, parseMidi } from 'midi-file';

/** An event with its time from the beginning of its track. */
export type ReadEvent = MidiEvent & { readonly tick: number };

export interface MidiFile {
  readonly format: number;
  /** Ticks of a crotchet. */
  readonly division: number | undefined;
  readonly tracks: readonly (readonly ReadEvent[])[];
}

export function readMidi(file: Uint8Array): MidiFile {
  const { header, tracks } = parseMidi(file);
  // The package takes what it finds: that all tracks are there, and whole, is asked here.
  if (tracks.length !== header.numTracks) throw new Error('the header counts other tracks');
  if (tracks.some((track) => track.findIndex(({ type }) => type === 'endOfTrack') !== track.length - 1))
    throw new Error('a track ends elsewhere than at its end');
  return { format: header.format, division: header.ticksPerBeat, tracks: tracks.map(timed) };
}

function timed(track: readonly MidiEvent[]): ReadEvent[] {
  let tick = 0;
  return track.map((event) => {
    tick += event.deltaTime;
    return { ...event, tick };
  });
}

type OfType<Type extends MidiEvent['type']> = Extract<ReadEvent, { type: Type }>;

/** The events of one type. */
export const eventsOf = <Type extends MidiEvent['type']>(
  track: readonly ReadEvent[] | undefined,
  type: Type,
): readonly OfType<Type>[] => (track ?? []).filter((event): event is OfType<Type> => event.type === type);

export interface ReadNote {
  readonly key: number;
  readonly channel: number;
  readonly from: number;
  readonly to: number;
}

/** Notes by their stroke; a stroke of a key that is down, or an end without one, is an error. */
export function notesOf(track: readonly ReadEvent[] | undefined): ReadNote[] {
  const down = new Map<string, number>();
  const notes: ReadNote[] = [];
  for (const event of track ?? []) {
    if (event.type !== 'noteOn' && event.type !== 'noteOff') continue;
    const { tick, channel, noteNumber: key } = event;
    const id = `${channel} ${key}`;
    const from = down.get(id);
    if (event.type === 'noteOn') {
      if (from !== undefined) throw new Error(`key ${key} is struck while it is down`);
      down.set(id, tick);
    } else {
      if (from === undefined) throw new Error(`key ${key} comes up and was not down`);
      down.delete(id);
      notes.push({ key, channel, from, to: tick });
    }
  }
  if (down.size > 0) throw new Error('keys are down at the end');
  return notes.sort((a, b) => a.from - b.from || a.key - b.key);
}

/** When the last key comes up, in seconds by the tempi of the first track. */
export function secondsOf({ division = 1, tracks }: MidiFile): number {
  const end = Math.max(...tracks.flatMap((track) => notesOf(track).map(({ to }) => to)));
  // 120 crotchets a minute where nothing is said (RP-001).
  let [seconds, tick, crotchet] = [0, 0, 0.5];
  for (const tempo of eventsOf(tracks[0], 'setTempo').filter((one) => one.tick < end)) {
    seconds += ((tempo.tick - tick) / division) * crotchet;
    [tick, crotchet] = [tempo.tick, tempo.microsecondsPerBeat / 1e6];
  }
  return seconds + ((end - tick) / division) * crotchet;
}

/** Texts are UTF-8; the package gives a letter for each of their bytes. */
export const textsOf = (
  track: readonly ReadEvent[] | undefined,
  type: 'trackName' | 'marker',
): { tick: number; text: string }[] =>
  eventsOf(track, type).map(({ tick, text }) => ({
    tick,
    text: new TextDecoder().decode(Uint8Array.from(text, (byte) => byte.charCodeAt(0))),
  }));

/** System exclusive messages from their F0 on. */
export const exclusiveOf = (track: readonly ReadEvent[] | undefined): number[][] =>
  eventsOf(track, 'sysEx').map(({ data }) => [0xf0, ...Array.from(data)]);

/**
 * The frequency that three bytes say: the semitone of equal temperament below it, and fourteen bits above that (MIDI 1.0 Detailed
 * Specification 4.2.1, p. 48).
 */
export const hertzOf = ([semitone = 0, high = 0, low = 0]: readonly number[]): number =>
  440 * 2 ** ((semitone + (128 * high + low) / 16384 - 69) / 12);

/** Of a key in a dump of all of them, whose frequencies begin after its name. */
export const dumpedHertz = (dump: readonly number[], key: number): number =>
  hertzOf(dump.slice(22 + 3 * key, 25 + 3 * key));
