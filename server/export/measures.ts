/** The bars that an export holds, in their order, each a measure of the one part. */
import { putUnder } from '../../grammar/lists';
import { isZero, type Time, ZERO } from '../../grammar/time';
import { barsFromTo } from '../score/barsInWords';
import type { Bar, Piece, PlacedProblem, Score, ScoreSystem } from '../score/score';
import { eventsOf, type PlacedEvent } from '../score/walk';
import { type Losses, NOWHERE, whereBar } from './losses';

export interface Measure {
  readonly piece: Piece;
  readonly bar: Bar;
  /** Index among the measures exported. */
  readonly index: number;
  /** The system where the bar begins. */
  readonly system: ScoreSystem;
  /** First of its piece in the export. */
  readonly opens: boolean;
  /** Last of its piece in the export. */
  readonly closes: boolean;
  readonly duration: Time;
  /** The time of the bar is wrong or unknown; it is left empty. */
  readonly broken: boolean;
}

export interface BarRange {
  readonly from: string;
  readonly to: string;
}

/** What every export is asked about bars. */
export interface BarsWanted {
  /** Bars whose time is wrong are left empty; otherwise such a score is refused. */
  readonly leaveGaps: boolean;
  /** The trade's numbers of the first and last bar wanted; all bars without. */
  readonly bars?: BarRange;
  /** Bars that begin on this page of the source only. */
  readonly page?: string;
}

/** The measures of an export; undefined where it is refused. Says why, and what of the score is left out or left empty. */
export function measuresFor(
  score: Score,
  { leaveGaps, bars, page }: BarsWanted,
  losses: Losses,
): readonly Measure[] | undefined {
  const measures = planMeasures(score, bars, page);
  if (measures === undefined) {
    if (bars !== undefined) losses.add('export-no-such-bar', { wanted: inWords(bars) }, NOWHERE);
    return undefined;
  }
  if (bars !== undefined) tellPiecesWithout(score, measures, losses, bars);
  const broken = measures.filter((measure) => measure.broken);
  const code = leaveGaps ? 'export-gap-left' : 'export-broken-bar';
  for (const { system, bar } of broken) losses.add(code, {}, whereBar(system, bar));
  return leaveGaps || broken.length === 0 ? measures : undefined;
}

/** Which bars an export has. */
export type BarsChosen = Pick<BarsWanted, 'bars' | 'page'>;

/** The bars of an export; undefined where all are. */
export function barsChosen(score: Score, { bars, page }: BarsChosen): ReadonlySet<Bar> | undefined {
  if (bars === undefined && page === undefined) return undefined;
  return new Set(planMeasures(score, bars, page)?.map(({ bar }) => bar));
}

/** Of what is said of notes and signs what concerns the bars of an export; what concerns the whole is kept. */
export function problemsWithin(
  problems: readonly PlacedProblem[],
  score: Score,
  chosen: BarsChosen,
): readonly PlacedProblem[] {
  const bars = barsChosen(score, chosen);
  if (bars === undefined || problems.length === 0) return problems;
  const lanes = new Map<string, PlacedEvent[]>();
  for (const placed of score.pieces.flatMap((piece) => [...eventsOf(piece)])) {
    putUnder(lanes, laneKey(placed.system.block, placed.event.source.lane), placed);
  }
  return problems.filter(({ block, lane, problem: { pos } }) => {
    const last = lanes.get(laneKey(block, lane))?.findLast(({ event }) => event.source.pos <= pos);
    return last === undefined || bars.has(last.bar);
  });
}

const laneKey = (block: number, lane: number | undefined): string => `${block} ${lane ?? ''}`;

/** The measures in order, of every piece that has the bars named; undefined where none has. */
function planMeasures(
  score: Score,
  range: BarRange | undefined,
  page: string | undefined,
): readonly Measure[] | undefined {
  const onPage = (piece: Piece, bars: readonly Bar[]): readonly Bar[] =>
    page === undefined ? bars : bars.filter(({ system }) => piece.systems[system]?.page === page);
  if (range === undefined) return numbered(score.pieces.map((piece) => ({ piece, bars: onPage(piece, piece.bars) })));
  const chosen = score.pieces.map((piece) => ({ piece, bars: onPage(piece, barsWithin(piece, range)) }));
  return chosen.some(({ bars }) => bars.length > 0) ? numbered(chosen) : undefined;
}

/** Names the pieces that have none of the bars wanted, where another has them. */
function tellPiecesWithout(score: Score, measures: readonly Measure[], losses: Losses, range: BarRange): void {
  const shown = new Set(measures.map(({ piece }) => piece));
  score.pieces.forEach((piece, index) => {
    if (shown.has(piece)) return;
    const name = piece.name === '' ? `${index + 1}` : `“${piece.name}”`;
    losses.add('export-piece-without-bars', { wanted: inWords(range), name }, { ...NOWHERE, system: piece.systems[0] });
  });
}

const inWords = ({ from, to }: BarRange): string => barsFromTo(from, to);

/** "8" means the bars "8a" and "8b" too. */
const isNumber = (bar: Bar, wanted: string): boolean =>
  bar.number === wanted || bar.number.replace(/[a-z]+$/, '') === wanted;

function barsWithin(piece: Piece, { from, to }: BarRange): readonly Bar[] {
  const first = piece.bars.findIndex((bar) => isNumber(bar, from));
  const last = piece.bars.findLastIndex((bar) => isNumber(bar, to));
  return first < 0 || last < first ? [] : piece.bars.slice(first, last + 1);
}

/** Bars of pieces as measures of one export. */
export function numbered(
  chosen: readonly { readonly piece: Piece; readonly bars: readonly Bar[] }[],
): readonly Measure[] {
  const measures: Measure[] = [];
  for (const { piece, bars } of chosen) {
    for (const [i, bar] of bars.entries()) {
      const system = piece.systems[bar.system];
      if (system === undefined) continue;
      measures.push({
        piece,
        bar,
        index: measures.length,
        system,
        opens: i === 0,
        closes: i === bars.length - 1,
        duration: isZero(bar.duration) ? (bar.expected ?? ZERO) : bar.duration,
        broken: bar.broken,
      });
    }
  }
  return measures;
}
