/** Words sung under a voice. */
import type { Chunk } from '../chunks';
import { type SungSyllable, syllablesOf } from '../syllables';
import { type XmlElement, xml } from '../xml';
import type { Names } from './names';

/** The syllables of one voice, by the note under which each stands, the first stanza first. */
export const versesOf = (chunks: readonly Chunk[], names: Names): ReadonlyMap<Chunk, readonly XmlElement[]> =>
  new Map(
    [...syllablesOf(chunks)].map(([chunk, sung]) => [
      chunk,
      sung.map((one) => {
        const n = one.stanza + 1;
        return xml('verse', { 'xml:id': names.part(names.of(chunk), 's', n), n }, [syllableElement(one)]);
      }),
    ]),
  );

/** `wordpos`: initial, medial, terminal, or `s` of a word by itself; `con`: `d` a dash, `u` a line under the notes that hold on. */
function syllableElement({ syllable, within, held }: SungSyllable): XmlElement {
  if (syllable.what === 'hold') return xml('syl', { type: 'hold', con: held ? 'u' : undefined });
  const place = within ? (syllable.goesOn ? 'm' : 't') : syllable.goesOn ? 'i' : 's';
  return xml('syl', { wordpos: place, con: held ? 'u' : syllable.goesOn ? 'd' : undefined }, syllable.text);
}
