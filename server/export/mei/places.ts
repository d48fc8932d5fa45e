/**
 * Marks in a tree of where a place of options, or what belongs to one event, begins and ends: trees of variants agree about
 * them, so that what differs in two places is told in two. They are no elements of MEI and are taken out in the end.
 */
import type { Chunk } from '../chunks';
import { type XmlElement, xml } from '../xml';
import { placeId } from './ids';

const MARK = '#place';

export const placeMark = (of: string): XmlElement => xml(MARK, { of });

/** The id of the outermost place of options around an event; undefined of one outside all. */
export function placeOf({ event, system }: Chunk): string | undefined {
  const [outermost] = event.chosen;
  if (outermost === undefined) return undefined;
  const before = event.address.indexOf(`.${outermost.labels[0]}`);
  return placeId(system, { laneName: event.laneName, address: event.address.slice(0, before) });
}

/** The tree without marks. */
export function withoutMarks(element: XmlElement): XmlElement {
  const { name, attributes, content } = element;
  if (typeof content !== 'object') return element;
  const children = content.flatMap((child) =>
    child === undefined || child.name === MARK ? [] : [withoutMarks(child)],
  );
  return { name, attributes, content: children };
}
