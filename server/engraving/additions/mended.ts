/** What the library draws otherwise than an engraver would, moved or taken out. */
import { classOf, glyphsOf, type Splice, type SvgElement } from '../svg';
import { GAP, type Outlines, SPACE } from './heads';

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
  return custos.children.flatMap((child) => moved(child, child === around ? sign.x : right, svg));
};

/** The glyph of an element, or of what is in it, at another place on its line. */
const moved = ({ start, end }: SvgElement, x: number, svg: string): readonly Splice[] => [
  { start, end, text: svg.slice(start, end).replace(/translate\([-\d.]+/, `translate(${Math.round(x)}`) },
];

/** Of a curve from the barline at the end of a system, which is drawn in the next, the library draws a stub here. */
const noStub: Mending = ({ attributes, children: [curve] }, svg) => {
  const xs = [...(curve?.attributes.d ?? '').matchAll(/([-\d.]+),/g)].map(([, x]) => Number(x));
  const isShort = Math.max(...xs) - Math.min(...xs) < STUB;
  if (curve === undefined || !isShort || !svg.includes(` id-${attributes['data-id']} spanning"`)) return [];
  return [{ start: curve.start, end: curve.end, text: '' }];
};

const STUB = 0.8 * SPACE;

const MENDINGS: Readonly<Record<string, Mending>> = { custos: custosAfterAccidental, slur: noStub };
