/** All glyphs of the font: those that stand in it as SMuFL has them, and those of our own. */
import { shapes } from '../../../grammar/vocabulary/shapes';
import {
  BLACK_BREVE,
  BLANKS,
  clefPairs,
  codeOfEnclosed,
  codeOfShape,
  ENCLOSABLE,
  ENCLOSING,
  standsOutside,
} from './codepoints';
import { type Borrowed, blackBreve, composedShapes, type Part } from './composed';

/** The font's name. The name of the font that it is made from is reserved by its licence. */
export const FONT_NAME = 'Thornmere';

export interface GlyphRecipe {
  readonly code: number;
  readonly parts: readonly Part[];
  /** Where parts stand beside one another: how far, in stave spaces, each from the one before. */
  readonly apart?: number;
  /** Moved up or down until its middle is on the line or space where it stands. */
  readonly centred?: boolean;
  /** The head whose stems it takes. */
  readonly stemsOf?: number;
  /** In stave spaces, where it is not what the outline takes. */
  readonly width?: number;
}

/**
 * First and last code points of SMuFL's glyphs that scores of this notation need. The engraving library takes time over
 * every glyph it is given, and more the more there are.
 */
const BORROWED: readonly (readonly [first: number, last: number])[] = [
  [0xe000, 0xe004], // brace and brackets
  [0xe044, 0xe048], // repeat dots, signs of return
  [0xe050, 0xe050], // clefs
  [0xe05c, 0xe05c],
  [0xe062, 0xe062],
  [0xe07a, 0xe07c],
  [0xe080, 0xe08b], // meters
  [0xe0a0, 0xe0a4], // heads
  [0xe0fa, 0xe0fb],
  [0xe1e7, 0xe1e7], // dot
  [0xe220, 0xe222], // strokes through stems
  [0xe240, 0xe249], // hooks
  [0xe260, 0xe264], // accidentals
  [0xe26a, 0xe26d],
  [0xe4a2, 0xe4a9], // dots, dashes and wedges
  [0xe4c0, 0xe4c1], // fermatas
  [0xe4e0, 0xe4ea], // rests
  [0xe551, 0xe553], // elisions of syllables
  [0xe566, 0xe588], // signs
  [0xe5b2, 0xe5bd],
  [0xe880, 0xe88a], // figures of tuplets
  [0xe910, 0xe91a], // mensurations
  [0xea02, 0xea03], // custos
  [0xea50, 0xea69], // figured bass
  [0xeaa4, 0xeaa9], // wavy lines
];

/** Two clefs: the upper one to the right, so that neither runs into the other. */
const CLEF_CODES: Readonly<Record<string, number>> = { G: 0xe050, C: 0xe05c, F: 0xe062 };
const CLEF_SCALE = 0.82;
const UPPER_CLEF_X: Readonly<Record<string, number>> = { FC: 2.4, CG: 2.05, FG: 1.2 };

const clefGlyphs: readonly GlyphRecipe[] = Object.entries(clefPairs).map(([letters, { code, linesApart }]) => ({
  code,
  parts: [
    { from: CLEF_CODES[letters.charAt(0)] ?? 0, scale: CLEF_SCALE },
    { from: CLEF_CODES[letters.charAt(1)] ?? 0, x: UPPER_CLEF_X[letters] ?? 0, y: linesApart, scale: CLEF_SCALE },
  ],
}));

/** Beside a head a sign is drawn a little smaller than over it. */
const BESIDE_SCALE = 0.8;

const shapeGlyphs: readonly GlyphRecipe[] = shapes.flatMap((shape) => {
  const code = codeOfShape(shape);
  if (code === undefined || code === shape.codepoint) return [];
  const whole: Borrowed = { from: shape.codepoint ?? 0, scale: BESIDE_SCALE };
  return { code, parts: composedShapes[shape.name] ?? [whole], centred: !standsOutside(shape) };
});

/** Distance of brackets and parentheses from the accidental between them. */
const ENCLOSED_APART = 0.18;

const enclosedGlyphs: readonly GlyphRecipe[] = Object.entries(ENCLOSING).flatMap(([enclose, [left, right]]) =>
  Object.entries(ENCLOSABLE).flatMap(([accid, sign]) => {
    const code = codeOfEnclosed(accid, enclose);
    const parts = [left, sign, right].map((from) => ({ from }));
    return code === undefined ? [] : [{ code, parts, apart: ENCLOSED_APART }];
  }),
);

const borrowedGlyphs: readonly GlyphRecipe[] = BORROWED.flatMap(([first, last]) =>
  Array.from({ length: last - first + 1 }, (_, i) => ({
    code: first + i,
    parts: [{ from: first + i }],
    stemsOf: first + i,
  })),
);

/** Every glyph, each code point once. */
export const glyphs: readonly GlyphRecipe[] = [
  ...borrowedGlyphs,
  ...clefGlyphs,
  ...shapeGlyphs,
  ...enclosedGlyphs,
  { code: BLACK_BREVE, parts: blackBreve },
  ...[...BLANKS].map(([code, width]) => ({ code, parts: [], width })),
];
