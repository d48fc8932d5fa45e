/** What stands beside the staves and is drawn by other means, or not at all. */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { referred } from './element';
import type { Moments } from './moments';

/** What an element becomes; undefined leaves it out. */
type Redrawing = (element: XmlElement) => XmlElement | undefined;

/** No writing on the page: annotations, and the editor's measure of time. */
const undrawn: Redrawing = () => undefined;

/** A finger as a word: the library sets its own fingers close to the heads, where stems run through them. */
const finger: Redrawing = (element) => fingerWord(element, [element]);

/** A finger that changes on its key. */
const fingers: Redrawing = (group) => fingerWord(group, childrenOf(group).flatMap(childrenOf));

function fingerWord({ attributes }: XmlElement, figures: readonly XmlElement[]): XmlElement {
  const { 'xml:id': id, startid, place, color } = attributes;
  const text = figures.map(({ content }) => `${typeof content === 'object' ? '' : content}`).join('–');
  const look = { fontsize: 'small', fontstyle: 'normal', fontweight: 'bold' };
  return xml('dir', { 'xml:id': id, startid, place, color, type: 'fing' }, [xml('rend', look, text)]);
}

/**
 * Empty room after words. The library measures them in a Times; where that is not to be had, they are drawn wider, and would
 * reach into what follows. Under a stave it would part a barline that they do not reach.
 */
const ROOM: Readonly<Record<string, string>> = { above: '\u00a0\u00a0' };

/** Words stand over their stave where nothing else is said. */
const words: Redrawing = (element) => {
  const { attributes, content } = element;
  const place = attributes.place ?? 'above';
  return {
    ...element,
    attributes: { ...attributes, place },
    content: typeof content === 'object' ? content : `${content ?? ''}${ROOM[place] ?? ''}`,
  };
};

const REDRAWINGS: Readonly<Record<string, Redrawing>> = {
  annot: undrawn,
  tempo: (tempo) => (tempo.attributes.type === 'editorial' ? undefined : tempo),
  fing: finger,
  fingGrp: fingers,
  dir: words,
};

export const drawnBeside: Redrawing = (element) => {
  const redrawn = REDRAWINGS[element.name];
  return redrawn === undefined ? element : redrawn(element);
};

/**
 * What names a place that the library does not take, or takes otherwise than it should, by its moment: figures, which it sets on
 * other lines where they name a note, and what stands on the barline of a measure.
 */
export function drawnByMoment(element: XmlElement, moments: Moments): XmlElement {
  const { startid, ...others } = element.attributes;
  if (startid === undefined) return element;
  const id = referred(startid);
  const moment = element.name === 'harm' ? moments.of(id) : moments.endOf(id);
  return moment === undefined ? element : { ...element, attributes: { ...moment, ...others } };
}
