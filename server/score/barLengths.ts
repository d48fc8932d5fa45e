/** Bars of a piece numbered, and their lengths judged. */
import { problemOf } from '../../grammar/findings/finding';
import { keeping } from '../../grammar/keeping';
import { add, compare, equal, isZero, subtract, type Time, ZERO } from '../../grammar/time';
import { counted } from './amounts';
import type { Environment } from './environment';
import { type Bar, isSpecial, type LaneSum, type PlacedProblem, type ScoreSystem, type SystemScore } from './score';

type Draft<T> = { -readonly [K in keyof T]: T[K] };

export type DraftBar = Draft<Bar>;

/** Lanes whose time in a bar is not the meter's, with the block they stand in. */
type BarSums = { readonly sum: LaneSum; readonly block: number }[];

/** A problem that a piece made of something in a system, and all else that it depends on. */
interface Made {
  readonly block: number;
  readonly key: string | undefined;
  readonly placed: PlacedProblem;
}

const kept = new WeakMap<object, Made>();

/** The same problem again, as long as nothing that it says has changed: whoever tells them apart need not look at them. */
export function madeOnce(of: object, block: number, key: string | undefined, make: () => PlacedProblem): PlacedProblem {
  const known = kept.get(of);
  if (known?.block === block && known.key === key) return known.placed;
  const placed = make();
  kept.set(of, { block, key, placed });
  return placed;
}

/** What is odd about the bars of a system. To look at each of all bars after every stroke of a key takes a while. */
interface Odd {
  readonly sums: readonly { readonly index: number; readonly sums: readonly LaneSum[] }[];
  readonly lacksMeter: boolean;
}

export const oddIn = keeping(({ kind, bars }: SystemScore): Odd => {
  const sums: Odd['sums'][number][] = [];
  let lacksMeter = false;
  for (const [index, bar] of bars.entries()) {
    if (bar.sums.length > 0) sums.push({ index, sums: bar.sums });
    if (bar.meter === undefined) lacksMeter = kind === 'measured';
  }
  return { sums, lacksMeter };
});

/** Lanes whose time is not the meter's, by index of the bar, in order. */
function sumsOf(systems: readonly ScoreSystem[]): ReadonlyMap<number, BarSums> {
  const all = new Map<number, BarSums>();
  for (const { score, block, firstBar } of systems) {
    for (const { index, sums } of oddIn(score).sums) {
      const bar = firstBar + index;
      all.set(bar, [...(all.get(bar) ?? []), ...sums.map((sum) => ({ sum, block }))]);
    }
  }
  return all;
}

export class BarLengths {
  constructor(
    private readonly bars: readonly DraftBar[],
    private readonly voices: Environment['voices'],
  ) {}

  /** How much a bar lacks of its meter. */
  private missing(index: number): Time {
    const bar = this.bars[index];
    if (bar?.expected === undefined || compare(bar.duration, bar.expected) >= 0) return ZERO;
    return subtract(bar.expected, bar.duration);
  }

  private isShort(index: number): boolean {
    return !isZero(this.missing(index));
  }

  /** Two short bars around a repeat that make one. */
  private isPair(index: number): boolean {
    const [first, second] = [this.bars[index - 1], this.bars[index]];
    if (first?.expected === undefined || second === undefined || index < 1) return false;
    // A further ending does not follow the one before it.
    if ((second.ending ?? 1) > 1) return false;
    if (!isSpecial(first.closing) && !isSpecial(second.opening)) return false;
    return (
      this.isShort(index - 1) && this.isShort(index) && equal(add(first.duration, second.duration), first.expected)
    );
  }

