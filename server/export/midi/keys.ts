/** Which key and channel plays a note, and what is sent before, so that it sounds in the tuning. */
import type { SoundingPitch } from '../../score/performance';
import { keyOf, placeOf } from '../../tuning/fifths';
import { offset, placesIn, sounding, type Tuning } from '../../tuning/tuning';
import { bulkDump, PARAMETER, pitchBend, registered, scaleOctave, singleNotes } from './tuning';

/**
 * How a synthesiser learns of the tuning: `notes` by a dump and by single keys, `octave` by the twelve keys of any octave, `bend`
 * by a channel for each key of the octave, bent once and for all, `none` not at all.
 */
export const midiTunings = ['notes', 'octave', 'bend', 'none'] as const;
export type MidiTuning = (typeof midiTunings)[number];

export interface Keyboard {
  readonly keyOf: (pitch: SoundingPitch) => number;
  /** @param track the index of the note’s track */
  readonly channelOf: (pitch: SoundingPitch, track: number) => number;
  /** Sent before the first note, to all. */
  readonly messages: readonly (readonly number[])[];
  /** The same on a channel that has notes. */
  readonly onChannel: (channel: number) => readonly (readonly number[])[];
}

/** The channel of percussion is nobody’s. */
const CHANNELS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 12, 13, 14];
const channelAt = (index: number): number => CHANNELS[index % CHANNELS.length] ?? 0;
/** Has the second notes of divided keys, in a tuning program of their own. */
const DIVIDED = { channel: 15, program: 1 } as const;

const LAST_KEY = 127;
const MIDI_OF_A = 69;
const onKeyboard = (key: number): number => Math.min(LAST_KEY, Math.max(0, key));

const plain = ({ midi }: SoundingPitch): number => onKeyboard(midi);
const byTrack = (_: SoundingPitch, track: number): number => channelAt(track);

// ─── single keys ─────────────────────────────────────────────────────────────────────────────────────────────────

/** Frequencies of all keys; of two notes on one key the later place counts. */
function frequencies(tuning: Tuning, places: readonly number[]): readonly number[] {
  const byKey = new Map(places.map((place) => [keyOf(place), offset(tuning, place)]));
  return Array.from({ length: LAST_KEY + 1 }, (_, key) => {
    const cents = 100 * (key - MIDI_OF_A) + (byKey.get(key % 12) ?? 0);
    return tuning.pitch * 2 ** (cents / 1200);
  });
}

function programMessages(tuning: Tuning, program: number, places: readonly number[]): readonly (readonly number[])[] {
  const keys = frequencies(tuning, places);
  return [
    bulkDump(program, tuning.temperament.name, keys),
    ...singleNotes(
      program,
      keys.map((hertz, key) => [key, hertz] as const),
    ),
  ];
}

function byNotes(tuning: Tuning): Keyboard {
  const twelve = placesIn({ ...tuning, more: [] });
  const { more } = tuning;
  return {
    keyOf: plain,
    channelOf: (pitch, track) => (more.includes(placeOf(pitch)) ? DIVIDED.channel : channelAt(track)),
    messages: [
      ...programMessages(tuning, 0, twelve),
      ...(more.length === 0 ? [] : programMessages(tuning, DIVIDED.program, [...twelve, ...more])),
    ],
    onChannel: (channel) => [
      ...registered(channel, PARAMETER.tuningBank, 0),
      ...registered(channel, PARAMETER.tuningProgram, channel === DIVIDED.channel ? DIVIDED.program : 0),
    ],
  };
}

// ─── the keys of an octave ───────────────────────────────────────────────────────────────────────────────────────

/** Whole semitones and cents by which the instrument’s a stands from 440: the first are played by other keys. */
function fromStandard({ pitch }: Tuning): { readonly semitones: number; readonly cents: number } {
  const all = 1200 * Math.log2(pitch / 440);
  const semitones = Math.round(all / 100);
  return { semitones, cents: all - 100 * semitones };
}

function byOctave(tuning: Tuning): Keyboard {
  const { semitones, cents } = fromStandard(tuning);
  const offsets = new Map(placesIn({ ...tuning, more: [] }).map((place) => [keyOf(place), offset(tuning, place)]));
  // The key of c plays the note that stands so many semitones lower.
  const ofKeys = Array.from({ length: 12 }, (_, key) => cents + (offsets.get((key - semitones + 120) % 12) ?? 0));
  return {
    keyOf: ({ midi }) => onKeyboard(midi + semitones),
    channelOf: byTrack,
    messages: [scaleOctave(ofKeys)],
    onChannel: () => [],
  };
}

function byBend(tuning: Tuning): Keyboard {
  const { semitones, cents } = fromStandard(tuning);
  const places = placesIn(tuning);
  // Twelve channels, and two more for divided keys.
  const channels = new Map(places.map((place, index) => [place, channelAt(index)]));
  const bends = new Map(places.map((place, index) => [channelAt(index), cents + offset(tuning, place)]));
  return {
    keyOf: ({ midi }) => onKeyboard(midi + semitones),
    channelOf: (pitch) => channels.get(sounding(tuning, placeOf(pitch))) ?? 0,
    messages: [],
    onChannel: (channel) => [pitchBend(channel, bends.get(channel) ?? 0)],
  };
}

const keyboards: Readonly<Record<MidiTuning, (tuning: Tuning) => Keyboard>> = {
  notes: byNotes,
  octave: byOctave,
  bend: byBend,
  none: () => ({ keyOf: plain, channelOf: byTrack, messages: [], onChannel: () => [] }),
};

export const keyboardFor = (tuning: Tuning, by: MidiTuning): Keyboard => keyboards[by](tuning);
