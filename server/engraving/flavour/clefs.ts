/** Two clefs on one stave, which the library does not draw, as one clef with a glyph of ours. */
import { clefOf } from '../../../grammar/vocabulary/clefs';
import { childrenOf, type XmlElement } from '../../export/xml';
import { codeOfClefs, glyphNumber } from '../font/codepoints';

export function drawnClefs(element: XmlElement): XmlElement | undefined {
  if (element.name !== 'clefGrp') return element;
  const clefs = childrenOf(element);
  const code = codeOfClefs(clefs.flatMap(({ attributes }) => clefOf(`${attributes.shape}${attributes.line}`) ?? []));
  const [lowest] = clefs;
  if (lowest === undefined || code === undefined) return lowest;
  return {
    ...lowest,
    attributes: { ...lowest.attributes, 'glyph.auth': 'smufl', 'glyph.num': glyphNumber(code) },
  };
}
