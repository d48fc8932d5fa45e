/** Where triplets meet duple figures: cells of the grid that one voice divides in three and another in two or four. */
import { add, divide, equal, isMultiple, multiply, subtract, type Time, time, wholeTimes } from '../../grammar/time';
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

/** The meetings in a bar whose beats are not threefold by themselves, or are divided in three again. */
export function meetingsIn(lines: readonly Line[], grid: Grid): Meeting[] {
  return cellsOfTriplets(lines, grid).flatMap(({ onset, length }): Meeting[] => {
    const end = add(onset, length);
    const dividers = lines.flatMap((line): Divider[] => {
      const [first, ...rest] = line.beginningIn(onset, end).filter((stroke) => !equal(stroke.onset, onset));
      const within = first === undefined ? undefined : ([first, ...rest] as const);
      return within === undefined ? [] : [{ line, within }];
    });
    const sharesOf = ({ within }: Divider): Time[] => within.map((one) => divide(subtract(one.onset, onset), length));
    const triplets = dividers.filter((one) => sharesOf(one).every((share) => share.d === 3));
    const duples = dividers.filter((one) => sharesOf(one).every((share) => share.d === 2 || share.d === 4));
    const moments = new Map(duples.flatMap(sharesOf).map((share) => [`${share.n}/${share.d}`, share]));
    const answer = answers[[...moments.keys()].sort(byShare).join(' ')];
    if (answer === undefined || triplets.length === 0 || triplets.length + duples.length < dividers.length) return [];
    return duples.some(({ within }) => within.some(isStruck)) ? [{ onset, length, triplets, duples, answer }] : [];
  });
}

const byShare = (a: string, b: string): number => share(a) - share(b);
const share = (text: string): number => {
  const [n, d] = text.split('/').map(Number);
  return (n ?? 0) / (d ?? 1);
};

/** Cells that some voice divides in three: what is struck at a third of it lies on no duple part of the bar. */
function cellsOfTriplets(lines: readonly Line[], { bar, start, end }: Grid): { onset: Time; length: Time }[] {
  const found = new Map<string, { onset: Time; length: Time }>();
  for (const { onset: at } of lines.flatMap((line) => line.beginningIn(bar.onset, end))) {
    const place = subtract(at, start);
    const parts = Number(place.d);
    if (parts % 3 !== 0 || parts % 9 === 0) continue;
    const length = time(3, parts);
    const onset = add(start, multiply(length, time(wholeTimes(place, length))));
    if (isMultiple(subtract(at, onset), divide(length, time(3))))
      found.set(`${onset.n}/${onset.d} ${parts}`, { onset, length });
  }
  return [...found.values()];
}
