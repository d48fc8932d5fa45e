/**
 * Checks that look at one system after another.
 *
 * What a look finds depends on the system's score, the one before it in the piece, its head and a few facts of the piece,
 * and on nothing else: it is kept as long as those are the same, so that a system left alone costs nothing when another is
 * changed. Bar numbers, blocks and the name of the reading are filled in when the systems are strung together.
 */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { type Fix, problemOf, type Slots } from '../../grammar/findings/finding';
import { keeping } from '../../grammar/keeping';
import type { FileTree, StatementTree } from '../../grammar/tree';
import { barRange } from '../score/barsInWords';
import type { AccidentalPractice, Choice } from '../score/choice';
import type { Environment } from '../score/environment';
import type { Piece, PlacedProblem, Source, SystemScore } from '../score/score';
import type { Check } from './check';
import { type Keyboard, keyboardOf } from './keyboard';
import { type Passage, passagesOf } from './lines';

/** What a look may know of the piece besides its systems. */
export interface Facts {
  readonly voices: readonly string[];
  readonly staves: readonly { readonly name: string; readonly lines: number }[];
  readonly keyboard: Keyboard;
  readonly practice: AccidentalPractice;
  /** Says all of the above: facts of one key are the same. */
  readonly key: string;
}

export interface View {
  readonly score: SystemScore;
  /** The system before it in the piece. */
  readonly before: SystemScore | undefined;
  /** The `system` statement. */
  readonly head: StatementTree | undefined;
  readonly facts: Facts;
  /** What sounds in it; empty where its times are beyond any music. */
  readonly passages: readonly Passage[];
}

/** A bar by its index in a system: in this one (0) or in the one before (-1). */
export interface BarPlace {
  readonly system: 0 | -1;
  readonly bar: number;
}

/** A problem met in a system. Blocks count from the system's own: 0, or -1 for the one before. */
export interface SystemProblem extends PlacedProblem {
  /** The bars that the sentence names as {bars}: "bar 7", "bars 7-8". */
  readonly bars?: readonly [BarPlace, BarPlace];
}

export interface Told {
  readonly code: FindingCode;
  readonly at: Source;
  /** Where `at` stands: in this system if it does not say. */
  readonly system?: 0 | -1;
  readonly slots: Slots;
  /** Index of the bar that the sentence names as {bar}. */
  readonly bar?: number;
  readonly bars?: SystemProblem['bars'];
  readonly fixes?: readonly Fix[];
  readonly related?: { readonly message: string; readonly source: Source; readonly system: 0 | -1 };
}

/** A problem in a lane or statement of the system looked at, or of the one before. */
export const problemIn = ({ code, at, system = 0, slots, bar, bars, fixes, related }: Told): SystemProblem => ({
  problem: problemOf(code, at, slots, fixes),
  block: system,
  lane: at.statement === undefined ? at.lane : undefined,
  ...(at.statement === undefined ? {} : { statement: at.statement }),
  ...(bar === undefined ? {} : { bar }),
  ...(bars === undefined ? {} : { bars }),
  ...(related === undefined
    ? {}
    : { related: [{ message: related.message, source: { ...related.source, block: related.system } }] }),
});

/** Looks at one system for one kind of thing. */
export type Look = (view: View) => readonly SystemProblem[];

/** Looks at the lines of a system. */
export const alongPassages =
  (look: (passage: Passage, facts: Facts) => readonly SystemProblem[]): Look =>
  ({ passages, facts }) =>
    passages.length === 1 ? look(passages[0] as Passage, facts) : passages.flatMap((passage) => look(passage, facts));

/** What is found in a system; kept by its neighbour, for equal systems may share one score. */
export type Found = (
  score: SystemScore,
  before: SystemScore | undefined,
  head: StatementTree | undefined,
  facts: Facts,
) => readonly SystemProblem[];

/** What was found in the systems of a piece, each with its place there. */
interface Strung {
  readonly facts: Facts;
  readonly systems: Piece['systems'];
  /** By system. */
  readonly found: readonly (readonly PlacedProblem[])[];
}

/** A check that looks at each system of a score. @param found keeps what it finds: see `keepingLooks` */
export function overSystems(found: Found): Check {
  // By the bars of a piece, which are the same from version to version and for the choices that share it.
  const known = new WeakMap<Piece['bars'], Strung>();
  const inPieceOf = (piece: Piece, facts: Facts, tree: FileTree): Strung['found'] => {
    const last = known.get(piece.bars);
    const before = last?.facts === facts ? last : undefined;
    if (before?.systems === piece.systems) return before.found;
    const all: (readonly PlacedProblem[])[] = [];
    for (const [index, system] of piece.systems.entries()) {
      const neighbour = piece.systems[index - 1];
      const stands = before?.systems[index] === system && before.systems[index - 1] === neighbour;
      if (stands) all.push(before.found[index] ?? nothing);
      else {
        const head = tree.blocks[system.block]?.statements[0]?.tree;
        all.push(allInPiece(found(system.score, neighbour?.score, head, facts), piece, index));
      }
    }
    known.set(piece.bars, { facts, systems: piece.systems, found: all });
    return all;
  };
  const run: Check['run'] = ({ tree, environment, score }) => {
    const facts = factsOf(environment, score.choice);
    const all: PlacedProblem[] = [];
    for (const piece of score.pieces) {
      for (const here of inPieceOf(piece, facts, tree)) for (const problem of here) all.push(problem);
    }
    return all;
  };
  return { name: 'systems', needs: ['tree', 'environment', 'score'], ofWritten: false, run };
}

