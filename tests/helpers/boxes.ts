/** The boxes of what is drawn, in stave spaces. */
import { SPACE } from '../../server/engraving/additions/heads';
import type { Engraver } from '../../server/engraving/engraver';
import { below, classOf, glyphOf, glyphsOf, type Point, type SvgElement } from '../../server/engraving/svg';
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
const WATCHED = new Set([
  'notehead',
  'rest',
  'mRest',
  'accid',
  'mordent',
  'arpeg',
  'fermata',
  'sign',
  'custos',
  'dir',
  'syl',
  'harm',
  'artic',
]);

/** The boxes of heads, accidentals, signs and words of a picture. */
export async function boxesIn(svg: string): Promise<readonly Box[]> {
  const who = await engraver();
  const boxes: Box[] = [];
  const visit = (element: SvgElement, around: string, idAround: string, above: number): void => {
    if (element.attributes.visibility === 'hidden') return;
    const what = WATCHED.has(classOf(element)) ? classOf(element) : around;
    const id = element.attributes['data-id'] ?? idAround;
    const sides = what === '' ? undefined : sidesOf(element, svg, who);
    if (sides !== undefined) boxes.push({ what, id, ...lowered(sides, above) });
    // Pieces that share a leaf are pictures within its picture, each lower than the one before.
    const down = above + Number(element.name === 'svg' ? (element.attributes.y ?? 0) : 0) * INSIDE;
    if (!isTurned(element)) for (const child of element.children) visit(child, what, id, down);
  };
  visit(pictureOf(svg), '', '', 0);
  return boxes;
}

/** Stave spaces in a unit of a picture's outside, which is ten of its inside. */
const INSIDE = 10 / SPACE;

const lowered = (sides: Sides, by: number): Sides => ({ ...sides, top: sides.top + by, bottom: sides.bottom + by });

const sidesOf = (element: SvgElement, svg: string, who: Engraver): Sides | undefined =>
  turnedSides(element, who) ??
  glyphSides(element, who) ??
  outlineSides(element) ??
  bracketSides(element) ??
  strokeSides(element) ??
  textSides(element, svg);

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

const isTurned = ({ attributes }: SvgElement): boolean => (attributes.transform ?? '').startsWith('rotate(-90');

/** Glyphs that lie, turned upright about the place of the first. */
function turnedSides(element: SvgElement, who: Engraver): Sides | undefined {
  const lying = isTurned(element) ? glyphsOf(element) : [];
  const [first, last] = [lying[0], lying.at(-1)];
  const box = first && who.outline(first.code)?.box;
  if (first === undefined || last === undefined || box === undefined) return undefined;
  const { x, y, scale } = first;
  const length = last.x - x + box.right * scale;
  return inSpaces(x - box.top * scale, y - length, x - box.bottom * scale, y - box.left * scale);
}

/** A sign of ours: the points of its outline, moved and scaled. */
function outlineSides({ name, attributes }: SvgElement): Sides | undefined {
  const moved = /translate\(([-\d.]+), ?([-\d.]+)\) scale\(([-\d.]+), ?([-\d.]+)\)/.exec(attributes.transform ?? '');
  if (name !== 'path' || moved === null) return undefined;
  const [x = 0, y = 0, across = 0, down = 0] = moved.slice(1).map(Number);
  const points = pointsOf(attributes.d).map((point) => ({ x: x + point.x * across, y: y + point.y * down }));
  return around(points);
}

/** A bracket of ours around notes: three straight strokes. */
const bracketSides = ({ name, attributes: { d = '' } }: SvgElement): Sides | undefined =>
  name === 'path' && /^M[^A-Z]+L[^A-Z]+L[^A-Z]+L[^A-Z]+$/.test(d) ? around(pointsOf(d)) : undefined;

/** A stroke of a bracket of the library's. */
function strokeSides({ name, attributes }: SvgElement): Sides | undefined {
  if (name !== 'rect') return undefined;
  const [x = 0, y = 0, width = 0, height = 0] = ['x', 'y', 'width', 'height'].map((key) => Number(attributes[key]));
  return inSpaces(x, y, x + width, y + height);
}

function pointsOf(path = ''): readonly Point[] {
  const numbers = [...path.matchAll(/-?\d+/g)].map(Number);
  return numbers.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: numbers[i + 1] ?? 0 }] : []));
}

function around(points: readonly Point[]): Sides {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return inSpaces(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
}

/** Of an em, in the mean of the letters of the wider fonts that stand in where Times is not to be had (from memory). */
const LETTER_WIDTH = 0.5;
/** Of an em: what stands on the line, and what hangs under it. */
const LETTER_HEIGHT = 0.7;
const LETTER_DEPTH = 0.21;
const HANGING = /[gjpqy,;Q()[\]]/;

function textSides(element: SvgElement, svg: string): Sides | undefined {
  if (element.name !== 'text') return undefined;
  const runs = [...below(element)].filter(({ name, children }) => name === 'tspan' && children.length === 0);
  const size = Math.max(0, ...runs.map(({ attributes }) => Number.parseFloat(attributes['font-size'] ?? '0')));
  const letters = runs.map(({ inside, closing }) => svg.slice(inside, closing).trim()).join('');
  if (letters === '') return undefined;
  const [x, y] = [Number(element.attributes.x), Number(element.attributes.y)];
  const width = letters.length * size * LETTER_WIDTH;
  const left = element.attributes['text-anchor'] === 'middle' ? x - width / 2 : x;
  const depth = HANGING.test(letters) ? size * LETTER_DEPTH : 0;
  return inSpaces(left, y - size * LETTER_HEIGHT, left + width, y + depth);
}
