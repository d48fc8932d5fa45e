/** Heights of notes and what they are called. */
import type { Fix } from '../../grammar/findings/finding';
import { accidentalNames, pitchText, signOf } from '../../grammar/vocabulary/pitches';
import type { NoteMember } from '../score/score';

type Pitch = Pick<NoteMember, 'spelling' | 'octave' | 'alteration'>;

/** The sounding note as it is typed: `f#4`. */
export const noteName = ({ spelling, alteration, octave }: Pitch): string =>
  pitchText({ letter: spelling.letter, alteration, octave });

/** Without its octave: "f sharp". */
export const inWords = ({ spelling, alteration }: Pick<Pitch, 'spelling' | 'alteration'>): string => {
  const sign = signOf(alteration);
  return sign === undefined ? spelling.letter : `${spelling.letter} ${accidentalNames[sign]}`;
};

/** Adds an editor's sign after letter and accidental. */
export const editorsSign = ({ spelling, source }: NoteMember, sign: string): Fix => {
  const pos = source.pos + spelling.letter.length + (spelling.accidental?.length ?? 0);
  return { title: `add the editor's ${sign}`, edits: [{ pos, len: 0, text: `[${sign}]` }] };
};
