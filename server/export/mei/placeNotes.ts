/** What is said of places of options points to their `app` or `choice`, or where there is none to their notes. */
import { childrenOf, type XmlElement, xml } from '../xml';
import { idsIn } from './elements';

/** An annotation of a place. */
export interface SaidOfPlace {
  /** The id of the place. */
  readonly place: string;
  /** The id of the measure where it begins. */
  readonly measure: string;
  /** The ids of the notes of the option taken. */
  readonly notes: readonly string[];
  readonly element: XmlElement;
}

/** The tree with each annotation once, in the measure where its place begins, and with the places that are linked. */
export function withSaid(root: XmlElement, said: readonly SaidOfPlace[]): XmlElement {
  const apparatus = apparatusIn(root);
  const ids = new Set(idsIn(root));
  const known = new Set<unknown>();
  const byMeasure = new Map<string, XmlElement[]>();
  for (const { place, measure, notes, element } of said) {
    const id = element.attributes['xml:id'];
    if (known.has(id)) continue;
    known.add(id);
    const own = apparatus.filter((one) => one.place === place).map((one) => one.id);
    const about = [own, notes.filter((one) => ids.has(one)), [measure]].find((some) => some.length > 0) ?? [];
    const here = byMeasure.get(measure) ?? [];
    byMeasure.set(measure, here);
    here.push({ ...element, attributes: { ...element.attributes, plist: pointers(about) } });
  }
  const write = (element: XmlElement): XmlElement => {
    const { name, attributes, content } = element;
    if (name === 'p' && attributes.n === 'link' && typeof content === 'string') {
      const names = content.split(' ');
      const linked = apparatus.filter(({ label }) => label !== undefined && names.includes(label));
      const corresp = pointers(linked.map(({ id }) => id));
      return linked.length === 0 ? element : xml(name, { ...attributes, corresp }, content);
    }
    if (typeof content !== 'object') return element;
    const children = content.map((child) => child && write(child));
    const annotations = name === 'measure' ? (byMeasure.get(`${attributes['xml:id']}`) ?? []) : [];
    return xml(name, attributes, [...children, ...annotations]);
  };
  return write(root);
}

const pointers = (ids: readonly string[]): string => ids.map((id) => `#${id}`).join(' ');

interface Apparatus {
  readonly id: string;
  readonly place: string;
  readonly label: string | undefined;
}

/** An `app` or `choice` that has the id of a place; further ones of the same place have that with a number. */
function apparatusIn(element: XmlElement): readonly Apparatus[] {
  const { name, attributes } = element;
  const inside = childrenOf(element).flatMap(apparatusIn);
  const id = attributes['xml:id'];
  if ((name !== 'app' && name !== 'choice') || id === undefined) return inside;
  const label = attributes.label === undefined ? undefined : `${attributes.label}`;
  return [{ id: `${id}`, place: `${id}`.replace(/-x\d+$/, ''), label }, ...inside];
}
