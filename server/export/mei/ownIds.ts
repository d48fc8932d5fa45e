/** No two elements share an id: what a variant repeats of the main text gets ids of its own. */
import { childrenOf, type XmlAttributes, type XmlContent, type XmlElement } from '../xml';
import { Ids } from './ids';

/**
 * @param readings the elements that hold the text of a variant, each with that variant
 * @returns the tree in which ids inside them that stand elsewhere too end with the variant's label, `-in-L`; what points to
 * them from within the same variant follows
 */
export function withOwnIds<V extends { readonly label: string }>(
  root: XmlElement,
  readings: ReadonlyMap<XmlElement, V>,
): XmlElement {
  const ids = new Ids();
  const renamed = new Map<V, Map<string, string>>();
  const takeMain = (element: XmlElement): void => {
    if (readings.has(element)) return;
    const id = idOf(element);
    if (id !== undefined) ids.take(id);
    for (const child of childrenOf(element)) takeMain(child);
  };
  const takeReadings = (element: XmlElement, variant: V | undefined): void => {
    const own = readings.get(element) ?? variant;
    const id = idOf(element);
    if (own !== undefined && id !== undefined) {
      const names = renamed.get(own) ?? new Map<string, string>();
      renamed.set(own, names);
      names.set(id, ids.has(id) ? ids.take(`${id}-in-${own.label}`) : ids.take(id));
    }
    for (const child of childrenOf(element)) takeReadings(child, own);
  };
  takeMain(root);
  takeReadings(root, undefined);
  const write = (element: XmlElement, variant: V | undefined): XmlElement => {
    const own = readings.get(element) ?? variant;
    const names = own && renamed.get(own);
    const { name, attributes, content } = element;
    return {
      name,
      attributes: names === undefined ? attributes : withNames(attributes, names),
      content: contentOf(content, (child) => write(child, own)),
    };
  };
  return write(root, undefined);
}

const idOf = ({ attributes }: XmlElement): string | undefined =>
  attributes['xml:id'] === undefined ? undefined : `${attributes['xml:id']}`;

const contentOf = (content: XmlContent, write: (child: XmlElement) => XmlElement): XmlContent =>
  typeof content === 'object' ? content.map((child) => child && write(child)) : content;

/** The attributes with the ids that they give or point to. */
const withNames = (attributes: XmlAttributes, names: ReadonlyMap<string, string>): XmlAttributes =>
  Object.fromEntries(
    Object.entries(attributes).map(([key, value]) => [
      key,
      typeof value === 'string' ? renamedIn(key, value, names) : value,
    ]),
  );

function renamedIn(key: string, value: string, names: ReadonlyMap<string, string>): string {
  if (key === 'xml:id') return names.get(value) ?? value;
  if (!value.startsWith('#')) return value;
  return value.replace(/#(\S+)/g, (whole, id: string) => (names.has(id) ? `#${names.get(id)}` : whole));
}
