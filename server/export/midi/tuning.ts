/**
 * Tunings as MIDI messages: the MIDI Tuning Standard in MIDI 1.0 Detailed Specification 4.2.1 (frequency data p. 48, programs and
 * banks p. 50), its extensions CA-020 (midi.org/about-midi/tuning_extens.shtml) and CA-021 (tuning-scale.shtml there).
 */
import { KEY_OF_A4 } from '../../../grammar/vocabulary/pitches';
import { systemExclusive } from './bytes';

/** Hertz of key 69. */
const A = 440;
/** Fourteen bits are a semitone. */
const FRACTIONS = 16384;
const HIGHEST = 128 * FRACTIONS - 2;
const DEVICE = 0x7f;

/** Three bytes: the semitone of equal temperament below the frequency, and what is above it. 7F 7F 7F would mean no change. */
export function frequencyData(hertz: number): readonly [number, number, number] {
  const semitones = KEY_OF_A4 + 12 * Math.log2(hertz / A);
  const units = Math.min(HIGHEST, Math.max(0, Math.round(semitones * FRACTIONS)));
  return [Math.floor(units / FRACTIONS), Math.floor((units % FRACTIONS) / 128), units % 128];
}

/** The tuning of all keys as a reply to a request of a dump. @param keys frequency of each key from 0 to 127 */
export function bulkDump(program: number, name: string, keys: readonly number[]): number[] {
  const letters = Array.from({ length: 16 }, (_, i) => name.charCodeAt(i)).map((code) =>
    code >= 0x20 && code < 0x7f ? code : 0x20,
  );
  const body = [0x7e, DEVICE, 0x08, 0x01, program, ...letters, ...keys.flatMap((hertz) => [...frequencyData(hertz)])];
  const checksum = body.reduce((sum, byte) => sum ^ byte, 0) & 0x7f;
  return systemExclusive([...body, checksum, 0xf7]);
}

/** So many keys fit into one message. */
const MOST_KEYS = 127;

/** Changes of single keys in real time. @param keys the number of each key and its frequency */
export function singleNotes(program: number, keys: readonly (readonly [number, number])[]): number[][] {
  const messages: number[][] = [];
  for (let first = 0; first < keys.length; first += MOST_KEYS) {
    const some = keys.slice(first, first + MOST_KEYS);
    const data = some.flatMap(([key, hertz]) => [key, ...frequencyData(hertz)]);
    messages.push(systemExclusive([0x7f, DEVICE, 0x08, 0x02, program, some.length, ...data, 0xf7]));
  }
  return messages;
}

/** How the keys of an octave are told: the last number of the message, what it reaches in cents, and a key in bytes. */
interface OctaveMessage {
  readonly message: number;
  readonly least: number;
  readonly most: number;
  readonly data: (cents: number) => readonly number[];
}

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** One byte in cents, 40h none; or two bytes, 8192 units a semitone and 2000h none. */
export const octaveForms = {
  cents: { message: 0x08, least: -64, most: 63, data: (cents) => [within(64 + Math.round(cents), 0, 127)] },
  fine: {
    message: 0x09,
    least: -100,
    most: 100,
    data: (cents) => {
      const units = within(8192 + Math.round((cents / 100) * 8192), 0, 16383);
      return [units >> 7, units & 0x7f];
    },
  },
} as const satisfies Readonly<Record<string, OctaveMessage>>;

export type OctaveForm = keyof typeof octaveForms;

const ALL_CHANNELS = Array.from({ length: 16 }, (_, channel) => channel);

/** A bit for each channel: the last two, the seven in the middle, the first seven. */
const channelBits = (channels: readonly number[]): number[] =>
  [14, 7, 0].map((first) =>
    channels.filter((one) => one >= first && one < first + 7).reduce((bits, one) => bits | (1 << (one - first)), 0),
  );

/** The tuning of all octaves on channels in real time. @param cents of each key from c to b above equal temperament */
export const scaleOctave = (form: OctaveForm, cents: readonly number[], channels = ALL_CHANNELS): number[] => {
  const { message, data } = octaveForms[form];
  return systemExclusive([0x7f, DEVICE, 0x08, message, ...channelBits(channels), ...cents.flatMap(data), 0xf7]);
};

/** Controllers that set a registered parameter: its number, then its value. */
export const registered = (channel: number, parameter: number, value: number): number[][] => [
  [0xb0 | channel, 0x65, parameter >> 7],
  [0xb0 | channel, 0x64, parameter & 0x7f],
  [0xb0 | channel, 0x06, value],
];

export const PARAMETER = { bendRange: 0, tuningProgram: 3, tuningBank: 4 } as const;

/** Semitones that a pitch bend reaches to either side. */
export const BEND_RANGE = 2;

/** A bend of so many cents. */
export function pitchBend(channel: number, cents: number): number[] {
  const value = Math.min(16383, Math.max(0, 8192 + Math.round((cents / (100 * BEND_RANGE)) * 8192)));
  return [0xe0 | channel, value & 0x7f, value >> 7];
}
