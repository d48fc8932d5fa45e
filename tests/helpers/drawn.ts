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

export interface Box {
  readonly what: string;
  readonly id: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What must not run into anything of its kind. */
const WATCHED = new Set(['notehead', 'accid', 'mordent', 'fermata', 'sign', 'custos', 'dir', 'syl', 'harm', 'artic']);

/** The boxes of heads, accidentals, signs and words of a picture, in stave spaces. */
export async function boxesIn(svg: string): Promise<readonly Box[]> {
  const who = await engraver();
  const boxes: Box[] = [];
  const visit = (element: SvgElement, what: string, id: string): void => {
    const own = WATCHED.has(classOf(element)) ? classOf(element) : what;
    const name = element.attributes['data-id'] ?? id;
    const box = own === '' ? undefined : (glyphBox(element) ?? pathBox(element) ?? textBox(element));
    if (box !== undefined) boxes.push({ what: own, id: name, ...box });
    for (const child of element.children) visit(child, own, name);
  };
  const inSpaces = (left: number, top: number, right: number, bottom: number) => ({
    left: left / SPACE,
    top: top / SPACE,
    right: right / SPACE,
    bottom: bottom / SPACE,
  });
  const glyphBox = (element: SvgElement) => {
    const glyph = glyphOf(element);
    const box = glyph && who.outline(glyph.code)?.box;
    if (glyph === undefined || box === undefined) return undefined;
    const { x, y, scale } = glyph;
    return inSpaces(x + box.left * scale, y - box.top * scale, x + box.right * scale, y - box.bottom * scale);
  };
  /** A sign of ours: the corners of its outline, moved and scaled. */
  const pathBox = ({ name, attributes }: SvgElement) => {
    const at = /translate\(([-\d.]+), ?([-\d.]+)\) scale\(([-\d.]+), ?([-\d.]+)\)/.exec(attributes.transform ?? '');
    if (name !== 'path' || at === null) return undefined;
    const [x = 0, y = 0, across = 0, down = 0] = at.slice(1).map(Number);
    const numbers = [...(attributes.d ?? '').matchAll(/-?\d+/g)].map(Number);
    const xs = numbers.filter((_, i) => i % 2 === 0).map((value) => x + value * across);
    const ys = numbers.filter((_, i) => i % 2 === 1).map((value) => y + value * down);
    return inSpaces(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
  };
  /** Words, without what hangs under the line. */
  const textBox = (element: SvgElement) => {
    if (element.name !== 'text') return undefined;
    const runs = [...below(element)].filter(({ name, children }) => name === 'tspan' && children.length === 0);
    const size = Math.max(0, ...runs.map(({ attributes }) => Number.parseFloat(attributes['font-size'] ?? '0')));
    const letters = runs.map(({ inside, closing }) => svg.slice(inside, closing).trim()).join('').length;
    const [x, y] = [Number(element.attributes.x), Number(element.attributes.y)];
    const width = letters * size * LETTER_WIDTH;
    const left = element.attributes['text-anchor'] === 'middle' ? x - width / 2 : x;
    return letters === 0 ? undefined : inSpaces(left, y - size * LETTER_HEIGHT, left + width, y);
  };
  visit(pictureOf(svg), '', '');
  return boxes;
}

/** Of an em, in the mean of the letters of an upright or sloping Times, which the pictures ask for (from memory). */
const LETTER_WIDTH = 0.44;
const LETTER_HEIGHT = 0.7;

/** How far two boxes run into one another, in the direction in which they do so less. */
export const overlap = (a: Box, b: Box): number =>
  Math.min(
    Math.min(a.right, b.right) - Math.max(a.left, b.left),
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top),
  );
