/**
 * Clefs as the library draws them: two on one stave are one with a glyph of ours; one within a bar, which it takes for that
 * of its own layer, is repeated unseen in the other layers of the stave.
 */
import { putUnder } from '../../../grammar/lists';
import { compare } from '../../../grammar/time';
import { clefOf } from '../../../grammar/vocabulary/clefs';
import { childrenOf, type XmlElement } from '../../export/xml';
import { codeOfClefs, glyphNumber } from '../font/codepoints';
import { elementsOf, isStave, withAttributes } from './element';
import { type Placed, placedIn } from './moments';

export function drawnClefs(element: XmlElement): XmlElement | undefined {
  if (element.name !== 'clefGrp') return element;
  const clefs = childrenOf(element);
  const code = codeOfClefs(clefs.flatMap(({ attributes }) => clefOf(`${attributes.shape}${attributes.line}`) ?? []));
  const [lowest] = clefs;
  if (lowest === undefined || code === undefined) return lowest;
  return {
    ...lowest,
    attributes: { ...lowest.attributes, 'glyph.auth': 'smufl', 'glyph.num': glyphNumber(code) },
  };
}

/** A stave of a measure, within which a clef holds for all voices: those that have it not get it unseen. */
export function clefsOfAllVoices(stave: XmlElement): XmlElement {
  if (!isStave(stave) || childrenOf(stave).length < 2) return stave;
  if (![...elementsOf(stave)].some(isClef)) return stave;
  const layers = childrenOf(stave).map((layer) => [...placedIn(layer)]);
  const clefs = layers.map((placed) => placed.filter(({ element }) => isClef(element)));
  const layersWithAll = childrenOf(stave).map((layer, i) => {
    const others = clefs.flatMap((ofLayer, other) => (other === i ? [] : ofLayer));
    return withUnseen(layer, layers[i] ?? [], others);
  });
  const last = clefs.flat().reduce((latest, clef) => (compare(clef.at, latest.at) > 0 ? clef : latest));
  const layerOfLast = clefs.findIndex((own) => own.includes(last));
  return { ...stave, content: withLast(layersWithAll, layerOfLast) };
}

/**
 * The layer whose own clef is the last is put behind the others: the library draws before the next system the clef that it
 * read last, and none where that was an unseen one.
 */
const withLast = (layers: readonly XmlElement[], index: number): readonly XmlElement[] => [
  ...layers.filter((_, i) => i !== index),
  ...layers.slice(index, index + 1),
];

const isClef = ({ name }: XmlElement): boolean => name === 'clef';

/** What a layer may have at a moment at which another has a clef. */
const EVENTS = new Set(['note', 'chord', 'rest', 'space', 'mRest', 'mSpace', 'graceGrp']);

/** A layer with clefs that are not drawn, each before what first begins at its moment or later. */
function withUnseen(layer: XmlElement, placed: readonly Placed[], clefs: readonly Placed[]): XmlElement {
  const before = new Map<XmlElement, XmlElement[]>();
  for (const { element: clef, at } of clefs) {
    const next = placed.find(({ element, at: begins }) => EVENTS.has(element.name) && compare(begins, at) >= 0);
    putUnder(before, next?.element ?? layer, withAttributes(clef, { visible: 'false' }));
  }
  const filled = (parent: XmlElement): XmlElement =>
    typeof parent.content === 'object'
      ? { ...parent, content: childrenOf(parent).flatMap((child) => [...(before.get(child) ?? []), filled(child)]) }
      : parent;
  const whole = filled(layer);
  return { ...whole, content: [...childrenOf(whole), ...(before.get(layer) ?? [])] };
}
