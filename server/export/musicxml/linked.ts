/** Signs that the source draws once across several lanes. */
import { format } from '../../../grammar/time';
import type { AppliedMark } from '../../score/score';
import { marksOfEvent } from '../../score/walk';
import { absolute, type Chunk } from '../chunks';
import { coversChord } from './signs';

/** The marks of linked signs that stand in the export at another lane; arpeggios stand at every note. */
export function drawnElsewhere(byVoice: ReadonlyMap<number, readonly Chunk[]>): ReadonlySet<AppliedMark> {
  const pieces = new Map<unknown, Map<string, number>>();
  const elsewhere = new Set<AppliedMark>();
  for (const [voice, chunks] of byVoice) {
    for (const chunk of chunks.filter(({ first }) => first)) {
      const drawn = pieces.get(chunk.measure.piece) ?? new Map<string, number>();
      pieces.set(chunk.measure.piece, drawn);
      for (const mark of marksOfEvent(chunk.event)) {
        if (!mark.form.linked || coversChord(mark)) continue;
        const key = `${mark.form.name} ${format(absolute(chunk))}`;
        const at = drawn.get(key) ?? voice;
        drawn.set(key, at);
        if (at !== voice) elsewhere.add(mark);
      }
    }
  }
  return elsewhere;
}
