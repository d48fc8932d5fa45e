/**
 * Figures of a thorough bass. The library draws nothing of a figure but its text, and the line that holds a figure on only
 * where the figure itself says how far, not its column.
 */
import { childrenOf, type XmlElement } from '../../export/xml';
import { withAttributes } from './element';

/** Stroked figures (SMuFL, "Figured bass"). */
const STROKED = new Map([
  ['2', 0xea53],
  ['4', 0xea56],
  ['5', 0xea58],
  ['6', 0xea5c],
  ['7', 0xea5e],
  ['9', 0xea62],
]);

/** What has no stroked form bears a cross, which says the same (common practice). */
function stroked(text: string): string {
  const [number = ''] = /\d+/.exec(text) ?? [];
  const glyph = STROKED.get(number);
  return glyph === undefined ? `${text}+` : text.replace(number, String.fromCodePoint(glyph));
}

/** Elements within a figure, and what they make of its text. */
const FRAMES: Readonly<Record<string, (text: string) => string>> = {
  rend: stroked,
  supplied: (text) => `[${text}]`,
};

function textOf(element: XmlElement): string {
  const { name, content } = element;
  const text = typeof content === 'object' ? childrenOf(element).map(textOf).join('') : `${content ?? ''}`;
  return FRAMES[name]?.(text) ?? text;
}

export function drawnFigures(element: XmlElement): XmlElement {
  if (element.name === 'f') return { ...element, content: textOf(element) };
  const { endid } = element.attributes;
  if (element.name !== 'harm' || endid === undefined) return element;
  const held = (figure: XmlElement): XmlElement =>
    figure.attributes.extender === undefined ? figure : withAttributes(figure, { endid });
  const columns = childrenOf(element).map((column) => ({ ...column, content: childrenOf(column).map(held) }));
  return { ...withAttributes(element, { endid: undefined }), content: columns };
}
