/** What the library draws otherwise than an engraver would, moved or taken out. */
import { keepingLast } from '../../../grammar/keeping';
import { BRACKET_LEFT, BRACKET_RIGHT } from '../font/codepoints';
import { below, classOf, glyphsOf, type Point, type Splice, type SvgElement } from '../svg';
import { above, GAP, type Outlines, SPACE } from './heads';

export function mended(svg: string, elements: readonly SvgElement[], outlines: Outlines): readonly Splice[] {
  return elements.flatMap((element) => MENDINGS[classOf(element)]?.(element, svg, outlines) ?? []);
}

type Mending = (element: SvgElement, svg: string, outlines: Outlines) => readonly Splice[];

/** The accidental of a custos stands before it, as before a note: the library sets it after it. */
const custosAfterAccidental: Mending = (custos, svg, outlines) => {
  const [sign] = glyphsOf(custos);
  const [around] = custos.children.filter((child) => classOf(child) === 'accid');
  const [accidental] = around === undefined ? [] : glyphsOf(around);
  const box = accidental && outlines(accidental.code)?.box;
  if (sign === undefined || accidental === undefined || box === undefined) return [];
  const right = sign.x + box.right * accidental.scale + GAP;
  return custos.children.map((child) =>
    child === around ? moved(child, { x: sign.x, y: accidental.y }, svg) : moved(child, { x: right, y: sign.y }, svg),
  );
};

/** Brackets around a sign stand at its sides and its height: the library sets all as for a short zigzag. */
const bracketsAtSides: Mending = (sign, svg, outlines) => {
  const [before, glyph, after] = glyphsOf(sign);
  if (before?.code !== BRACKET_LEFT || glyph === undefined || after?.code !== BRACKET_RIGHT) return [];
  const [left, box] = [before, glyph].map(({ code }) => outlines(code)?.box);
  const [first, , last] = sign.children;
  if (left === undefined || box === undefined || first === undefined || last === undefined) return [];
  const y = glyph.y - ((box.top + box.bottom) / 2) * glyph.scale;
  const x = glyph.x + box.left * glyph.scale - GAP - left.right * before.scale;
  return [moved(first, { x, y }, svg), moved(last, { x: glyph.x + box.right * glyph.scale + GAP, y }, svg)];
};

/** The glyph that an element is, or has in it, at another place. */
const moved = ({ start, end }: SvgElement, { x, y }: Point, svg: string): Splice => ({
  start,
  end,
  text: svg.slice(start, end).replace(PLACED, `translate(${Math.round(x)}, ${Math.round(y)})`),
});

const PLACED = /translate\([^)]*\)/;

/** Of a curve from the barline at the end of a system, which is drawn in the next, the library draws a stub here. */
const noStub: Mending = ({ attributes, children: [curve] }, svg) => {
  const xs = [...(curve?.attributes.d ?? '').matchAll(/([-\d.]+),/g)].map(([, x]) => Number(x));
  const isShort = Math.max(...xs) - Math.min(...xs) < STUB;
  if (curve === undefined || !isShort || !svg.includes(` id-${attributes['data-id']} spanning"`)) return [];
  return [{ start: curve.start, end: curve.end, text: '' }];
};

const STUB = 0.8 * SPACE;

/** The line of a syllable that is held on ends before the next, which may begin well before its note. */
const lineBeforeNextSyllable: Mending = (syllable, svg) => {
  const line = syllable.children.find(({ name, attributes }) => name === 'rect' && Number(attributes.width) > SPACE);
  const system = above(syllable, 'system');
  if (line === undefined || system === undefined) return [];
  const { x, y, width, height } = line.attributes;
  const baseline = textsOf(syllable)[0]?.attributes.y;
  const following = syllablesIn(system)
    .filter(({ attributes }) => attributes.y === baseline && Number(attributes.x) > Number(x))
    .filter(({ inside, closing }) => LETTER.test(svg.slice(inside, closing)));
  const end = Math.min(...following.map(({ attributes }) => Number(attributes.x))) - GAP;
  if (end >= Number(x) + Number(width)) return [];
  const shorter = `<rect x="${x}" y="${y}" height="${height}" width="${Math.round(Math.max(0, end - Number(x)))}" />`;
  return [{ start: line.start, end: line.end, text: shorter }];
};

/** Where a syllable only holds on, its text is empty. */
const LETTER = />[^<]*[^<\s]/;

const textsOf = ({ children }: SvgElement): readonly SvgElement[] => children.filter(({ name }) => name === 'text');

const syllablesIn = keepingLast((system: SvgElement) =>
  [...below(system)].filter((element) => classOf(element) === 'syl').flatMap(textsOf),
);

const MENDINGS: Readonly<Record<string, Mending>> = {
  custos: custosAfterAccidental,
  mordent: bracketsAtSides,
  slur: noStub,
  syl: lineBeforeNextSyllable,
};
