/** Names beside the staves: open score has them, keyboard music none. */
import { childrenOf, type XmlElement } from '../../export/xml';

export function drawnLabels(group: XmlElement): XmlElement {
  if (group.name !== 'staffGrp' || group.attributes.symbol === 'bracket') return group;
  return {
    ...group,
    content: childrenOf(group).map((stave) => ({
      ...stave,
      content: childrenOf(stave).filter(({ name }) => name !== 'label'),
    })),
  };
}
