/** A part of a score by itself. */
import type { Piece, Score, ScoreSystem, SystemScore } from './score';

/**
 * The score of one piece in which only some systems hold events: whoever draws a few bars need not go over all. Bars, their
 * numbers and what is in force stay as they are.
 */
export function excerpt(score: Score, piece: Piece, isWanted: (system: ScoreSystem) => boolean): Score {
  const systems = piece.systems.map((system) =>
    isWanted(system) ? system : { ...system, score: withoutEvents(system.score) },
  );
  return { ...score, pieces: [{ ...piece, systems }] };
}

/** Written out, for to read the events would build them. */
const withoutEvents = ({ kind, bars, duration, changes, sections, carryOut, problems }: SystemScore): SystemScore => ({
  kind,
  bars,
  duration,
  voices: [],
  curves: [],
  changes,
  sections,
  carryOut,
  problems,
});
