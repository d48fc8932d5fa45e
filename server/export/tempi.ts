/** The tempi of an export: that of its beginning, and where others take effect. */
import { compare, isZero, type Time } from '../../grammar/time';
import { statedTempo } from '../readings/choices';
import type { Bar, Score, Tempo } from '../score/score';
import { changesOf } from '../score/walk';
import type { Measure } from './measures';

export interface PlacedTempo {
  readonly tempo: Tempo;
  readonly bar: Bar;
  /** From the piece's start. */
  readonly onset: Time;
}

/** The tempi of a piece of which `first` is the first measure exported. */
export function tempiOf({ piece, bar: opening }: Measure, score: Score): readonly PlacedTempo[] {
  const stated = statedTempo(score.environment, score.choice.name);
  let inForce = stated ?? score.environment.tempo;
  // A reading's tempo is that of the beginning, also where the head of the first system states another.
  const isReplaced = (onset: Time): boolean => stated !== undefined && piece === score.pieces[0] && isZero(onset);
  const later: PlacedTempo[] = [];
  for (const { change, onset, bar } of changesOf(piece)) {
    const { tempo } = change;
    if (tempo === undefined || isReplaced(onset)) continue;
    if (compare(onset, opening.onset) <= 0) inForce = tempo;
    else if (!change.restated) later.push({ tempo, bar, onset });
  }
  return inForce === undefined ? later : [{ tempo: inForce, bar: opening, onset: opening.onset }, ...later];
}
