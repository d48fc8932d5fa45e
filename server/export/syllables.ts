/** Words sung under a voice, with what each syllable is in its word. */
import { putUnder } from '../../grammar/lists';
import type { SyllableItem } from '../../grammar/tree';
import type { Chunk } from './chunks';

export interface SungSyllable {
  readonly chunk: Chunk;
  /** Counted from 0, from the top. */
  readonly stanza: number;
  readonly syllable: SyllableItem;
  /** The word began with an earlier syllable. */
  readonly within: boolean;
  /** It is held on under the next note that is sung. */
  readonly held: boolean;
}

/** The syllables of one voice by the note under which they stand, with the places where they are held on. */
export function syllablesOf(chunks: readonly Chunk[]): ReadonlyMap<Chunk, readonly SungSyllable[]> {
  const stanzas = chunks.reduce((most, { event }) => Math.max(most, event.syllables.length), 0);
  const found = new Map<Chunk, SungSyllable[]>();
  for (let stanza = 0; stanza < stanzas; stanza++) {
    for (const sung of stanzaOf(chunks, stanza)) putUnder(found, sung.chunk, sung);
  }
  return found;
}

function stanzaOf(chunks: readonly Chunk[], stanza: number): readonly SungSyllable[] {
  const sung = chunks.flatMap((chunk) => {
    const syllable = chunk.event.syllables[stanza];
    return syllable === undefined || syllable.what === 'none' || !chunk.first ? [] : [{ chunk, syllable }];
  });
  let goesOn = false;
  return sung.map(({ chunk, syllable }, i) => {
    const within = goesOn;
    if (syllable.what === 'syllable') goesOn = syllable.goesOn;
    return { chunk, stanza, syllable, within, held: sung[i + 1]?.syllable.what === 'hold' };
  });
}
