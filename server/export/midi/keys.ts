/** Which key and channel plays a note, and what is sent before, so that it sounds in the tuning. */
import type { FindingCode } from '../../../grammar/findings/catalogue';
import type { Slots } from '../../../grammar/findings/finding';
import { modulo } from '../../../grammar/modulo';
import { KEY_OF_A4 } from '../../../grammar/vocabulary/pitches';
import type { SoundingPitch } from '../../score/performance';
import { keyOf, noteName, placeOf } from '../../tuning/fifths';
import { NOTES } from '../../tuning/temperament';
import { offset, placesIn, sounding, type Tuning } from '../../tuning/tuning';
import {
  BEND_RANGE,
  bulkDump,
  type OctaveForm,
  octaveForms,
  PARAMETER,
  pitchBend,
  registered,
  scaleOctave,
  singleNotes,
} from './tuning';

/**
 * How a synthesiser learns of the tuning: `notes` by a dump and by single keys, `octave` by the twelve keys of any octave,
 * `octave-cents` likewise in whole cents, `bend` by a channel for each key of the octave, bent once and for all, `none` not at all.
 */
export const midiTunings = ['notes', 'octave', 'octave-cents', 'bend', 'none'] as const;
export type MidiTuning = (typeof midiTunings)[number];

/** What a form of messages cannot say of a tuning. */
export interface Unsaid {
  readonly code: FindingCode;
  readonly slots: Slots;
}

export interface Keyboard {
  readonly keyOf: (pitch: SoundingPitch) => number;
  /** @param track the index of the note’s track */
  readonly channelOf: (pitch: SoundingPitch, track: number) => number;
  /** Sent before the first note, to all. */
  readonly messages: readonly (readonly number[])[];
  /** The same on a channel that has notes. */
  readonly onChannel: (channel: number) => readonly (readonly number[])[];
  readonly unsaid: readonly Unsaid[];
}

/** The channel of percussion is nobody’s. */
const CHANNELS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 12, 13, 14, 15];
/** Has the second notes of divided keys, in a tuning program of their own. */
const DIVIDED = { channel: 15, program: 1 } as const;
const OF_TRACKS = CHANNELS.filter((channel) => channel !== DIVIDED.channel);

const LAST_KEY = 127;
const onKeyboard = (key: number): number => Math.min(LAST_KEY, Math.max(0, key));

const plain = ({ midi }: SoundingPitch): number => onKeyboard(midi);
const byTrack = (_: SoundingPitch, track: number): number => OF_TRACKS[track % OF_TRACKS.length] ?? 0;

/** Divided keys have their second notes on a channel of their own. */
const byTrackOrDivided =
  ({ more }: Tuning): Keyboard['channelOf'] =>
  (pitch, track) =>
    more.includes(placeOf(pitch)) ? DIVIDED.channel : byTrack(pitch, track);

const NONE: Keyboard = { keyOf: plain, channelOf: byTrack, messages: [], onChannel: () => [], unsaid: [] };

// ─── single keys ─────────────────────────────────────────────────────────────────────────────────────────────────

/** Frequencies of all keys; of two notes on one key the later place counts. */
function frequencies(tuning: Tuning, places: readonly number[]): readonly number[] {
  const byKey = new Map(places.map((place) => [keyOf(place), offset(tuning, place)]));
  return Array.from({ length: LAST_KEY + 1 }, (_, key) => {
    const cents = 100 * (key - KEY_OF_A4) + (byKey.get(key % NOTES) ?? 0);
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
    ...NONE,
    channelOf: byTrackOrDivided(tuning),
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

/** Cents of the twelve keys from c above equal temperament at 440; of two notes on one key the later place counts. */
function centsOfKeys(tuning: Tuning, places: readonly number[]): readonly number[] {
  const { semitones, cents } = fromStandard(tuning);
  const offsets = new Map(places.map((place) => [keyOf(place), offset(tuning, place)]));
  // The key of c plays the note that stands so many semitones lower.
  return Array.from({ length: NOTES }, (_, key) => cents + (offsets.get(modulo(key - semitones, NOTES)) ?? 0));
}

/** The notes that a form of message does not reach. */
function unreached(tuning: Tuning, form: OctaveForm): readonly Unsaid[] {
  const { cents } = fromStandard(tuning);
  const { least, most } = octaveForms[form];
  const beyond = placesIn(tuning).filter((place) => {
    const wanted = Math.round(cents + offset(tuning, place));
    return wanted < least || wanted > most;
  });
  return beyond.length === 0
    ? []
    : [{ code: 'export-midi-octave-limit', slots: { notes: named(beyond), least, most } }];
}

function byOctave(tuning: Tuning, form: OctaveForm): Keyboard {
  const { semitones } = fromStandard(tuning);
  const { more } = tuning;
  const twelve = placesIn({ ...tuning, more: [] });
  const divided = scaleOctave(form, centsOfKeys(tuning, [...twelve, ...more]), [DIVIDED.channel]);
  return {
    ...NONE,
    keyOf: ({ midi }) => onKeyboard(midi + semitones),
    channelOf: byTrackOrDivided(tuning),
    messages: [scaleOctave(form, centsOfKeys(tuning, twelve)), ...(more.length === 0 ? [] : [divided])],
    unsaid: unreached(tuning, form),
  };
}

const named = (places: readonly number[]): string => places.map(noteName).join(', ');

function byBend(tuning: Tuning): Keyboard {
  const { semitones, cents } = fromStandard(tuning);
  const channelled = CHANNELS.length - NOTES;
  const [more, beyond] = [tuning.more.slice(0, channelled), tuning.more.slice(channelled)];
  const held: Tuning = { ...tuning, more };
  const channels = new Map(placesIn(held).map((place, index) => [place, CHANNELS[index] ?? 0]));
  const bends = new Map([...channels].map(([place, channel]) => [channel, cents + offset(tuning, place)]));
  return {
    ...NONE,
    keyOf: ({ midi }) => onKeyboard(midi + semitones),
    channelOf: (pitch) => channels.get(sounding(held, placeOf(pitch))) ?? 0,
    onChannel: (channel) => [
      ...registered(channel, PARAMETER.bendRange, BEND_RANGE),
      pitchBend(channel, bends.get(channel) ?? 0),
    ],
    unsaid: beyond.length === 0 ? [] : [{ code: 'export-midi-bend-channels', slots: { notes: named(beyond) } }],
  };
}

const keyboards: Readonly<Record<MidiTuning, (tuning: Tuning) => Keyboard>> = {
  notes: byNotes,
  octave: (tuning) => byOctave(tuning, 'fine'),
  'octave-cents': (tuning) => byOctave(tuning, 'cents'),
  bend: byBend,
  none: () => NONE,
};

export const keyboardFor = (tuning: Tuning, by: MidiTuning): Keyboard => keyboards[by](tuning);
