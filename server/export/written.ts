/** All that is written of the chosen bars: the chunks of every voice, and where each stands. */
import type { Piece, Score, ScoreSystem, VoiceEvent } from '../score/score';
import { type Chunk, chunksOf } from './chunks';
import type { Measure } from './measures';

export interface Written {
  readonly measures: readonly Measure[];
  /** By voice, in the order of the source. */
  readonly byVoice: ReadonlyMap<number, readonly Chunk[]>;
  /** By measure: its chunks by voice, voices in the order of the environment. */
  readonly byMeasure: ReadonlyMap<Measure, ReadonlyMap<number, readonly Chunk[]>>;
  /** The chunks of an event; a system's events may be shared by several systems of equal text. */
  readonly chunksAt: (system: ScoreSystem, event: VoiceEvent) => readonly Chunk[];
  /** Place of a chunk in the order of writing. */
  readonly order: ReadonlyMap<Chunk, number>;
}

export function writtenOf(score: Score, measures: readonly Measure[]): Written {
  const byVoice = new Map<number, readonly Chunk[]>();
  for (const voice of score.environment.voices.keys()) {
    byVoice.set(
      voice,
      [...byPiece(measures)].flatMap(([piece, bars]) => chunksOf(piece, voice, bars)),
    );
  }
  const byMeasure = groupedByMeasure(measures, byVoice);
  const index = indexed(byVoice);
  const order = new Map<Chunk, number>();
  for (const voices of byMeasure.values())
    for (const chunk of [...voices.values()].flat()) order.set(chunk, order.size);
  return {
    measures,
    byVoice,
    byMeasure,
    order,
    chunksAt: (system, event) => index.get(system)?.get(event) ?? [],
  };
}

function byPiece(measures: readonly Measure[]): ReadonlyMap<Piece, ReadonlyMap<number, Measure>> {
  const pieces = new Map<Piece, Map<number, Measure>>();
  for (const measure of measures) {
    const bars = pieces.get(measure.piece) ?? new Map<number, Measure>();
    bars.set(measure.bar.index, measure);
    pieces.set(measure.piece, bars);
  }
  return pieces;
}

function groupedByMeasure(
  measures: readonly Measure[],
  byVoice: ReadonlyMap<number, readonly Chunk[]>,
): ReadonlyMap<Measure, ReadonlyMap<number, readonly Chunk[]>> {
  const groups = new Map<Measure, Map<number, Chunk[]>>(measures.map((measure) => [measure, new Map()]));
  for (const [voice, chunks] of byVoice) {
    for (const chunk of chunks) {
      const voices = groups.get(chunk.measure);
      const group = voices?.get(voice);
      if (group === undefined) voices?.set(voice, [chunk]);
      else group.push(chunk);
    }
  }
  return groups;
}

function indexed(
  byVoice: ReadonlyMap<number, readonly Chunk[]>,
): ReadonlyMap<ScoreSystem, ReadonlyMap<VoiceEvent, readonly Chunk[]>> {
  const index = new Map<ScoreSystem, Map<VoiceEvent, Chunk[]>>();
  for (const chunk of [...byVoice.values()].flat()) {
    const events = index.get(chunk.system) ?? new Map<VoiceEvent, Chunk[]>();
    const found = events.get(chunk.event);
    if (found === undefined) events.set(chunk.event, [chunk]);
    else found.push(chunk);
    index.set(chunk.system, events);
  }
  return index;
}
