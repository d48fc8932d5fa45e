/** Pitches by degrees of the scale. */
import { SEMITONES } from '../../grammar/vocabulary/pitches';
import { stepOf } from '../score/heights';
import type { SoundingPitch } from '../score/performance';

const LETTERS = 'cdefgab';

/** White keys above the c of octave 0. */
export const degreeOf = ({ letter, octave }: Pick<SoundingPitch, 'letter' | 'octave'>): number =>
  stepOf(letter, octave);

/** The pitch of a degree with an alteration. */
export function pitchOn(degree: number, alteration: number): SoundingPitch {
  const letter = LETTERS.charAt(((degree % 7) + 7) % 7) as SoundingPitch['letter'];
  const octave = Math.floor(degree / 7);
  return { letter, octave, alteration, midi: 12 * (octave + 1) + SEMITONES[letter] + alteration };
}

/** Semitones by which one pitch lies above another, octaves left out. */
export const intervalClass = (above: SoundingPitch, below: SoundingPitch): number =>
  (((above.midi - below.midi) % 12) + 12) % 12;

export const semitonesBetween = (a: SoundingPitch, b: SoundingPitch): number => Math.abs(a.midi - b.midi);
