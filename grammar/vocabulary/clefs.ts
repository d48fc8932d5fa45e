/**
 * Clefs: a letter on a line of the stave.
 *
 * A diatonic position counts white keys: octave · 7 + letter, c the first, so c4 (middle C) is 28.
 */
import type { Clef } from '../tree';

export interface ClefLetter {
  /** Diatonic position of the line that the clef names. */
  readonly position: number;
  readonly describe: string;
}

/** The three classes of clef. Quantz, Versuch, 1752, chapter V, section 1 names them and their nine places. */
export const clefLetters: Readonly<Record<Clef['letter'], ClefLetter>> = {
  G: { position: 32, describe: 'G clef: the g above middle C' },
  C: { position: 28, describe: 'C clef: middle C' },
  F: { position: 24, describe: 'F clef: the f below middle C' },
};

/** Most lines that a stave can have. */
export const MOST_LINES = 8;
export const FEWEST_LINES = 4;

/** The trade's names of the nine usual clefs. */
export const clefNames: Readonly<Record<string, string>> = {
  G1: 'French violin clef',
  G2: 'treble clef',
  C1: 'soprano clef',
  C2: 'mezzo-soprano clef',
  C3: 'alto clef',
  C4: 'tenor clef',
  C5: 'baritone clef',
  F3: 'baritone clef',
  F4: 'bass clef',
  F5: 'sub-bass clef',
};

/** The diatonic position of a line (1 the lowest) under a clef. */
export const lineUnder = (clef: Clef, line: number): number =>
  clefLetters[clef.letter].position + 2 * (line - clef.line);

/** The line on which `clef` would have to stand to agree with `other`: C two above F, G two above C. */
export const agreeingLine = (clef: Clef, other: Clef): number =>
  other.line + (clefLetters[clef.letter].position - clefLetters[other.letter].position) / 2;

/** Whether two clefs on one stave give every line the same name. */
export const clefsAgree = (a: Clef, b: Clef): boolean => lineUnder(a, 1) === lineUnder(b, 1);

/** What a pen slip for a clef looks like: letters and a digit, perhaps several joined by `+`. */
export const looksLikeClef = (text: string): boolean => /^[A-Za-z]\d+(?:\+|$)/.test(text);

const clefPattern = /^([GCF])(\d)$/;

/** The clef written as `C1`; undefined if the text is none. */
export function clefOf(text: string): Clef | undefined {
  const match = clefPattern.exec(text);
  const line = Number(match?.[2]);
  return match === null || line < 1 || line > MOST_LINES ? undefined : { letter: match[1] as Clef['letter'], line };
}

/** `C1`. */
export const clefText = (clef: Clef): string => `${clef.letter}${clef.line}`;

/** Clefs that stand together: `F4+C6`. */
export const clefsText = (clefs: readonly Clef[]): string => clefs.map(clefText).join('+');

/** The clef that a misspelt one may mean: `g2`, `H1` has none. */
export function clefMeant(text: string): string | undefined {
  const upper = text.toUpperCase();
  return upper !== text && upper.split('+').every((part) => clefOf(part) !== undefined) ? upper : undefined;
}
