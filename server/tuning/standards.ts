/**
 * Pitch standards of today's players, by their distance in semitones from a4 = 440.
 *
 * Haynes names them so; northern Chorton is A+1, Cammerton as a rule a whole tone lower, A-1.
 */

export interface PitchStandard {
  /** As it is typed after `--pitch`. */
  readonly name: string;
  readonly semitones: number;
  /** What players say and forks have, in hertz; the exact semitone is within 0.4 of it. */
  readonly fork: number;
  readonly describe: string;
}

export const pitchStandards: readonly PitchStandard[] = [
  { name: 'a-2', semitones: -2, fork: 392, describe: 'French chamber and opera pitch, as it is played today' },
  { name: 'a-1', semitones: -1, fork: 415, describe: 'Cammerton, today’s baroque pitch' },
  { name: 'a+0', semitones: 0, fork: 440, describe: 'modern pitch' },
  { name: 'a+1', semitones: 1, fork: 466, describe: 'Chorton, Cornet-ton' },
];

/** The frequency of a pitch moved by semitones of equal temperament, as a keyboard is that slides. */
export const transposed = (pitch: number, semitones: number): number => pitch * 2 ** (semitones / 12);

/** The exact frequency of a standard in hertz. */
export const exactPitch = ({ semitones }: PitchStandard): number => transposed(440, semitones);

/** What every file that states no pitch is tuned to. */
export const USUAL_PITCH = 415;
