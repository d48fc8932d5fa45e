/**
 * What signs mean, above the staves where they stand: an `ossia` (MEI 5.1) around each stave of a measure in which notes are
 * realised, with these in its `oStaff`.
 */
import { putUnder } from '../../../grammar/lists';
import { childrenOf, idOf, type XmlElement, xml } from '../xml';

/** At the end of every id in an ossia. */
const IN_OSSIA = '-in-ossia';

/** Elements beside the staves that join notes; all others stand at the stave itself. */
const JOINING = new Set(['tie', 'curve', 'beamSpan']);

/**
 * A document with ossias.
 * @param plain its main text
 * @param realised the same with its signs written out
 */
export function withOssias(document: XmlElement, plain: XmlElement, realised: XmlElement): XmlElement {
  const all = measuresOf(realised);
  // By their order: the id of a measure is that of its first note, and a small note that is written out is gone.
  const pairs = new Map(measuresOf(plain).map((written, i) => [idOf(written), { written, played: all[i] }]));
  return within(document, (measure) => {
    const { written, played } = pairs.get(idOf(measure)) ?? {};
    return written === undefined || played === undefined ? measure : withStavesAbove(measure, written, played);
  });
}

/** The measures of the music in their order; what the head shows of them is no music. */
function measuresOf(element: XmlElement): readonly XmlElement[] {
  if (element.name === 'measure') return [element];
  return element.name === 'meiHead' ? [] : childrenOf(element).flatMap(measuresOf);
}

/** Rewrites the measures of the main text. */
function within(element: XmlElement, by: (measure: XmlElement) => XmlElement): XmlElement {
  if (element.name === 'measure') return by(element);
  if (typeof element.content !== 'object' || element.name === 'meiHead' || element.name === 'rdg') return element;
  return { ...element, content: childrenOf(element).map((child) => within(child, by)) };
}

function withStavesAbove(measure: XmlElement, written: XmlElement, played: XmlElement): XmlElement {
  const above = stavesAbove(written, played);
  const ids = new Set([...above.values()].flat().flatMap(idsIn));
  if (ids.size === 0) return measure;
  const staves = childrenOf(measure).map((child) => {
    const layers = child.name === 'staff' ? above.get(child.attributes.n) : undefined;
    if (layers === undefined) return child;
    const numbered = layers.map((layer, i) => ({ ...layer, attributes: { ...layer.attributes, n: i + 1 } }));
    const stave = xml('oStaff', { n: child.attributes.n }, numbered);
    return xml('ossia', { type: 'realisation' }, [renamed(stave, ids), child]);
  });
  const joining = childrenOf(played).filter((element) => JOINING.has(element.name) && joins(element, ids));
  return { ...measure, content: [...staves, ...joining.map((element) => renamed(element, ids))] };
}

type StaveNumber = string | number | undefined;

/** The layers in which notes are realised, by the stave on which these stand. */
function stavesAbove(written: XmlElement, played: XmlElement): ReadonlyMap<StaveNumber, readonly XmlElement[]> {
  const above = new Map<StaveNumber, XmlElement[]>();
  for (const stave of stavesOf(played)) {
    const home = stave.attributes.n;
    const own = stavesOf(written).find(({ attributes }) => attributes.n === home);
    for (const layer of layersThatDiffer(stave, own)) {
      const crossed = descendants(layer).find(({ attributes }) => attributes.staff !== undefined);
      const n = crossed === undefined ? home : Number(crossed.attributes.staff);
      putUnder(above, n, alone(layer));
    }
  }
  return above;
}

const stavesOf = (measure: XmlElement): readonly XmlElement[] =>
  childrenOf(measure).filter(({ name }) => name === 'staff');

/** The layers in which notes are realised, all else in them silent. */
function layersThatDiffer(stave: XmlElement, written: XmlElement | undefined): readonly XmlElement[] {
  const layers = written === undefined ? [] : childrenOf(written);
  const same = new Set(layers.flatMap(childrenOf).map((element) => JSON.stringify(element)));
  const isSame = (element: XmlElement): boolean => same.has(JSON.stringify(element));
  return childrenOf(stave)
    .filter((layer) => !childrenOf(layer).every(isSame))
    .map((layer) => ({
      ...layer,
      content: childrenOf(layer).flatMap((element) => (isSame(element) ? silent(element) : [element])),
    }));
}

/** What stands at the stave itself: syllables, custodes. */
const AT_STAVE = new Set(['verse', 'custos']);

/** An element on a stave that is its own. */
function alone(element: XmlElement): XmlElement {
  const { content, attributes } = element;
  const children = childrenOf(element).filter(({ name }) => !AT_STAVE.has(name));
  return {
    ...element,
    attributes: { ...attributes, staff: undefined },
    content: typeof content === 'object' ? children.map(alone) : content,
  };
}

/** The time of an element with nothing in it; clefs stay, for they hold for what follows. */
function silent(element: XmlElement): readonly XmlElement[] {
  const { name, attributes } = element;
  const { dur, dots, grace, num, numbase } = attributes;
  if (name === 'clef') return [element];
  if (name === 'mRest' || name === 'mSpace') return [xml('mSpace')];
  if (dur !== undefined) return grace === undefined ? [xml('space', { dur, dots })] : [];
  // Of several ways to say one thing the first.
  const children = childrenOf(element).slice(0, ALTERNATIVES.has(name) ? 1 : undefined);
  const inside = children.flatMap(silent);
  const hidden = { num, numbase, 'num.visible': 'false', 'bracket.visible': 'false' };
  return name === 'tuplet' ? [xml('tuplet', hidden, inside)] : inside;
}

const ALTERNATIVES = new Set(['app', 'choice', 'subst']);

const descendants = (element: XmlElement): readonly XmlElement[] => [
  element,
  ...childrenOf(element).flatMap(descendants),
];

const idsIn = (element: XmlElement): readonly string[] => descendants(element).map(idOf);

const references = ({ attributes: { startid, endid, plist } }: XmlElement): readonly string[] =>
  [startid, endid, plist].flatMap((value) => (value === undefined ? [] : `${value}`.split(' ')));

const joins = (element: XmlElement, ids: ReadonlySet<string>): boolean => {
  const all = references(element);
  return all.length > 1 && all.every((reference) => ids.has(reference.slice(1)));
};

/** An element with ids of its own, that points to what stands in the ossia. */
function renamed(element: XmlElement, ids: ReadonlySet<string>): XmlElement {
  const reference = (word: string): string => (ids.has(word.slice(1)) ? `${word}${IN_OSSIA}` : word);
  const attributes = Object.entries(element.attributes).map(([name, value]) => {
    if (value === undefined || name === 'n') return [name, value];
    return [
      name,
      name === 'xml:id'
        ? `${value}${IN_OSSIA}`
        : POINTING.has(name)
          ? `${value}`.split(' ').map(reference).join(' ')
          : value,
    ];
  });
  const content =
    typeof element.content === 'object' ? childrenOf(element).map((child) => renamed(child, ids)) : element.content;
  return { ...element, attributes: Object.fromEntries(attributes), content };
}

const POINTING = new Set(['startid', 'endid', 'plist', 'corresp']);