  /** Gives each its number. @param sections first bars of sections */
  number(sections: ReadonlySet<number>): void {
    let number = 0;
    let beforeEndings = 0;
    let letter = '';
    for (const [index, bar] of this.bars.entries()) {
      const before = this.bars[index - 1];
      if (bar.ending === 1) beforeEndings = number;
      if (bar.ending !== undefined) {
        number = beforeEndings;
        letter = String.fromCharCode(96 + Math.min(bar.ending, 26));
      } else if (isSpecial(before?.closing) || sections.has(index)) letter = '';
      if (index === 0 && this.isShort(0) && this.bars.length > 1) bar.number = '0';
      else if (letter === '' && this.isPair(index) && before !== undefined) {
        const shared = /[a-z]$/.exec(before.number)?.[0] ?? '';
        // After endings the halves go on with their letters.
        if (shared === '') before.number = `${number}a`;
        bar.number = `${number}${shared === '' ? 'b' : String.fromCharCode(shared.charCodeAt(0) + 1)}`;
      } else bar.number = `${++number}${letter}`;
    }
  }

  /** Judges lanes whose time is not the meter's; problems of those that are wrong. */
  judge(systems: readonly ScoreSystem[], sectionStarts: ReadonlySet<number>): readonly PlacedProblem[] {
    const problems: PlacedProblem[] = [];
    for (const [index, sums] of sumsOf(systems)) {
      const bar = this.bars[index];
      const isOpenEnd = bar?.closing === undefined && index === this.bars.length - 1;
      if (bar === undefined || isOpenEnd) continue;
      const whole = bar.duration;
      const { expected } = bar;
      const meant = expected === undefined || this.mayDiffer(index, sectionStarts) ? whole : expected;
      for (const { sum, block } of sums) {
        if (equal(sum.time, meant)) continue;
        bar.broken = true;
        problems.push(this.problemOf(bar, sum, block, meant));
      }
    }
    return problems;
  }

  /** Whether a bar may have another length than its meter says. */
  private mayDiffer(index: number, sectionStarts: ReadonlySet<number>): boolean {
    const bar = this.bars[index];
    if (bar === undefined || bar.irregular) return true;
    if (!this.isShort(index)) return false;
    if (index === 0 || sectionStarts.has(index) || this.isPair(index) || this.isPair(index + 1)) return true;
    if (isSpecial(bar.closing) || index === this.bars.length - 1) {
      // The strain's upbeat makes it whole when it is played again; so does the piece's.
      return [this.strainStart(index), 0].some((first) => {
        const upbeat = this.bars[first];
        return (
          upbeat !== undefined && first !== index && this.isShort(first) && equal(upbeat.duration, this.missing(index))
        );
      });
    }
    const before = this.bars[index - 1];
    if (!isSpecial(before?.closing)) return false;
    const end = this.bars.findIndex((one, i) => i > index && isSpecial(one.closing));
    return end > 0 && equal(this.missing(end), bar.duration);
  }

  /** First bar of the strain; its endings part nothing. */
  private strainStart(index: number): number {
    for (let i = index; i > 0; i--) {
      if (isSpecial(this.bars[i - 1]?.closing) && (this.bars[i]?.ending ?? 1) === 1) return i;
    }
    return 0;
  }

  private problemOf(bar: DraftBar, sum: LaneSum, block: number, meant: Time): PlacedProblem {
    const mendings = sum.mendings.filter((mending) => equal(mending.time, meant));
    const { have, need } = counted(sum.time, meant);
    const long = compare(sum.time, meant) > 0;
    const voice = this.voices[sum.voice]?.name ?? '';
    const meter = bar.meter?.sign ?? 'the other lanes';
    const make = (): PlacedProblem => ({
      problem: problemOf(
        long ? 'bar-too-long' : 'bar-too-short',
        sum.source,
        {
          bar: bar.number,
          voice,
          have,
          need,
          meter,
          hint: mendings[0]?.hint ?? '',
        },
        mendings.map(({ fix }) => fix),
      ),
      block,
      lane: sum.source.lane,
    });
    const key = `${bar.number} ${voice} ${meant.n}/${meant.d} ${meter}`;
    return madeOnce(sum, block, key, make);
  }
}
