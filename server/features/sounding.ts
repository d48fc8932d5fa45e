/** What sounds at a place, as the reading plays it: signs realised, in the tempo of that moment and in its tuning. */
import type { Position } from 'vscode-languageserver-types';
import { add, earliest, type Time, ZERO } from '../../grammar/time';
import { perform } from '../readings/perform';
import { tuningOf } from '../readings/tunings';
import type { PerformedEvent } from '../score/performance';
import { addressOf } from '../score/walk';
import { frequencyOf } from '../tuning/tuning';
import type { Project } from '../workspace/project';
import { secondsOfPiece } from './events';
import { type EventBegun, lastBegun } from './pages';
import type { PluckedNote } from './protocol';

/** The note or chord at a place, with what is played for its signs, or its whole bar; tied notes are one. */
export function soundingAt(project: Project, position: Position, reading: string, what: 'note' | 'bar'): PluckedNote[] {
  const found = lastBegun(project, position, reading);
  if (found === undefined) return [];
  const events = playedFor(found, what);
  const start = events
    .map(({ onset }) => onset)
    .reduce((first, onset) => earliest(first, onset), events[0]?.onset ?? ZERO);
  const { score } = found;
  const seconds = secondsOfPiece(found);
  const after = (moment: Time): number => seconds.at(moment) - seconds.at(start);
  const tuning = tuningOf(score.environment, score.choice.name);
  return events.flatMap(({ pitch, onset, duration }) => {
    if (pitch === undefined) return [];
    const until = after(add(onset, duration));
    return [{ at: after(onset), until, frequency: frequencyOf(tuning, pitch) }];
  });
}

function playedFor({ score, piece, system, event }: EventBegun, what: 'note' | 'bar'): PerformedEvent[] {
  const played = perform(score).pieces.find((one) => one.piece === piece)?.events ?? [];
  const notes = played.filter(({ pitch }) => pitch !== undefined);
  if (what === 'bar') {
    const bar = system.firstBar + event.bar;
    return notes.filter(({ from: [{ placed }] }) => placed.bar.index === bar);
  }
  const wanted = addressOf(system, event);
  return notes.filter(({ from }) => from.some(({ placed }) => addressOf(placed.system, placed.event) === wanted));
}
