/** Words sung under a voice. */
import type { Chunk } from '../chunks';
import { type SungSyllable, syllablesOf } from '../syllables';
import { leaf, type XmlElement, xml } from '../xml';

export type Lyrics = ReadonlyMap<Chunk, readonly XmlElement[]>;

/** The syllables of one voice, with the lines that hold them on. */
export const lyricsOf = (chunks: readonly Chunk[]): Lyrics =>
  new Map(
    [...syllablesOf(chunks)].map(([chunk, sung]) => [
      chunk,
      sung.map((one) => xml('lyric', { number: one.stanza + 1 }, lyricContent(one))),
    ]),
  );

function lyricContent({ syllable, within, held }: SungSyllable): readonly XmlElement[] {
  if (syllable.what === 'hold') return [xml('extend', { type: held ? 'continue' : 'stop' })];
  const syllabic = within ? (syllable.goesOn ? 'middle' : 'end') : syllable.goesOn ? 'begin' : 'single';
  return [leaf('syllabic', syllabic), leaf('text', syllable.text), ...(held ? [xml('extend', { type: 'start' })] : [])];
}
