/**
 * A reader of Standard MIDI Files, written from the published standard (Standard MIDI Files 1.0, RP-001) and from nothing of
 * ours: it knows chunks, running time, running status, channel messages, system exclusive and meta events.
 */

export interface MidiMessage {
  /** From the beginning of the track. */
  readonly tick: number;
  readonly status: number;
  /** Of a meta event. */
  readonly type?: number;
  readonly data: readonly number[];
}

export interface MidiFile {
  readonly format: number;
  readonly division: number;
  readonly tracks: readonly (readonly MidiMessage[])[];
}

class Bytes {
  at = 0;
  constructor(private readonly bytes: Uint8Array) {}
  get done(): boolean {
    return this.at >= this.bytes.length;
  }
  byte(): number {
    const value = this.bytes[this.at++];
    if (value === undefined) throw new Error('the file ends too early');
    return value;
  }
  peek(): number {
    return this.bytes[this.at] ?? -1;
  }
  many(count: number): number[] {
    return Array.from({ length: count }, () => this.byte());
  }
  number(count: number): number {
    return this.many(count).reduce((sum, byte) => sum * 256 + byte, 0);
  }
  variable(): number {
    let value = 0;
    for (let count = 0; count < 4; count++) {
      const byte = this.byte();
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
    throw new Error('a number is longer than four bytes');
  }
  part(length: number): Bytes {
    const part = new Bytes(this.bytes.subarray(this.at, this.at + length));
    if (this.at + length > this.bytes.length) throw new Error('a chunk ends after the file');
    this.at += length;
    return part;
  }
  word(): string {
    return String.fromCharCode(...this.many(4));
  }
}

/** Data bytes by the upper half of the status. */
const LENGTHS: Readonly<Record<number, number>> = { 8: 2, 9: 2, 10: 2, 11: 2, 12: 1, 13: 1, 14: 2 };

function track(bytes: Bytes): MidiMessage[] {
  const messages: MidiMessage[] = [];
  let tick = 0;
  let running = 0;
  while (!bytes.done) {
    tick += bytes.variable();
    const status = bytes.peek() >= 0x80 ? bytes.byte() : running;
    if (status === 0xff) {
      const type = bytes.byte();
      messages.push({ tick, status, type, data: bytes.many(bytes.variable()) });
      if (type === 0x2f && !bytes.done) throw new Error('something follows the end of a track');
      continue;
    }
    if (status === 0xf0 || status === 0xf7) {
      messages.push({ tick, status, data: bytes.many(bytes.variable()) });
      continue;
    }
    const length = LENGTHS[status >> 4];
    if (length === undefined) throw new Error(`no such status: ${status}`);
    running = status;
    const data = bytes.many(length);
    if (data.some((byte) => byte > 0x7f)) throw new Error('a data byte has its highest bit set');
    messages.push({ tick, status, data });
  }
  if (messages.at(-1)?.type !== 0x2f) throw new Error('a track has no end');
  return messages;
}

export function readMidi(file: Uint8Array): MidiFile {
  const bytes = new Bytes(file);
  if (bytes.word() !== 'MThd' || bytes.number(4) !== 6) throw new Error('no header');
  const [format, count, division] = [bytes.number(2), bytes.number(2), bytes.number(2)];
  const tracks: MidiMessage[][] = [];
  while (!bytes.done) {
    const [type, length] = [bytes.word(), bytes.number(4)];
    const part = bytes.part(length);
    if (type === 'MTrk') tracks.push(track(part));
  }
  if (tracks.length !== count) throw new Error('the header counts other tracks');
  return { format, division, tracks };
}

export interface ReadNote {
  readonly key: number;
  readonly channel: number;
  readonly from: number;
  readonly to: number;
}

/** Notes by their stroke; a stroke of a key that is down, or an end without one, is an error. */
export function notesOf(messages: readonly MidiMessage[]): ReadNote[] {
  const down = new Map<string, number>();
  const notes: ReadNote[] = [];
  for (const { tick, status, data } of messages) {
    const [key = 0, velocity = 0] = data;
    const channel = status & 0x0f;
    const id = `${channel} ${key}`;
    const isOn = status >> 4 === 9 && velocity > 0;
    if (isOn) {
      if (down.has(id)) throw new Error(`key ${key} is struck while it is down`);
      down.set(id, tick);
    } else if (status >> 4 === 8 || status >> 4 === 9) {
      const from = down.get(id);
      if (from === undefined) throw new Error(`key ${key} comes up and was not down`);
      down.delete(id);
      notes.push({ key, channel, from, to: tick });
    }
  }
  if (down.size > 0) throw new Error('keys are down at the end');
  return notes.sort((a, b) => a.from - b.from || a.key - b.key);
}

export const textsOf = (messages: readonly MidiMessage[], type: number): { tick: number; text: string }[] =>
  messages
    .filter((one) => one.status === 0xff && one.type === type)
    .map(({ tick, data }) => ({ tick, text: new TextDecoder().decode(Uint8Array.from(data)) }));

/** System exclusive messages, as hexadecimal numbers from their F0 on. */
export const exclusiveOf = (messages: readonly MidiMessage[]): number[][] =>
  messages.filter(({ status }) => status === 0xf0).map(({ data }) => [0xf0, ...data]);
