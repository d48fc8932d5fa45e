/** Words sung under a voice, with what each syllable is in its word. */
import type { SyllableItem } from '../../grammar/tree';
import type { Chunk } from './chunks';

export interface SungSyllable {
  readonly chunk: Chunk;
  readonly syllable: SyllableItem;
  /** The word began with an earlier syllable. */
  readonly within: boolean;
  /** It is held on under the next note that is sung. */
  readonly held: boolean;
}

/** The syllables of one voice and the places where they are held on. */
export function syllablesOf(chunks: readonly Chunk[]): readonly SungSyllable[] {
  const sung = chunks.flatMap((chunk) => {
    const { syllable } = chunk.event;
    return syllable === undefined || syllable.what === 'none' || !chunk.first ? [] : [{ chunk, syllable }];
  });
  let goesOn = false;
  return sung.map(({ chunk, syllable }, i) => {
    const within = goesOn;
    if (syllable.what === 'syllable') goesOn = syllable.goesOn;
    return { chunk, syllable, within, held: sung[i + 1]?.syllable.what === 'hold' };
  });
}
