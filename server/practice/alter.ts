/**
 * From written to performed time: a step from performance to performance.
 *
 * Each practice says which written moments of a voice come earlier or later; between them time runs evenly. So bars and
 * voices keep their length, what is struck together and moved together stays together, no note passes another of its voice,
 * and whatever is played can be found in the source.
 */
import { add, equal, subtract, type Time } from '../../grammar/time';
import { Clocks, endOf, type Opening } from '../score/clock';
import {
  type Altered,
  inOrder,
  type Performance,
  type PerformedEvent,
  type PerformedPiece,
  writtenTime,
} from '../score/performance';
import { assimilations, undecidedMeetings } from './assimilate';
import { Curves } from './curves';
import { type Grid, gridsOf } from './grid';
import { hemiolasIn, inHemiolas } from './hemiola';
import { inequalities } from './inegal';
import { readingLines } from './lines';
import { gatheringMeetings } from './meetings';
import { overdots } from './overdot';
import { type Practice, USUAL } from './practice';
import { Remarks } from './remarks';
import { Ruling, standing } from './ruling';
import { snaps } from './snap';
import { moves, PerformedTime, startOf, type Together } from './stretch';
import { lateUpbeats } from './upbeats';
import type { View } from './view';
import { RhythmWords } from './words';

export interface AlterOptions extends Opening {
  readonly practices: readonly Practice[];
  /** Whether is told also what a player has to decide, for nothing is said of it. */
  readonly undecided: boolean;
}

/** What each practice moves; where two want one passage, the earlier in this list has it. */
const steps: readonly ((view: View) => readonly Together[])[] = [
  assimilations,
  overdots,
  snaps,
  lateUpbeats,
  inequalities,
];

/**
 * The performance in the time of its practices, a piece of work at a time; what they cannot do, and where they meet, is told.
 */
export function* alteringRhythm(performance: Performance, options: AlterOptions): Generator<undefined, Performance> {
  const { score } = performance;
  if (!options.undecided && options.practices.length === 0 && !isMarkedAnywhere(performance)) return performance;
  const remarks = new Remarks((voice) => score.environment.voices[voice]?.name ?? '');
  const pieces: PerformedPiece[] = [];
  for (const [index, performed] of performance.pieces.entries()) {
    const view = yield* viewing(performance, performed, options, remarks, index === 0);
    const all = yield* moving(view);
    for (const { acting } of all.flat()) if (acting.practice !== undefined) remarks.met.add(acting.practice);
    for (const { practice } of view.hemiolas) if (practice !== undefined) remarks.met.add(practice);
    if (options.undecided) remarkUndecided(view);
    yield;
    const hemiolas = view.hemiolas.map(({ from, to }) => ({ from, to }));
    const events = altered(performed.events, timeOf(all, view));
    yield;
    pieces.push({ ...performed, events, ...(hemiolas.length === 0 ? {} : { hemiolas }) });
  }
  for (const practice of heard(options.practices)) if (!remarks.met.has(practice)) remarkIdle(practice, remarks);
  return { ...performance, pieces, problems: [...performance.problems, ...remarks.problems] };
}

/** Whether marks in the lanes may ask for a practice. */
const isMarkedAnywhere = ({ pieces }: Performance): boolean =>
  pieces.some(({ events }) =>
    events.some(({ from }) =>
      from.some(({ placed }) =>
        placed.event.spans.some(({ head: { word } }) => word !== undefined && Object.hasOwn(USUAL, word)),
      ),
    ),
  );

function* viewing(
  { score }: Performance,
  { piece }: PerformedPiece,
  options: AlterOptions,
  remarks: Remarks,
  first: boolean,
): Generator<undefined, View> {
  const lines = yield* readingLines(piece);
  const ruling = new Ruling(options.practices, piece, score.choice, remarks.voiceName);
  const hemiolas = hemiolasIn(piece, lines, ruling);
  yield;
  // Nothing can be moved where nothing begins; of an excerpt most bars are such.
  const hasStrokes = ({ bar, end }: Grid): boolean => lines.some((line) => line.hasBeginningIn(bar.onset, end));
  const grids = inHemiolas(gridsOf(piece), hemiolas).filter(hasStrokes);
  yield;
  return {
    piece,
    lines,
    hemiolas,
    grids,
    meetings: yield* gatheringMeetings(lines, grids),
    curves: new Curves(piece, lines),
    words: new RhythmWords(lines, piece.bars),
    clocks: new Clocks(piece, options, first),
    ruling,
    remarks,
  };
}

/** What all practices move, marks in the lanes first. */
function* moving(view: View): Generator<undefined, readonly Together[]> {
  const all: Together[] = [];
  for (const find of steps) {
    for (const together of find(view)) if (together.some(moves)) all.push(together);
    yield;
  }
  return [...all.filter(isMarked), ...all.filter((together) => !isMarked(together))];
}

