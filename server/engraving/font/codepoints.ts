/**
 * Code points of our own, for what the Standard Music Font Layout (SMuFL, W3C) has no glyph of or none in the size or
 * height that is wanted. All lie between U+F400 and U+F8FF, the range that SMuFL leaves to each font.
 */
import type { Clef } from '../../../grammar/tree';
import { agreeingLine } from '../../../grammar/vocabulary/clefs';
import { type Shape, shapes } from '../../../grammar/vocabulary/shapes';
import { composedShapes } from './composed';

/** As MEI's `glyph.num` has it: `U+E56C`. */
export const glyphNumber = (code: number): string => `U+${code.toString(16).toUpperCase()}`;

// ─── signs ───────────────────────────────────────────────────────────────────────────────────────────────────────────

const FIRST_SHAPE = 0xf500;

/** Whether a shape stands over or under its note, where the engraving library places it; the others stand at its height. */
export const standsOutside = ({ place }: Pick<Shape, 'place'>): boolean => place === 'above' || place === 'below';

/**
 * The code point that draws a shape: SMuFL's where its glyph can stand as it is, else one of ours. Undefined for a shape
 * that is a line from note to note and so has no glyph.
 */
export function codeOfShape(shape: Shape): number | undefined {
  const ours = composedShapes[shape.name] !== undefined;
  if (shape.codepoint === undefined && !ours) return undefined;
  return ours || !standsOutside(shape) ? FIRST_SHAPE + shapes.indexOf(shape) : shape.codepoint;
}

// ─── clefs that stand together ───────────────────────────────────────────────────────────────────────────────────────

/** By the letters from the lowest: the upper clef stands two lines above the lower for each class between them. */
export const clefPairs: Readonly<Record<string, { readonly code: number; readonly linesApart: number }>> = {
  FC: { code: 0xf8a0, linesApart: 2 },
  CG: { code: 0xf8a1, linesApart: 2 },
  FG: { code: 0xf8a2, linesApart: 4 },
};

/** The glyph of two clefs that stand together, given from the lowest; undefined for one clef or for clefs that do not agree. */
export function codeOfClefs([lower, upper]: readonly Clef[]): number | undefined {
  if (lower === undefined || upper === undefined) return undefined;
  return agreeingLine(upper, lower) === upper.line ? clefPairs[`${lower.letter}${upper.letter}`]?.code : undefined;
}

// ─── heads ───────────────────────────────────────────────────────────────────────────────────────────────────────────

/** A semibreve (SMuFL, "Noteheads"). */
export const SEMIBREVE_HEAD = 0xe0a2;

/** A filled breve, of which the engraving library makes a void one. */
export const BLACK_BREVE = 0xf8b8;

/** Brackets around what is the editor's (SMuFL, "Standard accidentals (12-EDO)"). */
export const BRACKET_LEFT = 0xe26c;
export const BRACKET_RIGHT = 0xe26d;

// ─── accidentals between brackets ────────────────────────────────────────────────────────────────────────────────────

/** Accidentals of MEI (`data.ACCIDENTAL.WRITTEN`) that may be enclosed, with their code points in SMuFL. */
export const ENCLOSABLE: Readonly<Record<string, number>> = { f: 0xe260, n: 0xe261, s: 0xe262, x: 0xe263, ff: 0xe264 };

/** What encloses them (MEI's `enclose`): left and right in SMuFL. */
export const ENCLOSING: Readonly<Record<string, readonly [left: number, right: number]>> = {
  paren: [0xe26a, 0xe26b],
  brack: [BRACKET_LEFT, BRACKET_RIGHT],
};

const FIRST_ENCLOSED = 0xf8d0;

/** An accidental with what encloses it as one glyph, for the library sets brackets upon a sharp; undefined where none is. */
export function codeOfEnclosed(accid: string, enclose: string): number | undefined {
  const [sign, around] = [Object.keys(ENCLOSABLE).indexOf(accid), Object.keys(ENCLOSING).indexOf(enclose)];
  return sign < 0 || around < 0 ? undefined : FIRST_ENCLOSED + around * Object.keys(ENCLOSABLE).length + sign;
}

// ─── space ───────────────────────────────────────────────────────────────────────────────────────────────────────────

/** Draws nothing and is as wide as a sign beside a head, so that the note after such a sign keeps its distance. */
export const BLANK = 0xf8c0;

/** The same for a sign between brackets. */
export const WIDE_BLANK = 0xf8c1;

/** Their widths in stave spaces. */
export const BLANKS: ReadonlyMap<number, number> = new Map([
  [BLANK, 0.7],
  [WIDE_BLANK, 1.9],
]);
