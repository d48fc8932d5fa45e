/** How wide a page has to be: a full line of the source, or a bar of music without a measure, may hold more than one of print. */
import { format } from '../../grammar/time';
import type { XmlElement } from '../export/xml';
import { elementsOf, layersOf } from './flavour/element';
import { withoutOssias } from './flavour/ossias';
import { timed } from './flavour/split';

/** In tenths of a millimetre at the usual size: for a moment at which something begins, an accidental, a measure, clefs. */
const PER_MOMENT = 48;
const PER_ACCIDENTAL = 30;
const PER_MEASURE = 40;
const PER_SYSTEM = 300;

/** The names of staves or parts, before the first system of a piece: a letter, and brace and bracket with their distances. */
const PER_LETTER = 18;
const BESIDE_NAME = 300;

/** The width of the fullest system of the source; where lines end as they fit, of the fullest measure as one. */
export function widthFor(root: XmlElement, breaks: 'encoded' | 'auto'): number {
  const begins = breaks === 'encoded' ? 'sb' : 'measure';
  const systems = [0];
  let names = 0;
  for (const element of elementsOf(root)) {
    if (element.name === 'label') names = Math.max(names, widthOfName(element));
    if (element.name === begins) systems.push(PER_SYSTEM);
    if (element.name !== 'measure') continue;
    systems.push((systems.pop() ?? 0) + names + widthOfMeasure(element));
    names = 0;
  }
  return Math.max(...systems);
}

const widthOfName = ({ content }: XmlElement): number =>
  typeof content === 'string' ? BESIDE_NAME + content.length * PER_LETTER : 0;

function widthOfMeasure(measure: XmlElement): number {
  const layers = layersOf(withoutOssias(measure));
  const moments = new Set(layers.flatMap((layer) => events(layer)));
  const fullest = Math.max(
    0,
    ...layers.map((layer) => [...elementsOf(layer)].filter(({ name }) => name === 'accid').length),
  );
  return PER_MEASURE + moments.size * PER_MOMENT + fullest * PER_ACCIDENTAL;
}

/** The moments at which something of a layer begins, as text. */
const events = (layer: XmlElement): readonly string[] =>
  timed(layer).flatMap(({ child, at }) => {
    const notes = [...elementsOf(child)].filter(
      ({ name, attributes }) => name === 'note' && attributes.dur !== undefined,
    );
    return notes.length > 1 ? notes.map((_, i) => `${format(at)}+${i}`) : [format(at)];
  });
