/** What is glued to spans, places of options and tuplets, and the brackets over ligatures. */
import type { AppliedAnnotation, AppliedMark } from '../../score/score';
import type { Chunk } from '../chunks';
import { passagesIn } from '../passages';
import type { XmlElement } from '../xml';
import { bracketElement } from './directions';

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
    annotations: gathered(passages.map(({ chunks: [first], what }) => [first, what.annotations])),
    marks: gathered(passages.map(({ last, what }) => [last, what.marks])),
    before: gathered(ligatures.map(({ chunks: [first] }) => [first, [bracketElement('start', first.event)]])),
    after: gathered(ligatures.map(({ end }) => [end, [bracketElement('stop', end.event)]])),
  };
}

function gathered<T>(entries: readonly (readonly [Chunk, readonly T[]])[]): ReadonlyMap<Chunk, readonly T[]> {
  const map = new Map<Chunk, readonly T[]>();
  for (const [chunk, items] of entries) {
    if (items.length > 0) map.set(chunk, [...(map.get(chunk) ?? []), ...items]);
  }
  return map;
}
