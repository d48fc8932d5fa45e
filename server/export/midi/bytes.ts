/** Standard MIDI Files 1.0 in bytes: chunks, numbers of variable length, events at their ticks. */

/** An event of a track: a channel message, a system exclusive or a meta event. */
export interface TrackEvent {
  /** From the beginning, in ticks. */
  readonly tick: number;
  readonly bytes: readonly number[];
}

/** Seven bits a byte, the highest first; all bytes but the last have their highest bit set. */
export function variableLength(value: number): number[] {
  const bytes = [value & 0x7f];
  for (let rest = Math.floor(value / 128); rest > 0; rest = Math.floor(rest / 128)) bytes.unshift((rest & 0x7f) | 0x80);
  return bytes;
}

/** A number in so many bytes, the highest first. */
export const bigEndian = (value: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => Math.floor(value / 256 ** (count - 1 - i)) % 256);

export const META = { text: 0x01, trackName: 0x03, marker: 0x06, endOfTrack: 0x2f, tempo: 0x51, meter: 0x58 } as const;

export const meta = (type: number, data: readonly number[]): number[] => [
  0xff,
  type,
  ...variableLength(data.length),
  ...data,
];

/** Texts are UTF-8: the standard asks for no more than ASCII, and readers of today take this. */
export const metaText = (type: number, text: string): number[] => meta(type, [...new TextEncoder().encode(text)]);

/** A system exclusive message without the F0 that begins it. */
export const systemExclusive = (message: readonly number[]): number[] => [
  0xf0,
  ...variableLength(message.length),
  ...message,
];

function trackChunk(events: readonly TrackEvent[]): number[] {
  const body: number[] = [];
  let last = 0;
  for (const { tick, bytes } of [...events, { tick: lastTick(events), bytes: meta(META.endOfTrack, []) }]) {
    body.push(...variableLength(tick - last), ...bytes);
    last = tick;
  }
  return chunk('MTrk', body);
}

const lastTick = (events: readonly TrackEvent[]): number => events.at(-1)?.tick ?? 0;

function chunk(type: string, body: readonly number[]): number[] {
  const whole = [...type].map((letter) => letter.charCodeAt(0));
  whole.push(...bigEndian(body.length, 4));
  for (const byte of body) whole.push(byte);
  return whole;
}

/** A file of format 1: tracks that are heard together. @param ticks a crotchet */
export function midiFile(tracks: readonly (readonly TrackEvent[])[], ticks: number): Uint8Array {
  const header = chunk('MThd', [...bigEndian(1, 2), ...bigEndian(tracks.length, 2), ...bigEndian(ticks, 2)]);
  return Uint8Array.from([header, ...tracks.map(trackChunk)].flat());
}
