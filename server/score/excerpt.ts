/** A score of which only the systems around one have their music: for whoever asks about one place and cannot wait for the whole. */
import { keeping } from '../../grammar/keeping';
import type { Piece, Score, ScoreSystem, SystemScore } from './score';

/**
 * The same score, silent but for the system of a block, the one on either side of it, and those into which ties and curves
 * lead from these. Times, bars, numbers, and the meters, signatures and tempi in force stay as they are.
 */
export const around = (score: Score, block: number): Score => ({
  ...score,
  pieces: score.pieces.map((piece) => ({ ...piece, systems: heardAround(piece, block) })),
});

function heardAround({ systems }: Piece, block: number): readonly ScoreSystem[] {
  const at = systems.findIndex((system) => system.block === block);
  const [first, last] = at < 0 ? [0, -1] : [beginOf(systems, at - 1), endOf(systems, at + 1)];
  return systems.map((system, index) =>
    first <= index && index <= last ? system : { ...system, score: withoutMusic(system.score) },
  );
}

function beginOf(systems: Piece['systems'], from: number): number {
  const system = systems[from];
  return system !== undefined && isLedInto(system.score) ? beginOf(systems, from - 1) : from;
}

function endOf(systems: Piece['systems'], to: number): number {
  const [system, next] = [systems[to], systems[to + 1]];
  if (system === undefined || next === undefined) return to;
  const leadsOn = system.score.curves.some(({ outgoing }) => outgoing !== undefined) || hasTieInto(next.score);
  return leadsOn ? endOf(systems, to + 1) : to;
}

const isLedInto = (score: SystemScore): boolean =>
  score.curves.some(({ incoming }) => incoming !== undefined) || hasTieInto(score);

const hasTieInto = ({ voices }: SystemScore): boolean =>
  voices.some(({ events: [first] }) => first?.members.some(({ tiedFrom }) => tiedFrom) === true);

/** Field by field: the events of a system may not have been built. */
const withoutMusic = keeping(
  ({ kind, bars, duration, changes, sections, carryOut, problems }: SystemScore): SystemScore => ({
    kind,
    bars,
    duration,
    voices: [],
    curves: [],
    changes,
    sections,
    carryOut,
    problems,
  }),
);
