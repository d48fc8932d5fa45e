/** Staves above others, which are cut with their measure like any other: so they stand beside them until all is cut. */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { sounds } from './element';

/** A measure with the staves of its ossias among its own. */
export const withoutOssias = (measure: XmlElement): XmlElement =>
  measure.name === 'measure' && childrenOf(measure).some(({ name }) => name === 'ossia')
    ? {
        ...measure,
        content: childrenOf(measure).flatMap((child) => (child.name === 'ossia' ? childrenOf(child) : [child])),
      }
    : measure;

/** A measure whose staves have their ossias around them again, those in which nothing sounds left out. */
export function withOssias(measure: XmlElement): XmlElement {
  if (!childrenOf(measure).some(({ name }) => name === 'oStaff')) return measure;
  const above = new Map(
    childrenOf(measure)
      .filter((child) => child.name === 'oStaff' && sounds(child))
      .map((stave) => [stave.attributes.n, stave]),
  );
  return {
    ...measure,
    content: childrenOf(measure).flatMap((child) => {
      const stave = child.name === 'staff' ? above.get(child.attributes.n) : undefined;
      if (child.name === 'oStaff') return [];
      return [stave === undefined ? child : xml('ossia', {}, [stave, child])];
    }),
  };
}
