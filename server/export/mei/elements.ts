/** What a tree of elements holds. */
import { childrenOf, type XmlElement } from '../xml';

/** The ids of an element and all that it holds. */
export function idsIn(element: XmlElement): readonly string[] {
  const id = element.attributes['xml:id'];
  return [...(id === undefined ? [] : [`${id}`]), ...childrenOf(element).flatMap(idsIn)];
}
