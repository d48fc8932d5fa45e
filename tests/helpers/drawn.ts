/** Scores drawn, and what stands where in the pictures, measured in stave spaces. */
import { SPACE, stavesIn } from '../../server/engraving/additions/heads';
import { below, classOf, glyphOf, readSvg, type SvgElement } from '../../server/engraving/svg';
import type { ExportOptions } from '../../server/export/formats';
import { exportSvg } from '../../server/pages/svg';
import type { Score } from '../../server/score/score';
import { engraver } from './engraver';

const PLAIN: ExportOptions = { clefs: 'source', leaveGaps: false };

/** The pages of a score as SVG. */
export async function drawn(score: Score, options: Partial<ExportOptions> = {}): Promise<readonly string[]> {
  const { content } = exportSvg(score, { ...PLAIN, ...options }, await engraver());
  if (!Array.isArray(content) || content.length === 0) throw new Error('nothing was drawn');
  return content as readonly string[];
}

export function pictureOf(svg: string): SvgElement {
  const root = readSvg(svg);
  if (root === undefined) throw new Error('no picture');
  return root;
}

/** All elements of a class, in their order. */
export const ofClass = (root: SvgElement, wanted: string): readonly SvgElement[] =>
  [...below(root)].filter((element) => classOf(element) === wanted);

/** The first glyph drawn in an element. */
export const glyphIn = (element: SvgElement) => [...below(element)].flatMap((one) => glyphOf(one) ?? [])[0];

/** Steps from the bottom line of a stave, by the middle of a head or the line of a clef. */
export function stepIn(measure: SvgElement, stave: number, element: SvgElement): number {
  const lines = stavesIn(measure)[stave];
  const glyph = glyphIn(element);
  if (lines === undefined || glyph === undefined) throw new Error('no such stave, or no glyph');
  return (lines.bottom - glyph.y) / (SPACE / 2);
}
