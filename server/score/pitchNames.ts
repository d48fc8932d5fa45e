/** Notes by their names: scientific (C4 the middle C) and after Helmholtz (c′ the middle C); both common practice. */
import type { AccidentalSign, Clef, Spelling } from '../../grammar/tree';
import { lineUnder } from '../../grammar/vocabulary/clefs';
import { signOf } from '../../grammar/vocabulary/pitches';
import type { KeySign } from './score';

export interface NamedPitch {
  readonly letter: Spelling['letter'];
  /** In semitones. */
  readonly alteration: number;
  readonly octave: number;
}

const drawn: Readonly<Record<AccidentalSign, string>> = { '##': '𝄪', '#': '♯', n: '', b: '♭', bb: '𝄫' };

/** `♭`; nothing for a natural. */
export const accidentalText = (alteration: number): string => drawn[signOf(alteration) ?? 'n'];

/** Names of notes as they are typed, `bb3-d4`, with their signs as they are printed: `b♭3–d4`. */
export const printedNames = (typed: string): string =>
  typed
    .replace(/([a-g])(##|bb|[#b])/g, (_, letter: string, sign: AccidentalSign) => `${letter}${drawn[sign]}`)
    .replace('-', '–');

/** `B♭4`. */
export const scientific = ({ letter, alteration, octave }: NamedPitch): string =>
  `${letter.toUpperCase()}${accidentalText(alteration)}${octave}`;

/** Octave of the small letters without a stroke. */
const SMALL = 3;

/** `b♭′`; below the small octave capitals, with a stroke below for each octave more: `C`, `C͵`. */
export function helmholtz({ letter, alteration, octave }: NamedPitch): string {
  const strokes = octave >= SMALL ? '′'.repeat(octave - SMALL) : '͵'.repeat(SMALL - 1 - octave);
  return `${octave >= SMALL ? letter : letter.toUpperCase()}${accidentalText(alteration)}${strokes}`;
}

export const bothNames = (pitch: NamedPitch): string => `${helmholtz(pitch)} (${scientific(pitch)})`;

const LETTERS: readonly Spelling['letter'][] = ['c', 'd', 'e', 'f', 'g', 'a', 'b'];

/** The note on a line (1 the lowest) under a clef. */
export function noteOnLine(clef: Clef, line: number): NamedPitch {
  const position = lineUnder(clef, line);
  const octave = Math.floor(position / LETTERS.length);
  return { letter: LETTERS[position - octave * LETTERS.length] ?? 'c', alteration: 0, octave };
}

/** A signature as it is typed, `bb eb`: one text for signatures that are drawn alike. */
export const keyText = (key: readonly KeySign[]): string =>
  key.map(({ letter, accidental, octave }) => `${letter}${accidental}${octave ?? ''}`).join(' ');
