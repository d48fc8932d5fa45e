/**
 * Free music, in which no value counts: the semibreve that stands for every note without a value is drawn as one, but takes
 * no more room than a crotchet. The library spaces notes by their values and would set them far apart.
 */
import type { XmlElement } from '../../export/xml';
import { glyphNumber, SEMIBREVE_HEAD } from '../font/codepoints';
import { isOfType, rewritten, withAttributes } from './element';

const SEMIBREVES = new Set(['1', 'breve', 'long', 'maxima']);

export function drawnFree(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure' || !isOfType(measure, 'free')) return measure;
  return rewritten(measure, drawnNarrow) ?? measure;
}

function drawnNarrow(element: XmlElement): XmlElement {
  const { name, attributes } = element;
  if (!SEMIBREVES.has(`${attributes.dur ?? ''}`)) return element;
  const narrow = withAttributes(element, { dur: 4, 'stem.visible': name === 'space' ? undefined : 'false' });
  return name === 'note' ? asSemibreve(narrow) : name === 'chord' ? chordAsSemibreves(narrow) : narrow;
}

const asSemibreve = (note: XmlElement): XmlElement =>
  withAttributes(note, { 'head.shape': glyphNumber(SEMIBREVE_HEAD) });

const chordAsSemibreves = (chord: XmlElement): XmlElement =>
  rewritten(chord, (element) => (element.name === 'note' ? asSemibreve(element) : element)) ?? chord;
