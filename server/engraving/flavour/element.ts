/** Small questions to elements of a tree. */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { glyphNumber } from '../font/codepoints';

/** An element and all below it. */
export function* elementsOf(element: XmlElement): Generator<XmlElement> {
  yield element;
  for (const child of childrenOf(element)) yield* elementsOf(child);
}

export { idOf } from '../../export/xml';

/** A stave of a measure, or one above it that says the same otherwise. */
export const isStave = ({ name }: XmlElement): boolean => name === 'staff' || name === 'oStaff';

/** The layers of all staves of a measure. */
export const layersOf = (measure: XmlElement): readonly XmlElement[] =>
  childrenOf(measure)
    .filter(isStave)
    .flatMap(childrenOf)
    .filter(({ name }) => name === 'layer');

/** The notes of a chord, or a note by itself. */
export const membersOf = (event: XmlElement): readonly XmlElement[] =>
  event.name === 'chord' ? childrenOf(event).filter(({ name }) => name === 'note') : [event];

/** Whether there are notes in an element. */
export const sounds = (element: XmlElement): boolean => [...elementsOf(element)].some(({ name }) => name === 'note');

/** The id to which an attribute refers: `#e1` gives `e1`. */
export const referred = (value: string | number | undefined): string => `${value ?? ''}`.replace(/^#/, '');

/** Ids of the notes and chords at which a sign stands. */
export const standsAt = ({ attributes: { plist, startid } }: XmlElement): readonly string[] =>
  `${plist ?? startid ?? ''}`.split(' ').map(referred);

/** Whether a word stands in the `type` of an element. */
export const isOfType = ({ attributes }: XmlElement, word: string): boolean =>
  `${attributes.type ?? ''}`.split(' ').includes(word);

const EMPTY = new Set(['space', 'mSpace', 'tuplet']);

/** Whether an element is time in which nothing is drawn. */
export const isEmptyTime = (element: XmlElement): boolean =>
  [...elementsOf(element)].every(({ name }) => EMPTY.has(name));

/** An element with attributes more or other. */
export const withAttributes = (element: XmlElement, attributes: XmlElement['attributes']): XmlElement => ({
  ...element,
  attributes: { ...element.attributes, ...attributes },
});

/**
 * An accidental with any glyph of the font, for which the library finds room before the head. It draws none without a value.
 */
export const accidental = (code: number, attributes: XmlElement['attributes'] = {}): XmlElement =>
  xml('accid', { accid: 'n', 'glyph.auth': 'smufl', 'glyph.num': glyphNumber(code), ...attributes });

/**
 * Room of the width of a blank, which stands behind the accidentals of its note. Were it a natural, the library would set it
 * between these and the head.
 */
export const roomBefore = (blank: number): XmlElement => accidental(blank, { accid: 's' });

/** An element and all below it, seen before what stands in them is. */
export function mapped(element: XmlElement, by: (element: XmlElement) => XmlElement): XmlElement {
  const made = by(element);
  return typeof made.content === 'object'
    ? { ...made, content: made.content.map((child) => child && mapped(child, by)) }
    : made;
}

/** All elements rewritten from the innermost outwards; what becomes undefined is left out. */
export function rewritten(
  element: XmlElement,
  by: (element: XmlElement) => XmlElement | undefined,
): XmlElement | undefined {
  const { content } = element;
  if (typeof content !== 'object') return by(element);
  return by({ ...element, content: content.map((child) => child && rewritten(child, by)) });
}
