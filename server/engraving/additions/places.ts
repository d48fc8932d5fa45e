/** Where a glyph of ours stands, seen from the heads that bear it. */
import type { GlyphOutline } from '../engraver';
import type { AdditionPlace } from '../flavour/addition';
import type { Point, SvgElement } from '../svg';
import {
  bottomOf,
  centreOf,
  type Extent,
  GAP,
  type Head,
  leftOf,
  middleOf,
  rightOf,
  SCALE,
  SPACE,
  stemOf,
  topOf,
} from './heads';

export interface Place extends Point {
  readonly scale: number;
  /** How much it is drawn out in height. */
  readonly stretch?: number;
}

export interface Bearing {
  readonly bearer: SvgElement;
  /** At least one. */
  readonly heads: readonly [Head, ...Head[]];
  readonly outline: GlyphOutline;
  /** The head of the note that follows in the layer. */
  readonly next: () => Head | undefined;
  readonly flags: () => readonly Extent[];
}

type Placing = (bearing: Bearing) => Place | undefined;

/** Its middle at a point; the outlines of signs beside heads are centred on their line already. */
const centredAt = ({ box }: GlyphOutline, x: number, y: number, scale = SCALE): Place => ({
  x: x - ((box.left + box.right) / 2) * scale,
  y,
  scale,
});

/** A stroke between two heads has to be seen beyond them. */
const WITHIN = 1.6 * SCALE;

/** After the dots, and after a flag that hangs down to the height of the sign. */
const rightOfHeads: Placing = ({ bearer, heads, outline, flags }) => {
  const y = middleOf(heads);
  const [top, bottom] = [y - outline.box.top * SCALE, y - outline.box.bottom * SCALE];
  const beside = flags().filter((flag) => flag.top < bottom && flag.bottom > top);
  const right = Math.max(rightOf(bearer, heads), ...beside.map((flag) => flag.right));
  return { x: right + GAP - outline.box.left * SCALE, y, scale: SCALE };
};

const leftOfHeads: Placing = ({ bearer, heads, outline }) => ({
  x: leftOf(bearer, heads) - GAP - outline.box.right * SCALE,
  y: middleOf(heads),
  scale: SCALE,
});

/** As tall as the chord and half a stave space beyond it on either side. */
const tall =
  (placing: Placing): Placing =>
  (bearing) => {
    const place = placing(bearing);
    const { box } = bearing.outline;
    const height = bottomOf(bearing.heads) - topOf(bearing.heads) + SPACE;
    return place && { ...place, stretch: height / ((box.top - box.bottom) * SCALE) };
  };

/** Where along the free part of a stem its stroke stands, from the nearest head: clear of heads, beams and hooks. */
const ALONG = 0.55;
const OVER_HEAD = 1.4 * SPACE;

const onStem: Placing = ({ bearer, heads, outline }) => {
  const [from, to] = stemOf(bearer) ?? [];
  if (from === undefined || to === undefined) return centredAt(outline, centreOf(heads[0]), topOf(heads) - OVER_HEAD);
  const free = to.y < from.y ? topOf(heads) : bottomOf(heads);
  return centredAt(outline, from.x, free + (to.y - free) * ALONG);
};

const betweenNotes: Placing = ({ bearer, heads, outline, next }) => {
  const following = next();
  if (following === undefined) return undefined;
  const x = (rightOf(bearer, heads) + following.left) / 2;
  return centredAt(outline, x, (middleOf(heads) + following.y) / 2);
};

export const PLACES: Readonly<Record<AdditionPlace, Placing>> = {
  after: rightOfHeads,
  tallAfter: tall(rightOfHeads),
  tallBefore: tall(leftOfHeads),
  within: ({ heads, outline }) => centredAt(outline, centreOf(heads[0]), middleOf(heads), WITHIN),
  stem: onStem,
  between: betweenNotes,
};
