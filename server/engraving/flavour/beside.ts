/** What stands beside the staves and is drawn by other means, or not at all. */
import { type XmlElement, xml } from '../../export/xml';
import { childrenOf, referred, withAttributes } from './element';
import type { Moments } from './moments';

type Drawing = (element: XmlElement) => XmlElement | undefined;

/** No writing on the page: annotations, and the editor's measure of time. */
const undrawn: Drawing = () => undefined;

/** A finger as a word: the library sets its own fingers close to the heads, where stems run through them. */
const finger: Drawing = (element) => fingerWord(element, [element]);

/** A finger that changes on its key. */
const fingers: Drawing = (group) => fingerWord(group, childrenOf(group).flatMap(childrenOf));

function fingerWord({ attributes }: XmlElement, figures: readonly XmlElement[]): XmlElement {
  const { 'xml:id': id, startid, place = 'above', color } = attributes;
  const text = figures.map(({ content }) => `${typeof content === 'object' ? '' : content}`).join('–');
  const look = { fontsize: 'small', fontstyle: 'normal', fontweight: 'bold' };
  return xml('dir', { 'xml:id': id, startid, place, color, type: 'fing' }, [xml('rend', look, text)]);
}

/** A tie whose other end the source does not show, or that is not drawn here. */
const tie: Drawing = (element) => (element.attributes.endid === undefined ? { ...element, name: 'lv' } : element);

/** Words stand over their stave where nothing else is said. */
const overStave: Drawing = (element) =>
  element.attributes.place === undefined ? withAttributes(element, { place: 'above' }) : element;

const DRAWINGS: Readonly<Record<string, Drawing>> = {
  annot: undrawn,
  tempo: (tempo) => (tempo.attributes.type === 'editorial' ? undefined : tempo),
  fing: finger,
  fingGrp: fingers,
  tie,
  dir: overStave,
};

export const drawnBeside: Drawing = (element) => {
  const drawing = DRAWINGS[element.name];
  return drawing === undefined ? element : drawing(element);
};

/** Figures by their moment: the library sets those that name a note on other lines than those that name a moment. */
export function drawnFigures(element: XmlElement, moments: Moments): XmlElement {
  if (element.name !== 'harm') return element;
  const { startid, ...others } = element.attributes;
  const moment = moments.of(referred(startid));
  return moment === undefined ? element : { ...element, attributes: { ...others, ...moment } };
}

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
