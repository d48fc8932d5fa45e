/** The boxes of what is drawn, in stave spaces. */
import { SPACE } from '../../server/engraving/additions/heads';
import type { Engraver } from '../../server/engraving/engraver';
import { below, classOf, glyphOf, type SvgElement } from '../../server/engraving/svg';
import { pictureOf } from './drawn';
import { engraver } from './engraver';

interface Sides {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Box extends Sides {
  /** The class of the element: `notehead`, `accid` … */
  readonly what: string;
  /** The nearest `data-id`. */
  readonly id: string;
}

/** What must not run into anything of its kind. */
const WATCHED = new Set(['notehead', 'accid', 'mordent', 'fermata', 'sign', 'custos', 'dir', 'syl', 'harm', 'artic']);

/** The boxes of heads, accidentals, signs and words of a picture. */
export async function boxesIn(svg: string): Promise<readonly Box[]> {
  const who = await engraver();
  const boxes: Box[] = [];
  const visit = (element: SvgElement, around: string, idAround: string): void => {
    const what = WATCHED.has(classOf(element)) ? classOf(element) : around;
    const id = element.attributes['data-id'] ?? idAround;
    const sides = what === '' ? undefined : (glyphSides(element, who) ?? pathSides(element) ?? textSides(element, svg));
    if (sides !== undefined) boxes.push({ what, id, ...sides });
    for (const child of element.children) visit(child, what, id);
  };
  visit(pictureOf(svg), '', '');
  return boxes;
}

/** How far two boxes run into one another, in the direction in which they do so less. */
export const overlap = (a: Box, b: Box): number =>
  Math.min(
    Math.min(a.right, b.right) - Math.max(a.left, b.left),
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top),
  );

const inSpaces = (left: number, top: number, right: number, bottom: number): Sides => ({
  left: left / SPACE,
  top: top / SPACE,
  right: right / SPACE,
  bottom: bottom / SPACE,
});

function glyphSides(element: SvgElement, who: Engraver): Sides | undefined {
  const glyph = glyphOf(element);
  const box = glyph && who.outline(glyph.code)?.box;
  if (glyph === undefined || box === undefined) return undefined;
  const { x, y, scale } = glyph;
  return inSpaces(x + box.left * scale, y - box.top * scale, x + box.right * scale, y - box.bottom * scale);
}

/** A sign of ours: the points of its outline, moved and scaled. */
function pathSides({ name, attributes }: SvgElement): Sides | undefined {
  const moved = /translate\(([-\d.]+), ?([-\d.]+)\) scale\(([-\d.]+), ?([-\d.]+)\)/.exec(attributes.transform ?? '');
  if (name !== 'path' || moved === null) return undefined;
  const [x = 0, y = 0, across = 0, down = 0] = moved.slice(1).map(Number);
  const numbers = [...(attributes.d ?? '').matchAll(/-?\d+/g)].map(Number);
  const xs = numbers.filter((_, i) => i % 2 === 0).map((value) => x + value * across);
  const ys = numbers.filter((_, i) => i % 2 === 1).map((value) => y + value * down);
  return inSpaces(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
}

/** Of an em, in the mean of the letters of an upright or sloping Times, which the pictures ask for (from memory). */
const LETTER_WIDTH = 0.44;
/** Of an em, without what hangs under the line. */
const LETTER_HEIGHT = 0.7;

function textSides(element: SvgElement, svg: string): Sides | undefined {
  if (element.name !== 'text') return undefined;
  const runs = [...below(element)].filter(({ name, children }) => name === 'tspan' && children.length === 0);
  const size = Math.max(0, ...runs.map(({ attributes }) => Number.parseFloat(attributes['font-size'] ?? '0')));
  const letters = runs.map(({ inside, closing }) => svg.slice(inside, closing).trim()).join('').length;
  if (letters === 0) return undefined;
  const [x, y] = [Number(element.attributes.x), Number(element.attributes.y)];
  const width = letters * size * LETTER_WIDTH;
  const left = element.attributes['text-anchor'] === 'middle' ? x - width / 2 : x;
  return inSpaces(left, y - size * LETTER_HEIGHT, left + width, y);
}
