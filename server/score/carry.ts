/**
 * What crosses a system end: the state of the source, as plain data.
 *
 * Bar numbers, onsets, pages, positions and identities of nodes are never in it, so that a bar inserted early changes
 * no carry further on.
 */
import { type Time, ZERO } from '../../grammar/time';
import type { AccidentalSign, Clef, Spelling } from '../../grammar/tree';
import type { KeySign, Meter, Tempo } from './score';

export interface Carry {
  /** By stave; empty where no clef has been stated. */
  readonly clefs: readonly (readonly Clef[])[];
  /** By stave. */
  readonly keys: readonly (readonly KeySign[])[];
  readonly meter: Meter | undefined;
  readonly tempo: Tempo | undefined;
  /** The same tempo where a statement before the system states it; the system tells it as a change. */
  readonly stated: Tempo | undefined;
  /** A bar left open at the system end. */
  readonly open: OpenBar | undefined;
  /** By voice. */
  readonly voices: readonly VoiceCarry[];
}

export interface OpenBar {
  /** Time already in it. */
  readonly elapsed: Time;
  /** Accidentals in force in it under the practice `bar`: by stave, `letter octave alteration` in order of entry. */
  readonly accidentals: readonly (readonly PitchState[])[];
}

export interface VoiceCarry {
  /** Pitches tied over the system end. */
  readonly ties: readonly PitchState[];
  /** Pitches of the last event with their alterations, for immediate repetition. */
  readonly last: readonly PitchState[];
  /** Open curves in the order in which they began, with the pitch they began on and their kind and name. */
  readonly curves: readonly OpenCurve[];
  /** How long a note running through the barline still sounds. */
  readonly runningOn: Time;
  readonly manual: string | undefined;
  /** What entered the first ending enters every other ending alike. */
  readonly atEnding: { readonly ties: readonly PitchState[]; readonly last: readonly PitchState[] } | undefined;
  /** Ties of the lane's first options, against which syllables are counted whatever the choice. */
  readonly sung: Sung;
}

/** Pitches (`c5`) that are tied on, and those that were where the first ending began. */
export interface Sung {
  readonly ties: readonly string[];
  readonly atEnding: readonly string[];
}

export interface PitchState {
  readonly letter: Spelling['letter'];
  readonly octave: number;
  readonly alteration: number;
  /** The accidental that made it, so that the same sign typed again means the same note. */
  readonly sign?: AccidentalSign;
}

export interface OpenCurve {
  readonly kind: 'u' | 'line';
  readonly name: string | undefined;
  readonly pitches: readonly PitchState[];
  /** Open when a first ending began: it waits for the further endings. */
  readonly waits: boolean;
}

/** The state at the beginning of a piece. */
export const startOf = (staves: number, voices: number): Carry => ({
  clefs: Array.from({ length: staves }, () => []),
  keys: Array.from({ length: staves }, () => []),
  meter: undefined,
  tempo: undefined,
  stated: undefined,
  open: undefined,
  voices: Array.from({ length: voices }, () => silentVoice),
});

export const silentVoice: VoiceCarry = {
  ties: [],
  last: [],
  curves: [],
  runningOn: ZERO,
  manual: undefined,
  atEnding: undefined,
  sung: { ties: [], atEnding: [] },
};
