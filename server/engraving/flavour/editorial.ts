/**
 * What is the editor's, doubtful, struck out or added: visibly other than what the source shows. The editor's has brackets,
 * and its curves are broken; what is doubtful is grey, what is struck out paler still.
 */
import { childrenOf, type XmlElement } from '../../export/xml';
import { BLACK_BREVE, BLANK, codeOfEnclosed, glyphNumber } from '../font/codepoints';
import type { AddedSign } from './addition';
import { elementsOf, idOf, mapped, rewritten, roomBefore, standsAt, withAttributes } from './element';

export const GREY = '#707070';
const PALE = '#a0a0a0';

type Look = (element: XmlElement) => XmlElement;

const coloured =
  (color: string): Look =>
  (element) =>
    COLOURED.has(element.name) && element.attributes.color === undefined ? withAttributes(element, { color }) : element;

/** Elements that the library draws in a colour. */
const COLOURED = new Set([
  'note',
  'chord',
  'rest',
  'accid',
  'artic',
  'mordent',
  'ornam',
  'arpeg',
  'slur',
  'curve',
  'tie',
  'fermata',
  'dir',
  'fing',
  'custos',
]);

/** Signs that bear brackets of their own. */
const ENCLOSED = new Set(['ornam', 'arpeg', 'fermata', 'accid', 'artic']);

const bracketed: Look = (element) =>
  ENCLOSED.has(element.name) && element.attributes.enclose === undefined
    ? withAttributes(element, { enclose: 'brack' })
    : element;

/** Elements around what is not simply the source's, and what becomes of all in them. */
const LOOKS: Readonly<Record<string, Look>> = {
  supplied: bracketed,
  unclear: coloured(GREY),
  add: coloured(GREY),
  del: coloured(PALE),
};

/** Rewrites an element that says whose its content is into that content; the editor's notes stand between brackets. */
export function drawnStates(element: XmlElement, added: AddedSign[]): XmlElement {
  if (typeof element.content !== 'object') return element;
  return {
    ...element,
    content: childrenOf(element).flatMap((child) => {
      const look = LOOKS[child.name];
      // Words have no other look than their own.
      if (look === undefined || typeof child.content !== 'object') return [child];
      const within = child.name === 'supplied' ? betweenBrackets(child, added) : undefined;
      return within ?? childrenOf(child).flatMap((inner) => rewritten(inner, look) ?? []);
    }),
  };
}

const EVENTS = new Set(['note', 'chord', 'rest', 'mRest']);

/**
 * The content of a passage that the editor supplies, whose first note keeps its distance for the bracket before it; undefined
 * where no notes or rests are in it.
 */
function betweenBrackets(supplied: XmlElement, added: AddedSign[]): readonly XmlElement[] | undefined {
  const events = [...elementsOf(supplied)].filter(({ name }) => EVENTS.has(name));
  const [first] = events;
  if (first === undefined) return undefined;
  added.push({ kind: 'brackets', id: `${idOf(first)}-supplied`, at: events.map(idOf) });
  const note = events.find(({ name }) => name === 'note');
  const withRoom = (element: XmlElement): XmlElement =>
    element === note ? { ...element, content: [...childrenOf(element), roomBefore(BLANK)] } : withoutBrackets(element);
  return childrenOf(supplied).map((child) => mapped(child, withRoom));
}

const withoutBrackets: Look = (element) =>
  element.attributes.enclose === 'brack' ? withAttributes(element, { enclose: undefined }) : element;

/** A wavy line before a chord of a supplied passage stands between the brackets of the passage, and has none of its own. */
export function drawnWithin(measure: XmlElement, added: AddedSign[]): XmlElement {
  if (measure.name !== 'measure') return measure;
  const within = (sign: XmlElement): XmlElement => {
    const notes = standsAt(sign);
    const passage = added.findIndex(({ kind, at }) => kind === 'brackets' && notes.every((id) => at.includes(id)));
    const brackets = added[passage];
    if (brackets === undefined) return sign;
    added[passage] = { ...brackets, at: [idOf(sign), ...brackets.at] };
    return withoutBrackets(sign);
  };
  const content = childrenOf(measure).map((child) => (child.name === 'arpeg' ? within(child) : child));
  return { ...measure, content };
}

/** An accidental between brackets or parentheses, once all of these are known, is one glyph with them. */
export function drawnEnclosed(element: XmlElement): XmlElement {
  const { accid, enclose, 'glyph.num': glyph } = element.attributes;
  if (element.name !== 'accid' || enclose === undefined || glyph !== undefined) return element;
  const code = codeOfEnclosed(`${accid ?? ''}`, `${enclose}`);
  if (code === undefined) return element;
  return withAttributes(element, { enclose: undefined, 'glyph.auth': 'smufl', 'glyph.num': glyphNumber(code) });
}

/** The library makes of a coloured breve a void one. */
export const drawnColour = (note: XmlElement): XmlElement =>
  note.name === 'note' && note.attributes.dur === 'breve' && note.attributes.colored === 'true'
    ? withAttributes(note, { colored: undefined, 'head.shape': glyphNumber(BLACK_BREVE) })
    : note;
