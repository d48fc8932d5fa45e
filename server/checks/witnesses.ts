/** Witnesses that fall silent: a leaf may be missing, or a place forgotten in collating. */
import type { FileTree, LaneTree, Span } from '../../grammar/tree';
import type { Piece, PlacedProblem } from '../score/score';
import { checkOfWritten, problemAt, type Spot } from './check';
import { citedInLane, keeping } from './uses';

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

interface Place extends Spot {
  /** Index in the piece's bars. */
  readonly bar: number;
}

/** Where each witness is cited in a piece. */
function placesIn(tree: FileTree, piece: Piece): Map<string, Place[]> {
  const places = new Map<string, Place[]>();
  const take = (witness: string, place: Place): void => {
    const known = places.get(witness);
    if (known === undefined) places.set(witness, [place]);
    else known.push(place);
  };
  for (const { block, firstBar } of piece.systems) {
    for (const [lane, placed] of (tree.blocks[block]?.lanes ?? []).entries()) {
      for (const { witness, segment, pos, len } of citedIn(placed.tree)) {
        take(witness, { block, lane, pos, len, bar: firstBar + segment });
      }
      if (placed.witness === undefined) continue;
      for (const { segment, pos, len } of filledIn(placed.tree)) {
        take(placed.witness.text, { block, lane, pos, len, bar: firstBar + segment });
      }
    }
  }
  return places;
}

/** How much longer than any silence before it the last one must be. */
const LONGER = 2;

/** The last place of a witness, where it falls silent before two thirds of the piece. */
function silenceAfter(places: readonly Place[], bars: number): Place | undefined {
  const sorted = [...places].sort((a, b) => a.bar - b.bar);
  const last = sorted.at(-1);
  if (last === undefined || last.bar === sorted[0]?.bar || (last.bar + 1) * 3 >= bars * 2) return undefined;
  const longest = Math.max(...sorted.map(({ bar }, index) => bar - (sorted[index - 1]?.bar ?? 0)));
  return bars - last.bar - 1 > LONGER * longest ? last : undefined;
}

export const silentWitnesses = checkOfWritten(
  'witness-falls-silent',
  ['tree', 'environment', 'score'],
  ({ tree, environment, score }) => {
    const pieces = score.pieces.map((piece) => ({ piece, places: placesIn(tree, piece) }));
    // The first source is the main text.
    return environment.sources.slice(1).flatMap(({ name }): PlacedProblem[] => {
      const last = pieces.findLast(({ places }) => places.has(name));
      const place = last && silenceAfter(last.places.get(name) ?? [], last.piece.bars.length);
      if (last === undefined || place === undefined) return [];
      return [
        problemAt('witness-falls-silent', place, { witness: name, bar: last.piece.bars[place.bar]?.number ?? '' }),
      ];
    });
  },
);
