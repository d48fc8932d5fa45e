/** Pitches by degrees of the scale. */
import { modulo } from '../../grammar/modulo';
import { midiOf } from '../../grammar/vocabulary/pitches';
import { stepOf } from '../score/heights';
import type { SoundingPitch } from '../score/performance';

const LETTERS = 'cdefgab';

/** White keys above the c of octave 0. */
export const degreeOf = ({ letter, octave }: Pick<SoundingPitch, 'letter' | 'octave'>): number =>
  stepOf(letter, octave);

/** The pitch of a degree with an alteration. */
export function pitchOn(degree: number, alteration: number): SoundingPitch {
  const letter = LETTERS.charAt(modulo(degree, 7)) as SoundingPitch['letter'];
  const octave = Math.floor(degree / 7);
  return { letter, octave, alteration, midi: midiOf({ letter, octave, alteration }) };
}

/** Semitones by which one pitch lies above another, octaves left out. */
export const intervalClass = (above: SoundingPitch, below: SoundingPitch): number =>
  modulo(above.midi - below.midi, 12);

export const semitonesBetween = (a: SoundingPitch, b: SoundingPitch): number => Math.abs(a.midi - b.midi);
