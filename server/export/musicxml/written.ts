/** All that is written of the chosen bars, with what MusicXML asks about it beside. */
import type { AppliedMark, Score } from '../../score/score';
import type { Measure } from '../measures';
import { type Written as Chunks, writtenOf as chunksOf } from '../written';
import { drawnElsewhere } from './linked';
import { type Passages, passagesOf } from './passages';

export interface Written extends Chunks {
  readonly passages: Passages;
  /** Marks of signs across several lanes that are drawn at another one. */
  readonly elsewhere: ReadonlySet<AppliedMark>;
}

export function writtenOf(score: Score, measures: readonly Measure[]): Written {
  const chunks = chunksOf(score, measures);
  const all = [...chunks.byVoice.values()].flat();
  return { ...chunks, passages: passagesOf(all), elsewhere: drawnElsewhere(chunks.byVoice) };
}
