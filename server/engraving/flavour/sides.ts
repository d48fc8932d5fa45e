/** On which side of its note a sign, finger or fermata stands of which the source does not say it. */
import { childrenOf, type XmlElement } from '../../export/xml';
import { idOf, isOfType, standsAt, withAttributes } from './element';
import { type Standing, standingIn } from './standing';

/** A measure in which that of a voice under another on its stave stands below, for above it would be the upper voice's. */
export function drawnSides(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure' || !childrenOf(measure).some(isOpen)) return measure;
  const standing = standingIn(measure);
  const highest = new Map<string, number>();
  for (const { stave, voice } of standing) highest.set(stave, Math.min(voice, highest.get(stave) ?? voice));
  const isUnder = ({ stave, voice }: Standing): boolean => voice > (highest.get(stave) ?? voice);
  const under = new Set(standing.filter(isUnder).flatMap(({ element, event }) => [element, event].map(idOf)));
  return {
    ...measure,
    content: childrenOf(measure).map((element) => {
      if (!isOpen(element)) return element;
      const isBelow = standsAt(element).every((id) => under.has(id));
      return isBelow ? below(element) : isFinger(element) ? withAttributes(element, { place: 'above' }) : element;
    }),
  };
}

const isFinger = (element: XmlElement): boolean => element.name === 'dir' && isOfType(element, 'fing');

/** What is given a side here. */
const isOpen = (element: XmlElement): boolean =>
  element.attributes.place === undefined &&
  (element.name === 'ornam' || element.name === 'fermata' || isFinger(element));

const below = (element: XmlElement): XmlElement =>
  withAttributes(element, { place: 'below', form: element.name === 'fermata' ? 'inv' : element.attributes.form });
