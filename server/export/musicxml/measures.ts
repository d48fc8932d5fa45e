/** The bars that an export holds, in their order, each a measure of the one part. */
import { compare, isZero, type Time, ZERO } from '../../../grammar/time';
import type { Bar, Piece, Score, ScoreSystem } from '../../score/score';
import type { Losses } from './losses';

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

/** The measures in order, of every piece that has the bars named; undefined where none has. */
export function planMeasures(score: Score, range: BarRange | undefined): readonly Measure[] | undefined {
  if (range === undefined) return numbered(score.pieces.map((piece) => ({ piece, bars: piece.bars })));
  const chosen = score.pieces.map((piece) => ({ piece, bars: barsWithin(piece, range) }));
  return chosen.some(({ bars }) => bars.length > 0) ? numbered(chosen) : undefined;
}

/** Names the pieces that have none of the bars wanted, where another has them. */
export function tellPiecesWithout(score: Score, measures: readonly Measure[], losses: Losses, range: BarRange): void {
  const shown = new Set(measures.map(({ piece }) => piece));
  score.pieces.forEach((piece, index) => {
    if (shown.has(piece)) return;
    const name = piece.name === '' ? `${index + 1}` : `“${piece.name}”`;
    losses.add(
      'export-piece-without-bars',
      { ...range, name },
      { source: undefined, system: piece.systems[0], bar: undefined },
    );
  });
}

/** "8" means the bars "8a" and "8b" too. */
const isNumber = (bar: Bar, wanted: string): boolean =>
  bar.number === wanted || bar.number.replace(/[a-z]+$/, '') === wanted;

function barsWithin(piece: Piece, { from, to }: BarRange): readonly Bar[] {
  const first = piece.bars.findIndex((bar) => isNumber(bar, from));
  const last = piece.bars.findLastIndex((bar) => isNumber(bar, to));
  return first < 0 || last < first ? [] : piece.bars.slice(first, last + 1);
}

function numbered(chosen: readonly { readonly piece: Piece; readonly bars: readonly Bar[] }[]): readonly Measure[] {
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

const isShort = (bar: Bar): boolean => bar.expected !== undefined && compare(bar.duration, bar.expected) < 0;

/** Whether the bar is none of the count: an upbeat, an irregular bar, the second half of a pair, all of free music. */
export const isImplicit = ({ bar, system }: Measure): boolean =>
  system.score.kind === 'free' || bar.number === '0' || bar.irregular || (isShort(bar) && /[b-z]$/.test(bar.number));
