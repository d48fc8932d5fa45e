/** Heads, stems and staves of a picture, by the notes that bear signs of ours. */
import type { GlyphOutline } from '../engraver';
import { BLANKS } from '../font/codepoints';
import { below, classOf, find, type Glyph, glyphsOf, lineOf, type Point, type SvgElement } from '../svg';

/** Gives the outline of a glyph of the font; undefined where it has none. */
export type Outlines = (code: number) => GlyphOutline | undefined;

/** A stave space on the page, and the scale at which glyphs of a full-sized stave are drawn. */
export const SPACE = 180;
export const SCALE = 0.72;

/** Distance of a sign from what stands beside it. */
export const GAP = 0.2 * SPACE;

export interface Head extends Point {
  readonly left: number;
  readonly right: number;
  /** Its `g`. */
  readonly element: SvgElement;
}

export const headsOf = (bearer: SvgElement, outlines: Outlines): readonly Head[] =>
  [...below(bearer)]
    .filter((element) => classOf(element) === 'notehead')
    .flatMap((element) =>
      glyphsOf(element).map((glyph) => {
        const { x, y } = glyph;
        return { element, x, y, left: x, right: x + widthOf(glyph, outlines) };
      }),
    );

const widthOf = ({ code, scale }: Glyph, outlines: Outlines): number =>
  (outlines(code)?.box.right ?? SPACE / SCALE) * scale;

/** The nearest element of a class around another. */
export function above(element: SvgElement, wanted: string): SvgElement | undefined {
  let around = element.parent;
  while (around !== undefined && classOf(around) !== wanted) around = around.parent;
  return around;
}

/** Right of the heads and their dots. */
export function rightOf(bearer: SvgElement, heads: readonly Head[]): number {
  const around = above(bearer, 'chord') ?? bearer;
  const dots = [...below(around)]
    .filter(({ name }) => name === 'ellipse')
    .map(({ attributes: { cx, rx } }) => Number(cx) + Number(rx));
  return Math.max(...heads.map(({ right }) => right), ...dots);
}

/** The accidentals within an element, as they are drawn. */
export const accidentalGlyphs = (element: SvgElement): readonly Glyph[] =>
  [...below(element)].filter((one) => classOf(one) === 'accid').flatMap(glyphsOf);

/** Left of the heads and their accidentals; room that is kept before them is for what comes to stand there. */
export const leftOf = (bearer: SvgElement, heads: readonly Head[]): number => {
  const accidentals = accidentalGlyphs(bearer).filter(({ code }) => !BLANKS.has(code));
  return Math.min(...heads.map(({ left }) => left), ...accidentals.map(({ x }) => x));
};

/** What a glyph takes on the page. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const extentsOf = (glyphs: readonly Glyph[], outlines: Outlines): readonly Extent[] =>
  glyphs.flatMap(({ code, x, y, scale }) => {
    const box = outlines(code)?.box;
    if (box === undefined) return [];
    const [left, right] = [x + box.left * scale, x + box.right * scale];
    return [{ left, right, top: y - box.top * scale, bottom: y - box.bottom * scale }];
  });

/** What the accidentals within an element take. */
export const accidentalsIn = (element: SvgElement, outlines: Outlines): readonly Extent[] =>
  extentsOf(accidentalGlyphs(element), outlines);

/** What the flags of a note, or of the chord around it, take. */
export const flagsOf = (bearer: SvgElement, outlines: Outlines): readonly Extent[] => {
  const around = above(bearer, 'chord') ?? bearer;
  const flags = [...below(around)].filter((one) => classOf(one) === 'flag');
  return extentsOf(flags.flatMap(glyphsOf), outlines);
};

/** Left of an upright wavy line, which the library draws as one that lies and turns about its foot; else without bound. */
export function leftOfWave(wavyLine: SvgElement, outlines: Outlines): number {
  const [foot] = glyphsOf(wavyLine);
  const box = foot && outlines(foot.code)?.box;
  return foot === undefined || box === undefined ? Number.POSITIVE_INFINITY : foot.x - box.top * foot.scale;
}

export const topOf = (heads: readonly Point[]): number => Math.min(...heads.map(({ y }) => y));
export const bottomOf = (heads: readonly Point[]): number => Math.max(...heads.map(({ y }) => y));
export const middleOf = (heads: readonly Point[]): number => (topOf(heads) + bottomOf(heads)) / 2;

export const centreOf = ({ left, right }: Head): number => (left + right) / 2;

const SOLID = new Set(['notehead', 'rest', 'mRest']);

/** Whether a head or rest stands between two heads of which one is over the other. */
export function isSomethingBetween(upper: Head, lower: Head): boolean {
  const measure = above(upper.element, 'measure');
  const solids = measure === undefined ? [] : [...below(measure)].filter((one) => SOLID.has(classOf(one)));
  return solids
    .flatMap(glyphsOf)
    .some(({ x, y }) => y > upper.y && y < lower.y && x > upper.left - SPACE && x < upper.right);
}

/** The two ends of the stem of a note, from the head. */
export function stemOf(bearer: SvgElement): readonly [Point, Point] | undefined {
  const stem = find(bearer, 'stem') ?? find(above(bearer, 'chord') ?? bearer, 'stem');
  return stem?.children.flatMap((child) => {
    const ends = lineOf(child);
    return ends === undefined ? [] : [ends];
  })[0];
}

// ─── staves ──────────────────────────────────────────────────────────────────────────────────────────────────────────

/** The lines of a stave in one measure. */
export interface StaveLines {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The lines of a stave, as the library draws them first in it. */
export function stavesIn(measure: SvgElement): readonly StaveLines[] {
  return measure.children
    .filter((element) => classOf(element) === 'staff')
    .flatMap((stave) => {
      const lines = stave.children.flatMap((child) => {
        const ends = lineOf(child);
        return ends !== undefined && ends[0].y === ends[1].y ? [ends] : [];
      });
      const [first] = lines;
      if (first === undefined) return [];
      const heights = lines.map(([{ y }]) => ({ x: 0, y }));
      return [{ left: first[0].x, right: first[1].x, top: topOf(heights), bottom: bottomOf(heights) }];
    });
}

/** The stave nearest to a height: a note may stand on another stave than that of its layer. */
export function staveAt(measure: SvgElement, y: number): number {
  const distances = stavesIn(measure).map(({ top, bottom }) => Math.max(top - y, y - bottom, 0));
  return distances.indexOf(Math.min(...distances));
}
