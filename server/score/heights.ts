/** How high written notes stand, by letter and octave, and which sound the same. */
import type { Spelling } from '../../grammar/tree';
import { HIGHEST_OCTAVE, STEPS } from '../../grammar/vocabulary/pitches';
import type { NoteMember } from './score';

const A = 'a'.charCodeAt(0);
/** By the letter's place in the alphabet: all notes are asked, and seven names take longer to tell apart than numbers. */
const steps = (['a', 'b', 'c', 'd', 'e', 'f', 'g'] as const).map((letter) => STEPS[letter]);

/** White keys above the c of octave 0. */
export const stepOf = (letter: Spelling['letter'], octave: number): number =>
  octave * 7 + (steps[letter.charCodeAt(0) - A] as number);

/** The octave in which a letter comes nearest to a step; of two as near the higher. */
export const octaveNearest = (letter: Spelling['letter'], step: number): number =>
  Math.max(0, Math.min(HIGHEST_OCTAVE, Math.round((step - STEPS[letter]) / 7)));

/** The same of a note. */
export const degreeOf = ({ spelling, octave }: Pick<NoteMember, 'spelling' | 'octave'>): number =>
  stepOf(spelling.letter, octave);

/** Whether two notes stand on the same line or space and sound the same. */
export const isSamePitch = (a: NoteMember, b: NoteMember): boolean =>
  a.spelling.letter === b.spelling.letter && a.octave === b.octave && a.alteration === b.alteration;
