/** Spans, places of options and tuplets: where each begins and ends, and what is glued to it. */
import type { AppliedAnnotation, AppliedMark, AppliedSpan, ChosenOption, Tuplet } from '../../score/score';
import type { Chunk } from '../chunks';
import type { XmlElement } from '../xml';
import { bracketElement } from './directions';

type Enclosing = AppliedSpan | ChosenOption | Tuplet;

interface Passage {
  readonly what: Enclosing;
  /** First chunks of its first and last event. */
  readonly first: Chunk;
  last: Chunk;
  /** Last chunk of its last event. */
  end: Chunk;
}

export interface Passages {
  /** What is said of passages that begin at a chunk. */
  readonly annotations: ReadonlyMap<Chunk, readonly AppliedAnnotation[]>;
  /** Marks of passages that end at a chunk. */
  readonly marks: ReadonlyMap<Chunk, readonly AppliedMark[]>;
  /** Brackets that begin before a chunk. */
  readonly before: ReadonlyMap<Chunk, readonly XmlElement[]>;
  /** Brackets that end after a chunk. */
  readonly after: ReadonlyMap<Chunk, readonly XmlElement[]>;
}

/** The passages of all voices, whose chunks come one voice after another. */
export function passagesOf(chunks: readonly Chunk[]): Passages {
  const passages = passagesIn(chunks);
  const ligatures = passages.filter(({ what }) => 'head' in what && what.head.word === 'lig');
  return {
    annotations: gathered(passages.map(({ first, what }) => [first, what.annotations])),
    marks: gathered(passages.map(({ last, what }) => [last, what.marks])),
    before: gathered(ligatures.map(({ first }) => [first, [bracketElement('start', first.event)]])),
    after: gathered(ligatures.map(({ end }) => [end, [bracketElement('stop', end.event)]])),
  };
}

/** Events of one passage share one object; systems of equal text share it too, and no passage crosses a system's end. */
function passagesIn(chunks: readonly Chunk[]): readonly Passage[] {
  const found: Passage[] = [];
  let before: Chunk | undefined;
  let open = new Map<Enclosing, Passage>();
  for (const chunk of chunks) {
    if (chunk.system !== before?.system || chunk.event.voice !== before.event.voice) open = new Map();
    before = chunk;
    const { spans, chosen, tuplets } = chunk.event;
    for (const what of [...spans, ...chosen, ...tuplets]) {
      const passage = open.get(what) ?? { what, first: chunk, last: chunk, end: chunk };
      if (!open.has(what)) found.push(passage);
      open.set(what, passage);
      if (chunk.first) passage.last = chunk;
      passage.end = chunk;
    }
  }
  return found;
}

function gathered<T>(entries: readonly (readonly [Chunk, readonly T[]])[]): ReadonlyMap<Chunk, readonly T[]> {
  const map = new Map<Chunk, readonly T[]>();
  for (const [chunk, items] of entries) {
    if (items.length > 0) map.set(chunk, [...(map.get(chunk) ?? []), ...items]);
  }
  return map;
}
