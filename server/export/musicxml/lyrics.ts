/** Words sung under a voice. */
import type { SyllableItem } from '../../../grammar/tree';
import type { Chunk } from '../chunks';
import { leaf, type XmlElement, xml } from '../xml';

export type Lyrics = ReadonlyMap<Chunk, XmlElement>;

/** The syllables of one voice, with the lines that hold them on. */
export function lyricsOf(chunks: readonly Chunk[]): Lyrics {
  const sung = chunks.flatMap((chunk) => {
    const { syllable } = chunk.event;
    return syllable === undefined || syllable.what === 'none' || !chunk.first ? [] : [{ chunk, syllable }];
  });
  const lyrics = new Map<Chunk, XmlElement>();
  let goesOn = false;
  for (const [i, { chunk, syllable }] of sung.entries()) {
    const held = sung[i + 1]?.syllable.what === 'hold';
    lyrics.set(chunk, xml('lyric', { number: 1 }, lyricContent(syllable, goesOn, held)));
    if (syllable.what === 'syllable') goesOn = syllable.goesOn;
  }
  return lyrics;
}

function lyricContent(syllable: SyllableItem, within: boolean, held: boolean): readonly XmlElement[] {
  if (syllable.what === 'hold') return [xml('extend', { type: held ? 'continue' : 'stop' })];
  const syllabic = within ? (syllable.goesOn ? 'middle' : 'end') : syllable.goesOn ? 'begin' : 'single';
  return [leaf('syllabic', syllabic), leaf('text', syllable.text), ...(held ? [xml('extend', { type: 'start' })] : [])];
}
