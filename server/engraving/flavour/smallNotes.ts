/**
 * Small notes which the library sets too close to what follows: those at the end of a bar to its barline, and those on another
 * stave than that of their layer to the accidentals there, for which it looks on the wrong one. An unseen one more keeps room.
 */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { elementsOf } from './element';

export function drawnSmallNotes(group: XmlElement): XmlElement {
  if (group.name !== 'graceGrp') return group;
  const last = [...elementsOf(group)].findLast(({ name }) => name === 'note');
  if (last === undefined || (last.attributes.staff === undefined && group.attributes.attach !== 'pre')) return group;
  const { pname, oct, dur, grace, staff } = last.attributes;
  const unseen = xml('note', { pname, oct, dur, grace, staff, visible: 'false', 'stem.visible': 'false' });
  return { ...group, content: [...childrenOf(group), unseen] };
}
