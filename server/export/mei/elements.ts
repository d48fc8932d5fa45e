/** What a tree of elements holds. */
import type { XmlElement } from '../xml';

export const childrenOf = ({ content }: XmlElement): readonly XmlElement[] =>
  typeof content === 'object' ? content.filter((child) => child !== undefined) : [];

/** The ids of an element and all that it holds. */
export function idsIn(element: XmlElement): readonly string[] {
  const id = element.attributes['xml:id'];
  return [...(id === undefined ? [] : [`${id}`]), ...childrenOf(element).flatMap(idsIn)];
}
