/**
 * Small notes on another stave than that of their layer: the library looks for the accidentals of the notes that follow on
 * the wrong stave, and lets the last of them run into one. An unseen one more keeps room.
 */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { elementsOf } from './element';

export function drawnSmallNotes(group: XmlElement): XmlElement {
  if (group.name !== 'graceGrp') return group;
  const last = [...elementsOf(group)].findLast(({ name }) => name === 'note');
  if (last?.attributes.staff === undefined) return group;
  const { pname, oct, dur, grace, staff } = last.attributes;
  const unseen = xml('note', { pname, oct, dur, grace, staff, visible: 'false', 'stem.visible': 'false' });
  return { ...group, content: [...childrenOf(group), unseen] };
}
