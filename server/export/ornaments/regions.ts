/** The time of a written event, cut where a note of its voice begins or ends: what stands in it in standard values. */
import { add, compare, equal, isZero, multiply, subtract, sum, type Time, time } from '../../../grammar/time';
import type { Bar, Piece } from '../../score/score';
import { type PlacedEvent, placeOfEvent } from '../../score/walk';
import { inRatio, type Ratio, ratioOf, writtenValue } from '../values';
import { type PrintedValue, printed } from './printed';
import type { Group, Part, Strand } from './strands';

/** A written event whose time is written otherwise. */
export interface Region {
  readonly placed: PlacedEvent;
  /** All that is played for its notes. */
  readonly groups: readonly Group[];
  /** In the order of time, each within one bar. */
  readonly slices: readonly Slice[];
}

/** A time in which the same notes sound. */
export interface Slice {
  readonly bar: Bar;
  /** In print. */
  readonly at: Time;
  /** Exact. */
  readonly begins: Time;
  readonly ends: Time;
  readonly strands: readonly Strand[];
  readonly values: readonly PrintedValue[];
}

export interface Regions {
  readonly regions: readonly Region[];
  /** Events with more notes than values can tell apart: they stay as they are. */
  readonly failed: readonly PlacedEvent[];
}

/** The events of a voice in whose time something else sounds than what they write. */
export function regionsOf(piece: Piece, part: Part): Regions {
  if (!part.groups.some(({ changed }) => changed)) return { regions: [], failed: [] };
  const sounding = new Sounding(part.strands);
  const regions: Region[] = [];
  const failed: PlacedEvent[] = [];
  for (const placed of part.written) {
    if (placed.event.small !== undefined || placed.bar.broken || isZero(placed.event.duration)) continue;
    const strands = sounding.within(placed.onset, add(placed.onset, placed.event.duration));
    const groups = part.groupsAt.get(placeOfEvent(placed)) ?? [];
    if (![...groups, ...strands.map(({ group }) => group)].some(({ changed }) => changed)) continue;
    const slices = slicesOf(piece, placed, strands);
    if (slices === undefined) failed.push(placed);
    else regions.push({ placed, groups, slices });
  }
  return { regions, failed };
}

/** Goes through the notes of a voice with its written events, which come in the order of time. */
class Sounding {
  private next = 0;
  private now: Strand[] = [];

  constructor(private readonly strands: readonly Strand[]) {}

  within(from: Time, to: Time): readonly Strand[] {
    for (
      let one = this.strands[this.next];
      one !== undefined && compare(one.onset, to) < 0;
      one = this.strands[this.next]
    ) {
      this.now.push(one);
      this.next++;
    }
    this.now = this.now.filter(({ end }) => compare(end, from) > 0);
    return this.now.filter(({ onset }) => compare(onset, to) < 0);
  }
}

function slicesOf(piece: Piece, placed: PlacedEvent, strands: readonly Strand[]): readonly Slice[] | undefined {
  const value = writtenValue(placed.event.value);
  const ratio = ratioOf(value, placed.event.duration) ?? NO_RATIO;
  const slices: Slice[] = [];
  for (const stretch of stretchesByBar(piece, placed)) {
    const lines = linesIn(stretch, strands);
    const lengths = lines.slice(1).map((line, i) => subtract(line, lines[i] ?? line));
    const print = printed(
      lengths.map((length) => multiply(length, time(ratio.actual, ratio.normal))),
      subtract(stretch.onset, stretch.bar.onset),
      value,
    );
    if (print === undefined) return undefined;
    let at = stretch.onset;
    for (const [i, own] of print.entries()) {
      const [begins, ends] = [lines[i] ?? stretch.onset, lines[i + 1] ?? stretch.end];
      const values = own.map((one) => ({ ...one, length: inRatio(one.length, ratio) }));
      const inside = strands.filter(({ onset, end }) => compare(onset, ends) < 0 && compare(end, begins) > 0);
      slices.push({ bar: stretch.bar, at, begins, ends, strands: inside, values });
      at = add(at, sum(values.map(({ length }) => length)));
    }
  }
  return slices;
}

const NO_RATIO: Ratio = { actual: 1, normal: 1 };

interface Stretch {
  readonly bar: Bar;
  readonly onset: Time;
  readonly end: Time;
}

/** The time of an event, bar by bar. */
function stretchesByBar(piece: Piece, { event, onset, bar }: PlacedEvent): readonly Stretch[] {
  const end = add(onset, event.duration);
  const bars = piece.bars.slice(bar.index).filter((one) => one === bar || compare(one.onset, end) < 0);
  return bars.map((one, i) => ({
    bar: one,
    onset: i === 0 ? onset : one.onset,
    end: bars[i + 1]?.onset ?? end,
  }));
}

/** Where notes begin and end in a stretch of time, its own beginning and end among them. */
function linesIn({ onset, end }: Stretch, strands: readonly Strand[]): readonly Time[] {
  const inside = strands
    .flatMap((one) => [one.onset, one.end])
    .filter((line) => compare(line, onset) > 0 && compare(line, end) < 0)
    .sort(compare);
  return [onset, ...inside.filter((line, i) => i === 0 || !equal(line, inside[i - 1] ?? onset)), end];
}
