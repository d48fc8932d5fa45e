/**
 * Free music, in which no value counts: the semibreve that stands for every note without a value is drawn as one, but takes
 * no more room than a crotchet. The library spaces notes by their values and would set them far apart.
 */
import { compare, subtract, type Time, ZERO } from '../../../grammar/time';
import { timeElements } from '../../export/mei/notes';
import type { XmlElement } from '../../export/xml';
import { glyphNumber, SEMIBREVE_HEAD } from '../font/codepoints';
import { durationOf } from './duration';
import { isEmptyTime, isOfType, layersOf, mapped, rewritten, sounds, withAttributes } from './element';
import { placedIn } from './moments';
import { withoutOssias } from './ossias';

const SEMIBREVES = new Set(['1', 'breve', 'long', 'maxima']);

export function drawnFree(measure: XmlElement): XmlElement {
  if (measure.name !== 'measure' || !isOfType(measure, 'free')) return measure;
  const music = layersOf(withoutOssias(measure)).findLast(sounds);
  if (music === undefined) return measure;
  return mapped(measure, (element) => {
    if (element.name !== 'layer') return element;
    return sounds(element) ? narrowed(element) : besideNarrowed(element, music);
  });
}

const narrowed = (layer: XmlElement): XmlElement => rewritten(layer, drawnNarrow) ?? layer;

/** A layer of clefs and signatures alone, each at that note of the music before which it stood, now that the notes are narrow. */
function besideNarrowed(layer: XmlElement, music: XmlElement): XmlElement {
  const changes = [...placedIn(layer)].filter(({ element }) => !isEmptyTime(element));
  if (changes.length === 0) return layer;
  const wide = [...placedIn(music)];
  const narrow = narrowed(music);
  const places = [...placedIn(narrow)];
  let now: Time = ZERO;
  const content = changes.flatMap(({ element, at }) => {
    const moment = places[wide.findIndex((one) => compare(one.at, at) >= 0)]?.at ?? durationOf(narrow);
    const before = timeElements(subtract(moment, now), 'space');
    now = moment;
    return [...before, element];
  });
  return { ...layer, content };
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
