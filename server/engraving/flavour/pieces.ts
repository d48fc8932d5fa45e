/** The names of several pieces, which stand above the first measure of each. */
import { childrenOf, type XmlElement, xml } from '../../export/xml';
import { elementsOf, mapped } from './element';

export function drawnPieceNames(body: XmlElement): XmlElement {
  const movements = body.name === 'body' ? childrenOf(body) : [];
  return movements.length < 2 ? body : { ...body, content: movements.map(named) };
}

function named(movement: XmlElement): XmlElement {
  const { label } = movement.attributes;
  const first = [...elementsOf(movement)].find(({ name }) => name === 'measure');
  if (label === undefined || first === undefined) return movement;
  const words = xml('dir', { staff: '1', place: 'above', tstamp: '0' }, [
    xml('rend', { fontweight: 'bold', fontstyle: 'normal', fontsize: '90%' }, label),
  ]);
  return mapped(movement, (element) =>
    element === first ? { ...element, content: [...childrenOf(element), words] } : element,
  );
}