/** What was found in a system beside a neighbour. */
interface Kept {
  /** The number of the system before it; 0 where there is none. */
  readonly before: number;
  readonly head: StatementTree | undefined;
  readonly key: string;
  readonly found: readonly SystemProblem[];
  /** What was found beside another. */
  readonly other: Kept | undefined;
}

/** A system that was looked at. A number stands for its neighbour, which therefore need not live as long. */
interface Looked {
  readonly number: number;
  /** What was found last. */
  last: Kept | undefined;
  count: number;
}

/** Equal systems share one score and stand beside a few others. */
const MOST_NEIGHBOURS = 8;

/** Looks at a system for several things and keeps what is found. */
export function keepingLooks(looks: readonly Look[]): Found {
  let count = 0;
  const lookedAt = keeping((_: SystemScore): Looked => ({ number: ++count, last: undefined, count: 0 }));
  return (score, neighbour, head, facts) => {
    const looked = lookedAt(score);
    const before = neighbour === undefined ? 0 : lookedAt(neighbour).number;
    for (let one = looked.last; one !== undefined; one = one.other) {
      if (one.before === before && one.head === head && one.key === facts.key) return one.found;
    }
    const passages = passagesOf(score, neighbour, facts.voices.length);
    const view = { score, before: neighbour, head, facts, passages };
    const all: SystemProblem[] = [];
    for (const look of looks) for (const problem of look(view)) all.push(problem);
    const found = all.length === 0 ? nothing : all;
    // Beside too many all are forgotten: most systems have one neighbour.
    const other = looked.count % MOST_NEIGHBOURS === 0 ? undefined : looked.last;
    looked.last = { before, head, key: facts.key, found, other };
    looked.count++;
    return found;
  };
}

const nothing: readonly never[] = [];

const knownFacts = new WeakMap<Environment, Map<AccidentalPractice, Facts>>();

export function factsOf(environment: Environment, { accidentals }: Choice): Facts {
  const known = knownFacts.get(environment) ?? new Map<AccidentalPractice, Facts>();
  knownFacts.set(environment, known);
  const facts = known.get(accidentals) ?? newFacts(environment, accidentals);
  known.set(accidentals, facts);
  return facts;
}

function newFacts(environment: Environment, practice: AccidentalPractice): Facts {
  const facts = {
    voices: environment.voices.map(({ name }) => name),
    staves: environment.staves.map(({ name, lines }) => ({ name, lines })),
    keyboard: keyboardOf(environment),
    practice,
  };
  return { ...facts, key: JSON.stringify(facts) };
}

// ─── strung together ─────────────────────────────────────────────────────────────────────────────────────────────

/** Where a system stands in its piece, as far as a problem in it says. */
interface Standing {
  readonly bar: string | undefined;
  readonly bars: string | undefined;
  readonly block: number;
  readonly relatedBlock: number | undefined;
}

function standingOf({ bar, bars, block, related }: SystemProblem, piece: Piece, index: number): Standing {
  const explained = related?.[0]?.source.block;
  return {
    bar: bar === undefined ? undefined : barNumber(piece, index, { system: 0, bar }),
    bars: bars === undefined ? undefined : barRange(barNumber(piece, index, bars[0]), barNumber(piece, index, bars[1])),
    block: blockOf(piece, index + block),
    relatedBlock: explained === undefined ? undefined : blockOf(piece, index + explained),
  };
}

/** The number of a bar by its place, seen from a system of a piece. */
const barNumber = ({ bars, systems }: Piece, index: number, { system, bar }: BarPlace): string =>
  bars[(systems[index + system]?.firstBar ?? 0) + bar]?.number ?? '';

const blockOf = ({ systems }: Piece, index: number): number => systems[index]?.block ?? 0;

const isSame = (a: Standing, b: Standing): boolean =>
  a.block === b.block && a.bar === b.bar && a.bars === b.bars && a.relatedBlock === b.relatedBlock;

function strung({ bars: _, ...placed }: SystemProblem, standing: Standing): PlacedProblem {
  const { block, relatedBlock = block, bar, bars } = standing;
  const slots = { ...(bar === undefined ? {} : { bar }), ...(bars === undefined ? {} : { bars }) };
  const related = placed.related?.map(({ message, source }) => ({
    message,
    source: { ...source, block: relatedBlock },
  }));
  return {
    ...placed,
    block,
    problem: { ...placed.problem, slots: { ...slots, ...placed.problem.slots } },
    ...(related === undefined ? {} : { related }),
  };
}

const strungBefore = new WeakMap<SystemProblem, { readonly standing: Standing; readonly placed: PlacedProblem }[]>();
/** A problem is told at a few places at most. */
const MOST_KEPT = 16;

function allInPiece(problems: readonly SystemProblem[], piece: Piece, index: number): readonly PlacedProblem[] {
  if (problems.length === 0) return nothing;
  const placed: PlacedProblem[] = [];
  for (const problem of problems) placed.push(inPiece(problem, piece, index));
  return placed;
}

/** The same object as before where the system stands as before. */
export function inPiece(problem: SystemProblem, piece: Piece, index: number): PlacedProblem {
  const standing = standingOf(problem, piece, index);
  const all = strungBefore.get(problem) ?? [];
  const known = all.find((one) => isSame(one.standing, standing));
  if (known !== undefined) return known.placed;
  const placed = strung(problem, standing);
  strungBefore.set(problem, [...all.slice(1 - MOST_KEPT), { standing, placed }]);
  return placed;
}
