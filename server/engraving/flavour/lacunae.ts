/** What the source has lost: the time passes empty, and words say why. */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { elementsOf, idOf } from './element';

export function drawnLacunae(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure') return measure;
  const lost = [...elementsOf(measure)].flatMap((layer) => (layer.name === 'layer' ? lostIn(layer) : []));
  return lost.length === 0 ? measure : { ...measure, content: [...childrenOf(measure), ...lost.map(wordAt)] };
}

/** Ids of the empty time that a lacuna takes. */
const lostIn = (layer: XmlElement): readonly string[] => {
  const elements = [...elementsOf(layer)];
  return elements.flatMap((element, i) => {
    const time = elements[i + 1];
    return element.name === 'gap' && time !== undefined && idOf(time) !== '' ? [idOf(time)] : [];
  });
};

const wordAt = (id: string): XmlElement =>
  xml('dir', { 'xml:id': `${id}-lost`, startid: `#${id}`, place: 'above' }, [
    xml('rend', { fontsize: 'small' }, '[lost]'),
  ]);
