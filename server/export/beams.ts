/** Which notes stand under one beam. */
import type { Chunk } from './chunks';
import { flags } from './values';

/** Notes under one beam, two at least. Small notes have beams of their own; a note cut at a barline has none. */
export function beamRuns(chunks: readonly Chunk[]): readonly (readonly Chunk[])[] {
  const runs = new Map<string, Chunk[]>();
  for (const chunk of chunks) {
    const { event, system } = chunk;
    if (event.beam === undefined || event.kind !== 'note') continue;
    if (!chunk.first || !chunk.last || flags(chunk.value) === 0) continue;
    const key = `${system.block} ${event.beam} ${event.small?.group ?? ''}`;
    const run = runs.get(key);
    if (run === undefined) runs.set(key, [chunk]);
    else run.push(chunk);
  }
  return [...runs.values()].filter((run) => run.length > 1);
}
