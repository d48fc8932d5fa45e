/**
 * A signature of naturals takes the one before away: it is drawn once. The library would draw it on every system that
 * follows, so it is followed by one that draws nothing.
 */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { elementsOf } from './element';

export function drawnKeys(section: XmlElement): XmlElement {
  const children = childrenOf(section);
  if (!children.some(takesAway)) return section;
  return {
    ...section,
    content: children.flatMap((child, i) => {
      const before = children[i - 1];
      return before !== undefined && child.name === 'measure' && takesAway(before) ? [child, NOTHING] : [child];
    }),
  };
}

const takesAway = (element: XmlElement): boolean =>
  element.name === 'scoreDef' && childrenOf(element).some((child) => child.name === 'keySig' && isOfNaturals(child));

const isOfNaturals = (key: XmlElement): boolean => {
  const signs = [...elementsOf(key)].filter(({ name }) => name === 'keyAccid');
  return signs.length > 0 && signs.every(({ attributes }) => attributes.accid === 'n');
};

const NOTHING = xml('scoreDef', {}, [xml('keySig', { sig: '0', visible: 'false' })]);
