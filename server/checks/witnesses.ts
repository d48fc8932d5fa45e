/** Witnesses that fall silent: a leaf may be missing, or a place forgotten in collating. */
import { keeping } from '../../grammar/keeping';
import type { BlockContents, FileTree, LaneTree, Span } from '../../grammar/tree';
import type { Piece, PlacedProblem } from '../score/score';
import { checkOfWritten, problemAt, type Spot } from './check';
import { citedInLane } from './uses';

/** A bar of a lane in which a witness is cited. */
interface Cited extends Span {
  readonly witness: string;
  readonly segment: number;
}

const segmentAt = ({ segments }: LaneTree, pos: number): number => segments.findLastIndex((one) => one.pos <= pos);

/** By whom the bars of a lane are cited, options and what is limited to a witness alike. */
const citedIn = keeping((tree: LaneTree): readonly Cited[] =>
  citedInLane(tree).flatMap(({ kind, name, pos, len }) =>
    kind === 'option' || kind === 'limit'
      ? [{ witness: name.split('.')[0] ?? name, segment: segmentAt(tree, pos), pos, len }]
      : [],
  ),
);

/** The bars that a witness lane fills. */
const filledIn = keeping((tree: LaneTree): readonly (Span & { readonly segment: number })[] =>
  tree.segments.flatMap(({ items, pos, len }, segment) => (items.length === 0 ? [] : [{ segment, pos, len }])),
);

/** The witnesses cited in a block. */
const witnessesIn = keeping(
  ({ lanes }: BlockContents): ReadonlySet<string> =>
    new Set(
      lanes.flatMap(({ tree, witness }) => [
        ...citedIn(tree).map((one) => one.witness),
        ...(witness === undefined || filledIn(tree).length === 0 ? [] : [witness.text]),
      ]),
    ),
);

/** The last piece in which a witness is cited, with the last system there that cites it. */
function lastCited(
  tree: FileTree,
  pieces: readonly Piece[],
  name: string,
): { piece: Piece; firstBar: number } | undefined {
  for (const piece of [...pieces].reverse()) {
    const system = piece.systems.findLast(({ block }) => {
      const contents = tree.blocks[block]?.contents;
      return contents !== undefined && witnessesIn(contents).has(name);
    });
    if (system !== undefined) return { piece, firstBar: system.firstBar };
  }
  return undefined;
}

interface Place extends Spot {
  /** Index in the piece's bars. */
  readonly bar: number;
}

/** Where a witness is cited in a piece. */
function placesOf(tree: FileTree, piece: Piece, name: string): Place[] {
  const places: Place[] = [];
  for (const { block, firstBar } of piece.systems) {
    for (const [lane, placed] of (tree.blocks[block]?.lanes ?? []).entries()) {
      for (const { witness, segment, pos, len } of citedIn(placed.tree)) {
        if (witness === name) places.push({ block, lane, pos, len, bar: firstBar + segment });
      }
      if (placed.witness?.text !== name) continue;
      for (const { segment, pos, len } of filledIn(placed.tree)) {
        places.push({ block, lane, pos, len, bar: firstBar + segment });
      }
    }
  }
  return places;
}

/** How much longer than any silence before it the last one must be. */
const LONGER = 2;

/** A bar of the last third of a piece: nobody falls silent there. */
const isLate = (bar: number, bars: number): boolean => (bar + 1) * 3 >= bars * 2;

/** The last place of a witness, where it falls silent before two thirds of the piece. */
function silenceAfter(places: readonly Place[], bars: number): Place | undefined {
  const sorted = [...places].sort((a, b) => a.bar - b.bar);
  const last = sorted.at(-1);
  if (last === undefined || last.bar === sorted[0]?.bar || isLate(last.bar, bars)) return undefined;
  const longest = sorted.reduce((most, { bar }, index) => Math.max(most, bar - (sorted[index - 1]?.bar ?? 0)), 0);
  return bars - last.bar - 1 > LONGER * longest ? last : undefined;
}

export const silentWitnesses = checkOfWritten(
  'witness-falls-silent',
  ['tree', 'environment', 'score'],
  ({ tree, environment, score }) => {
    // The first source is the main text.
    return environment.sources.slice(1).flatMap(({ name }): PlacedProblem[] => {
      const last = lastCited(tree, score.pieces, name);
      // Most are cited to the end: their places are not gathered.
      if (last === undefined || isLate(last.firstBar, last.piece.bars.length)) return [];
      const { piece } = last;
      const place = silenceAfter(placesOf(tree, piece, name), piece.bars.length);
      if (place === undefined) return [];
      return [problemAt('witness-falls-silent', place, { witness: name, bar: piece.bars[place.bar]?.number ?? '' })];
    });
  },
);
