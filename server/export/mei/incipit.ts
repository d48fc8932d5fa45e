/** The incipit of a piece: the source's clefs, signature and meter with the beginning of each voice. */
import type { XmlElement } from '../xml';
import { xml } from '../xml';

/** So many elements of each layer are shown. */
const SHOWN = 8;

/** What the incipit keeps of a measure and its notes: nothing that points elsewhere. */
const DROPPED: ReadonlySet<string> = new Set(['xml:id', 'facs', 'corresp']);

/** @param definition with the clefs of the source; `measure`: the first of the piece */
export const incipitElement = (definition: XmlElement, measure: XmlElement): XmlElement =>
  xml('score', {}, [definition, xml('section', {}, [shortened(measure)])]);

function shortened({ name, attributes, content }: XmlElement): XmlElement {
  const kept = Object.fromEntries(Object.entries(attributes).filter(([key]) => !DROPPED.has(key)));
  if (typeof content !== 'object') return xml(name, kept, content);
  const children = content.filter((child) => child !== undefined);
  const own = name === 'measure' ? children.filter((child) => child.name === 'staff') : children;
  const music = own.filter((child) => child.name !== 'sb' && child.name !== 'pb');
  return xml(name, kept, (name === 'layer' ? music.slice(0, SHOWN) : music).map(shortened));
}
