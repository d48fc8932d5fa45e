/** The bars that an export holds, in their order, each a measure of the one part. */
import { compare, isZero, type Time, ZERO } from '../../../grammar/time';
import type { Bar, Piece, Score, ScoreSystem } from '../../score/score';

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

/** The measures in order; undefined where the range names a bar that is not there. */
export function planMeasures(score: Score, range: BarRange | undefined): readonly Measure[] | undefined {
  if (range === undefined) return numbered(score.pieces.map((piece) => ({ piece, bars: piece.bars })));
  for (const piece of score.pieces) {
    const bars = barsWithin(piece, range);
    if (bars.length > 0) return numbered([{ piece, bars }]);
  }
  return undefined;
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
