/** A source's own lane may repeat what the main text has: where they agree, they share their ids and are no variant. */
import { childrenOf, type XmlAttributes, type XmlElement } from '../xml';
import { idsIn } from './elements';
import { EVENT_ID, eventOf } from './ids';

/** The tree of a variant, in which the layers that hold the same as the main text's have the ids of those. */
export function withSharedIds(main: XmlElement, variant: XmlElement): XmlElement {
  const layers = layersIn(main, '');
  const names = new Map<string, string>();
  for (const [where, layer] of layersIn(variant, '')) {
    const same = layers.get(where);
    if (same === undefined || withoutIds(same) !== withoutIds(layer)) continue;
    const ids = idsIn(same);
    for (const [i, id] of idsIn(layer).entries()) {
      const shared = ids[i];
      if (shared !== undefined && shared !== id) names.set(eventOf(id), eventOf(shared));
    }
  }
  return names.size === 0 ? variant : renamed(variant, names);
}

/** The layers of a tree, by their measure, stave and number. */
function layersIn(element: XmlElement, around: string): ReadonlyMap<string, XmlElement> {
  const { name, attributes } = element;
  const found = new Map<string, XmlElement>();
  const where =
    name === 'measure' ? `${attributes['xml:id']}` : name === 'staff' ? `${around} ${attributes.n}` : around;
  for (const child of childrenOf(element)) {
    if (child.name === 'layer') found.set(`${where} ${child.attributes.n}`, child);
    else for (const [key, layer] of layersIn(child, where)) found.set(key, layer);
  }
  return found;
}

const withoutIds = (element: XmlElement): string =>
  JSON.stringify(element, (key, value) => (key === 'xml:id' ? '' : value));

const renamed = ({ name, attributes, content }: XmlElement, names: ReadonlyMap<string, string>): XmlElement => ({
  name,
  attributes: renamedIn(attributes, names),
  content: typeof content === 'object' ? content.map((child) => child && renamed(child, names)) : content,
});

/** Ids stand in `xml:id`, in marks of places, and in what points to them; labels are left as they are. */
const renamedIn = (attributes: XmlAttributes, names: ReadonlyMap<string, string>): XmlAttributes =>
  Object.fromEntries(
    Object.entries(attributes).map(([key, value]) => {
      const holdsIds = typeof value === 'string' && (key === 'xml:id' || key === 'of' || value.startsWith('#'));
      return [key, holdsIds ? value.replace(EVENT_ID, (id) => names.get(id) ?? id) : value];
    }),
  );
