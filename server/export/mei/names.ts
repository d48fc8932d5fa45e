/** The ids of what is written: of each chunk, each note of a chord, each bar. */
import type { Score } from '../../score/score';
import type { Chunk } from '../chunks';
import type { Measure } from '../measures';
import type { Head } from '../tieLinks';
import type { Written } from '../written';
import { barId, eventId, Ids, type Part, partId, systemId } from './ids';

export class Names {
  private readonly ids = new Ids();
  private readonly chunks = new Map<Chunk, string>();
  private readonly bars = new Map<Measure, string>();

  constructor(score: Score, written: Written) {
    for (const chunks of written.byVoice.values()) this.nameChunks(chunks);
    for (const measure of written.measures) this.bars.set(measure, this.ids.take(barName(score, measure)));
  }

  /** The note, chord, rest or space of a chunk. */
  of(chunk: Chunk): string {
    return this.chunks.get(chunk) ?? '';
  }

  /** One note; of a chord of several its member. */
  ofHead({ chunk, member }: Head): string {
    return chunk.event.members.length > 1 ? partId(this.of(chunk), 'n', member + 1) : this.of(chunk);
  }

  ofBar(measure: Measure): string {
    return this.bars.get(measure) ?? '';
  }

  /** A barline inside a bar, by its index in `Bar.inner`. */
  ofInnerBarline(measure: Measure, index: number): string {
    return partId(this.ofBar(measure), 'l', index + 1);
  }

  /** A part of an element, numbered from 1. */
  part(id: string, part: Part, number: number): string {
    return this.ids.take(partId(id, part, number));
  }

  take(id: string): string {
    return this.ids.take(id);
  }

  private nameChunks(chunks: readonly Chunk[]): void {
    let part = 1;
    let whole = '';
    for (const chunk of chunks) {
      part = chunk.first ? 1 : part + 1;
      if (chunk.first || whole === '') whole = this.ids.take(eventId(chunk.system, chunk.event));
      this.chunks.set(chunk, part === 1 ? whole : this.part(whole, 'k', part));
    }
  }
}

/** A bar is named by the event with which its first lane begins, or else by its place in the system. */
export function barName({ environment }: Score, { system, bar }: Pick<Measure, 'system' | 'bar'>): string {
  const index = bar.index - system.firstBar;
  for (const { voice, events } of system.score.voices) {
    const event = events.find((one) => one.bar === index);
    if (event !== undefined) return barId(system, environment.voices[voice]?.name ?? '', event.address);
  }
  return `${systemId(system)}-bar-${index + 1}`;
}
