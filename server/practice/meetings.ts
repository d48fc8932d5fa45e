/** Where triplets meet duple figures: cells of the grid that one voice divides in three and another in two or four. */
import {
  add,
  compare,
  divide,
  equal,
  format,
  multiply,
  subtract,
  type Time,
  time,
  wholeTimes,
} from '../../grammar/time';
import { isThreefold } from '../score/clock';
import type { Grid } from './grid';
import { isStruck, type Line, type Stroke } from './lines';

export interface Meeting {
  readonly onset: Time;
  readonly length: Time;
  readonly triplets: readonly Divider[];
  readonly duples: readonly Divider[];
  /** Of the duple moments, as shares of the cell, in their order: which moment of the triplet each answers to. */
  readonly answer: Answer;
}

/** A voice, and what it strikes within the cell. */
export interface Divider {
  readonly line: Line;
  readonly within: readonly [Stroke, ...Stroke[]];
  /** Of each stroke: after what share of the cell it comes. */
  readonly shares: readonly Time[];
}

/** Shares of the cell where the duple figure and the triplet are struck together. */
export interface Answer {
  /** In words: `a dotted pair`. */
  readonly name: string;
  readonly pairs: readonly (readonly [duple: Time, triple: Time])[];
}

const QUARTER = time(1, 4);
const HALF = time(1, 2);
const THREE_QUARTERS = time(3, 4);
const THIRD = time(1, 3);
const TWO_THIRDS = time(2, 3);

/** What duple figures become against triplets: facts of triplets and dotted notes, and common practice. */
const answers: Readonly<Record<string, Answer>> = {
  '3/4': { name: 'a dotted pair', pairs: [[THREE_QUARTERS, TWO_THIRDS]] },
  '1/4': { name: 'a pair with the dot after its second note', pairs: [[QUARTER, THIRD]] },
  '1/2': { name: 'a pair of equal notes', pairs: [[HALF, TWO_THIRDS]] },
  '1/2 3/4': {
    name: 'a long and two short notes',
    pairs: [
      [HALF, THIRD],
      [THREE_QUARTERS, TWO_THIRDS],
    ],
  },
  '1/4 1/2': {
    name: 'two short notes and a long one',
    pairs: [
      [QUARTER, THIRD],
      [HALF, TWO_THIRDS],
    ],
  },
};

/** The meetings in a piece, those of one bar after another. */
export function* gatheringMeetings(lines: readonly Line[], grids: readonly Grid[]): Generator<undefined, Meeting[]> {
  const found: Meeting[] = [];
  for (const grid of grids) {
    found.push(...meetingsIn(lines, grid));
    yield;
  }
  return found;
}

/** The meetings in a bar. */
const meetingsIn = (lines: readonly Line[], grid: Grid): Meeting[] =>
  cellsOfTriplets(lines, grid).flatMap((cell): Meeting[] => {
    const dividers = lines.flatMap((line) => dividerOf(line, cell) ?? []);
    const triplets = dividers.filter((one) => dividesInThree(one, cell));
    const duples = dividers.filter(({ shares }) => shares.every(({ d }) => d === 2 || d === 4));
    const moments = new Set(
      duples
        .flatMap(({ shares }) => shares)
        .sort(compare)
        .map(format),
    );
    const answer = answers[[...moments].join(' ')];
    if (answer === undefined || triplets.length === 0 || triplets.length + duples.length < dividers.length) return [];
    return duples.some(({ within }) => within.some(isStruck)) ? [{ ...cell, triplets, duples, answer }] : [];
  });

/** A part of the bar. */
interface Cell {
  readonly onset: Time;
  readonly length: Time;
}

const endOf = ({ onset, length }: Cell): Time => add(onset, length);

/** What a voice strikes within a cell, its beginning left out. */
function dividerOf(line: Line, cell: Cell): Divider | undefined {
  const all = line.beginningIn(cell.onset, endOf(cell));
  const [first, ...rest] = all[0] !== undefined && equal(all[0].onset, cell.onset) ? all.slice(1) : all;
  if (first === undefined) return undefined;
  const within = [first, ...rest] as const;
  return { line, within, shares: within.map(({ onset }) => divide(subtract(onset, cell.onset), cell.length)) };
}

/** Something begins at each third or at one of the two, and the voice keeps to the bounds of the cell. */
function dividesInThree({ line, within, shares }: Divider, cell: Cell): boolean {
  const last = within.at(-1) ?? within[0];
  return shares.every(({ d }) => d === 3) && line.beginningAt(cell.onset) !== undefined && equal(last.end, endOf(cell));
}

/** How long what is divided in three may be: from a breve to a semiquaver. */
const LENGTHS = [time(2), time(1), time(1, 2), time(1, 4), time(1, 8), time(1, 16)];

/** Cells that some voice divides in three: beats of threefold time, and what is divided so besides. */
function cellsOfTriplets(lines: readonly Line[], grid: Grid): Cell[] {
  const found = new Map<string, Cell>();
  for (const line of lines) {
    for (const { onset: at } of line.beginningIn(grid.bar.onset, grid.end)) {
      for (const cell of cellsAround(grid, at)) {
        const key = `${format(cell.onset)} ${format(cell.length)}`;
        const divider = found.has(key) ? undefined : dividerOf(line, cell);
        if (divider !== undefined && dividesInThree(divider, cell)) found.set(key, cell);
      }
    }
  }
  return [...found.values()];
}

/** The cells of which a moment may be the first or the second third. */
function cellsAround({ bar, start, end, beat, meter }: Grid, at: Time): Cell[] {
  const place = subtract(at, start);
  const lengths = hasThirds(place) ? LENGTHS : isThreefold(meter) ? [beat] : [];
  return lengths
    .filter((length) => divide(place, length).d === 3)
    .map((length) => ({ length, onset: add(start, multiply(length, time(wholeTimes(place, length)))) }))
    .filter((cell) => compare(cell.onset, bar.onset) >= 0 && compare(endOf(cell), end) <= 0);
}

const hasThirds = ({ d }: Time): boolean => Number(d) % 3 === 0;
