/** What stands beside the staves and is drawn by other means, or not at all. */
import { type XmlElement, xml } from '../../export/xml';
import { childrenOf, referred, withAttributes } from './element';

type Drawing = (element: XmlElement) => XmlElement | undefined;

/** No writing on the page: annotations, and the editor's measure of time. */
const undrawn: Drawing = () => undefined;

/** A finger that changes on its key. */
const fingers: Drawing = (group) => {
  const { 'xml:id': id, startid, place, color } = group.attributes;
  const figures = childrenOf(group).map(({ content }) => `${typeof content === 'object' ? '' : content}`);
  return xml('fing', { 'xml:id': id, startid, place, color }, figures.join('–'));
};

/** Words stand over their stave where nothing else is said. */
const overStave: Drawing = (element) =>
  element.attributes.place === undefined ? withAttributes(element, { place: 'above' }) : element;

const DRAWINGS: Readonly<Record<string, Drawing>> = {
  annot: undrawn,
  tempo: (tempo) => (tempo.attributes.type === 'editorial' ? undefined : tempo),
  fingGrp: fingers,
  dir: overStave,
};

export const drawnBeside: Drawing = (element) => {
  const drawing = DRAWINGS[element.name];
  return drawing === undefined ? element : drawing(element);
};

/** What stands on a barline, which the library takes for no place, stands at the end of its measure. */
export function drawnAtBarline(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure') return measure;
  const own = measure.attributes['xml:id'];
  return {
    ...measure,
    content: childrenOf(measure).map((element) => {
      if (own === undefined || referred(element.attributes.startid) !== `${own}`) return element;
      const { startid: _, ...others } = element.attributes;
      return { ...element, attributes: { ...others, tstamp: LAST_BEAT, staff: 1 } };
    }),
  };
}

/** A beat after all others is at the barline. */
const LAST_BEAT = 1000;
