/** Names beside the staves: open score has them, keyboard music none; of several parts each has its own. */
import { childrenOf, type XmlElement } from '../../export/xml';

export function drawnLabels(group: XmlElement): XmlElement {
  if (group.name !== 'staffGrp' || group.attributes.symbol === 'bracket') return group;
  return {
    ...group,
    content: childrenOf(group).map((within) => (within.name === 'staffDef' ? unnamed(within) : drawnLabels(within))),
  };
}

const unnamed = (stave: XmlElement): XmlElement => ({
  ...stave,
  content: childrenOf(stave).filter(({ name }) => name !== 'label'),
});
