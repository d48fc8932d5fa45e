/** The event of a score that stands at a place in the text. */
import { add, subtract, type Time } from '../../grammar/time';
import type { Span } from '../../grammar/tree';
import { Seconds } from '../export/seconds';
import { openingOf } from '../readings/perform';
import { Clocks } from '../score/clock';
import type { Bar, NoteMember, Piece, Score, ScoreSystem, VoiceEvent } from '../score/score';
import { flowOf } from '../score/unmeasured';
import type { Project } from '../workspace/project';
import type { Here } from './nodes';

export interface EventHere {
  readonly score: Score;
  readonly piece: Piece;
  readonly system: ScoreSystem;
  readonly event: VoiceEvent;
  /** The note at the place; undefined where the place belongs to none. */
  readonly member: NoteMember | undefined;
  readonly bar: Bar;
  /** From the bar's beginning. */
  readonly inBar: Time;
  /** From the piece's beginning. */
  readonly onset: Time;
}

/** A system of a score and its piece. */
export interface SystemHere {
  readonly score: Score;
  readonly piece: Piece;
  readonly system: ScoreSystem;
}

/** The system of a block in the score of a choice. */
export function systemOf(project: Project, block: number, choice = 'written'): SystemHere | undefined {
  const score = project.analysis.score(choice);
  for (const piece of score?.pieces ?? []) {
    const system = piece.systems.find((one) => one.block === block);
    if (score !== undefined && system !== undefined) return { score, piece, system };
  }
  return undefined;
}

/** Projects as they are read: what others keep by an analysis must find the same one again. */
const known = new WeakMap<Project, Map<string, Project>>();

/** The project as it is for whoever reads it in one way: that reading is asked before all others. */
export function readAs(project: Project, reading: string): Project {
  const { analysis } = project;
  if (analysis.choices[0] === reading || !analysis.choices.includes(reading)) return project;
  const all = known.get(project) ?? new Map<string, Project>();
  known.set(project, all);
  const choices = [reading, ...analysis.choices.filter((name) => name !== reading)];
  const read = all.get(reading) ?? { ...project, analysis: { ...analysis, choices } };
  all.set(reading, read);
  return read;
}

const holds = ({ pos, len }: Span, at: number): boolean => pos <= at && at <= pos + len;

/**
 * The event typed at a place, in the score of the first of these choices that has it: an option is read by whoever takes it.
 * Of events that share their text, such as a note and its repetition by a witness, the first counts.
 */
export function eventHere(
  project: Project,
  here: Here,
  choices: readonly string[] = project.analysis.choices,
): EventHere | undefined {
  if (here.holder.kind !== 'lane') return undefined;
  const lane = here.holder.index;
  for (const choice of choices) {
    const found = systemOf(project, here.blockIndex, choice);
    const events = found?.system.score.voices.flatMap((voice) => voice.events) ?? [];
    const touching = events.filter((event) => event.source.lane === lane && holds(event.source, here.pos));
    const event = touching.find(({ source }) => here.pos < source.pos + source.len) ?? touching.at(-1);
    if (found !== undefined && event !== undefined) return placed(found, event, here.pos);
  }
  return undefined;
}

function placed(found: SystemHere, event: VoiceEvent, pos: number): EventHere | undefined {
  const { piece, system } = found;
  const bar = piece.bars[system.firstBar + event.bar];
  if (bar === undefined) return undefined;
  const onset = add(system.onset, event.onset);
  const member = event.members.filter(({ source }) => source.pos <= pos).at(-1) ?? event.members[0];
  return { ...found, event, member, bar, onset, inBar: subtract(onset, bar.onset) };
}

/** The seconds of a piece as it stands, by the tempi of the reading of its score. */
export const secondsOfPiece = ({ score, piece }: Pick<SystemHere, 'score' | 'piece'>): Seconds =>
  new Seconds(new Clocks(piece, openingOf(score, {}), piece === score.pieces[0], flowOf(piece).clocks).tempi());
