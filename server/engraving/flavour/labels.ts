/** Names beside the staves: open score has them, keyboard music none; of several parts each has its own. */
import { laneOfSource } from '../../export/both';
import { childrenOf, type XmlElement } from '../../export/xml';

export function drawnLabels(group: XmlElement): XmlElement {
  if (group.name !== 'staffGrp') return group;
  if (group.attributes.symbol === 'bracket') return withPart(group);
  return {
    ...group,
    content: childrenOf(group).map((within) => (within.name === 'staffDef' ? unnamed(within) : drawnLabels(within))),
  };
}

const isLabel = ({ name }: XmlElement): boolean => name === 'label';

/** Of a part in open score each stave bears the part's name after its own: beside the group it would stand on theirs. */
function withPart(group: XmlElement): XmlElement {
  const part = childrenOf(group).find(isLabel)?.content;
  if (part === undefined) return group;
  const named = (label: XmlElement): XmlElement => ({
    ...label,
    content: `${laneOfSource(`${label.content}`)}, ${part}`,
  });
  return {
    ...group,
    content: childrenOf(group)
      .filter((within) => !isLabel(within))
      .map((stave) => ({ ...stave, content: childrenOf(stave).map((one) => (isLabel(one) ? named(one) : one)) })),
  };
}

const unnamed = (stave: XmlElement): XmlElement => ({
  ...stave,
  content: childrenOf(stave).filter((one) => !isLabel(one)),
});