const isMarked = (together: Together): boolean => together.some(({ acting }) => acting.span !== undefined);

/** The time that all this makes; what lies over something of another practice is left out, and told. */
function timeOf(all: readonly Together[], { remarks }: View): PerformedTime {
  const performed = new PerformedTime();
  for (const together of all) {
    const before = performed.take(together);
    const [first] = together;
    if (before === undefined || first === undefined || before.acting.span !== undefined) continue;
    const [taken, left] = [before.acting.how.word, first.acting.how.word];
    if (taken !== left) remarks.atStroke(first.stroke, 'practice-overlap', { taken, left });
  }
  return performed;
}

/** Words without one agreed meaning, and meetings of triplets and duple figures of which nothing is said. */
function remarkUndecided(view: View): void {
  for (const { word, stroke } of view.words.uncertain) {
    if (view.ruling.at('inegal', stroke) === undefined) continue;
    const why = `“${word}” has no one agreed meaning`;
    view.remarks.atStroke(stroke, 'practice-undecided', { practice: 'inegal', why });
  }
  for (const { triplets, duples, answer } of undecidedMeetings(view)) {
    const [duple, triplet] = [duples[0], triplets[0]];
    if (duple === undefined || triplet === undefined) continue;
    const other = view.remarks.voiceName(triplet.line.voice);
    view.remarks.atStroke(duple.within[0], 'practice-candidate', { figure: answer.name, other });
  }
}

/** Practices that no other of their kind and extent goes before. */
export const heard = (practices: readonly Practice[]): readonly Practice[] =>
  standing(practices).filter(
    (one, index, all) =>
      !all
        .slice(0, index)
        .some(
          ({ how, section, voice }) =>
            (how.word === one.how.word || how.word === 'literal') && section === one.section && voice === one.voice,
        ),
  );

function remarkIdle(practice: Practice, remarks: Remarks): void {
  const { how } = practice;
  // These change nothing, and should not.
  if (how.word === 'literal') return;
  if (how.word === 'assimilate' && how.to === 'literal') return;
  if (how.word === 'inegal' && how.ratio.long === how.ratio.short) return;
  remarks.atPractice(practice, 'practice-idle', {});
}

// ─── events ──────────────────────────────────────────────────────────────────────────────────────────────────────

function altered(events: readonly PerformedEvent[], performed: PerformedTime): readonly PerformedEvent[] {
  const all: PerformedEvent[] = [];
  const silenced = new Set<unknown>();
  for (const event of events) {
    const written = writtenTime(event);
    const end = add(written.onset, written.duration);
    const isReached = performed.reaches(event.voice, written.onset, end);
    const moved = isReached ? movedEvent(event, written.onset, end, performed) : event;
    const silence = isReached ? silentFrom(event, performed) : undefined;
    if (silence === undefined) {
      all.push(moved);
      continue;
    }
    const [whole, rest] = parted(moved, silence);
    all.push(whole);
    // A chord falls silent once.
    const { placed } = event.from.at(-1) ?? event.from[0];
    if (!silenced.has(placed)) all.push(rest);
    silenced.add(placed);
  }
  return all.sort(inOrder);
}

function movedEvent(event: PerformedEvent, begin: Time, end: Time, performed: PerformedTime): PerformedEvent {
  const { voice, from } = event;
  const at = from.map(({ placed }) => performed.at(voice, placed.onset));
  const onset = at[0] ?? begin;
  const last = performed.at(voice, end);
  const stays = equal(last, end) && from.every(({ placed }, index) => equal(placed.onset, at[index] ?? placed.onset));
  if (stays) return event;
  return { ...event, onset, duration: subtract(last, onset), altered: alteredBy(event, at, performed) };
}

function alteredBy({ voice, from }: PerformedEvent, at: readonly Time[], performed: PerformedTime): Altered {
  const by: string[] = [];
  for (const { placed } of from) {
    for (const moment of [placed.onset, add(placed.onset, placed.event.duration)]) {
      const word = performed.around(voice, moment)?.acting.how.word;
      if (word !== undefined && !by.includes(word)) by.push(word);
    }
  }
  return { by, at };
}

/** When a note falls silent before its time is over; undefined where it does not. A small note has no time of its own. */
function silentFrom({ voice, small, from }: PerformedEvent, performed: PerformedTime): Time | undefined {
  if (small) return undefined;
  const onset = (from.at(-1) ?? from[0]).placed.onset;
  const stretch = performed.around(voice, onset);
  return stretch !== undefined && equal(startOf(stretch), onset) ? stretch.silentFrom : undefined;
}

/** The note until it falls silent, and the silence. */
function parted(event: PerformedEvent, at: Time): readonly [PerformedEvent, PerformedEvent] {
  const rest = subtract(endOf(event), at);
  return [
    { ...event, duration: subtract(at, event.onset) },
    { ...event, kind: 'rest', pitch: undefined, onset: at, duration: rest },
  ];
}
