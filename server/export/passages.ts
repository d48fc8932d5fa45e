/** Spans, places of options and tuplets: where each begins and ends. */
import type { AppliedSpan, ChosenOption, Tuplet } from '../score/score';
import type { Chunk } from './chunks';

export type Enclosing = AppliedSpan | ChosenOption | Tuplet;

export interface Passage {
  readonly what: Enclosing;
  readonly chunks: readonly [Chunk, ...Chunk[]];
  /** First chunk of its last event. */
  readonly last: Chunk;
  /** Last chunk of its last event. */
  readonly end: Chunk;
}

interface Draft extends Passage {
  readonly chunks: [Chunk, ...Chunk[]];
  last: Chunk;
  end: Chunk;
}

/**
 * The passages of voices whose chunks come one voice after another, in the order in which they begin. Events of one passage
 * share one object; systems of equal text share it too, and no passage crosses a system's end.
 */
export function passagesIn(chunks: readonly Chunk[]): readonly Passage[] {
  const found: Draft[] = [];
  let before: Chunk | undefined;
  let open = new Map<Enclosing, Draft>();
  for (const chunk of chunks) {
    if (chunk.system !== before?.system || chunk.event.voice !== before.event.voice) open = new Map();
    before = chunk;
    const { spans, chosen, tuplets } = chunk.event;
    for (const what of [...spans, ...chosen, ...tuplets]) {
      const passage = open.get(what);
      if (passage === undefined) {
        const begun: Draft = { what, chunks: [chunk], last: chunk, end: chunk };
        open.set(what, begun);
        found.push(begun);
        continue;
      }
      passage.chunks.push(chunk);
      if (chunk.first) passage.last = chunk;
      passage.end = chunk;
    }
  }
  return found;
}
