/** Signs of ours as text of SVG. */
import type { GlyphOutline } from '../engraver';
import type { Point } from '../svg';
import { bottomOf, centreOf, type Extent, GAP, type Head, SPACE, topOf } from './heads';
import type { Place } from './places';

const number = (value: number): string => `${Math.round(value)}`;
const point = (x: number, y: number): string => `${number(x)} ${number(y)}`;
const factor = (value: number): string => `${Math.round(value * 1000) / 1000}`;

/** Fonts count upwards, pictures downwards. */
export const glyphMark = ({ path }: GlyphOutline, { x, y, scale, stretch = 1 }: Place): string =>
  `<path transform="translate(${number(x)}, ${number(y)}) scale(${factor(scale)}, ${factor(-scale * stretch)})" d="${path}" />`;

const LINE_WIDTH = 22;
const DASHES = ' stroke-dasharray="90 60"';

const strokeMark = (path: string, dashed = false): string =>
  `<path d="${path}" stroke-width="${LINE_WIDTH}" fill="none"${dashed ? DASHES : ''} />`;

/**
 * A straight line from head to head: from side to side, or, where one stands over the other, from edge to edge.
 * @param isBlocked whether such an upright line would meet something on its way, and passes to the right of it
 */
export function lineMark(
  heads: readonly Head[],
  dashed: boolean,
  isBlocked: (upper: Head, lower: Head) => boolean,
): string {
  const [first, second] = [heads[0], heads.at(-1)];
  if (first === undefined || second === undefined || first === second) return '';
  const [from, to] = first.x <= second.x ? [first, second] : [second, first];
  if (to.left >= from.right)
    return strokeMark(`M${point(from.right + GAP, from.y)} L${point(to.left - GAP, to.y)}`, dashed);
  const [upper, lower] = from.y <= to.y ? [from, to] : [to, from];
  if (isBlocked(upper, lower)) {
    const x = Math.max(upper.right, lower.right) + GAP;
    return strokeMark(`M${point(x, upper.y)} L${point(x, lower.y)}`, dashed);
  }
  const reach = 0.6 * SPACE;
  return strokeMark(`M${point(centreOf(upper), upper.y + reach)} L${point(centreOf(lower), lower.y - reach)}`, dashed);
}

/** So far an open curve runs, to the left no farther than to a clef or meter before its note; and so high it rises. */
const OPEN_LENGTH = { left: -1.2 * SPACE, right: 2.4 * SPACE };
const OPEN_HEIGHT = 0.7 * SPACE;

/** A curve that begins or ends at a head and is lost on its other side. */
export function openCurveMark(head: Head, side: 'left' | 'right', dashed: boolean): string {
  const x = side === 'right' ? head.right + GAP / 2 : head.left - GAP / 2;
  const y = head.y + 0.35 * SPACE;
  const far = x + OPEN_LENGTH[side];
  const low = y + OPEN_HEIGHT;
  return strokeMark(`M${point(x, y)} C${point(x, low)} ${point((x + far) / 2, low)} ${point(far, low)}`, dashed);
}

/** Where a hook bends and ends, from the end of its wavy line. */
const HOOK = { left: -0.2 * SPACE, right: 0.7 * SPACE, bend: 0.65 * SPACE, tip: 0.25 * SPACE };

/** How far a hook has to hang down, or stand up, from the end of a wavy line so that it passes by accidentals. */
export function clearOf(accidentals: readonly Extent[], { x, y }: Point, end: 'foot' | 'head'): number {
  const reaches = accidentals
    .filter(({ left, right }) => left < x + HOOK.right && x + HOOK.left < right)
    .map(({ top, bottom }) =>
      end === 'foot' ? { near: top - y, far: bottom - y } : { near: y - bottom, far: y - top },
    )
    .filter(({ near, far }) => near < HOOK.bend && far > 0)
    .map(({ far }) => far - HOOK.tip + GAP);
  return Math.max(0, ...reaches);
}

/** A hook that turns to the right from the end of a wavy line, or `lower` than that, as seen from the line. */
export function hookMark({ x, y }: Point, end: 'foot' | 'head', lower: number): string {
  const away = end === 'foot' ? 1 : -1;
  const from = x + HOOK.left;
  const at = (distance: number): number => y + away * distance;
  const [bend, tip] = [at(lower + HOOK.bend), at(lower + HOOK.tip)];
  const curve = `C${point(from, bend)} ${point(x + HOOK.right, bend)} ${point(x + 0.6 * SPACE, tip)}`;
  return strokeMark(`M${point(from, y)} L${point(from, at(lower))} ${curve}`);
}

/** How deep a curve hangs: a share of its length, and never more than that. */
const DEPTH = 0.1;
const DEEPEST = 1.5 * SPACE;
/** Half of its width in the middle. */
const SWELL = 18;

/** A curve that hangs from one point to another, thickest in the middle. */
export function hangingCurve(from: Point, to: Point, dashed: boolean): string {
  const length = to.x - from.x;
  const depth = Math.min(DEEPEST, Math.max(0.5 * SPACE, length * DEPTH));
  const [a, b] = [from.x + length * 0.2, to.x - length * 0.2];
  const arc = (deeper: number, back: boolean): string => {
    const [first, second] = [point(a, from.y + depth + deeper), point(b, to.y + depth + deeper)];
    return back ? `C${second} ${first} ${point(from.x, from.y)}` : `C${first} ${second} ${point(to.x, to.y)}`;
  };
  if (dashed) return strokeMark(`M${point(from.x, from.y)} ${arc(0, false)}`, true);
  return `<path d="M${point(from.x, from.y)} ${arc(SWELL, false)} ${arc(-SWELL, true)} Z" stroke-width="9" />`;
}

const BRACKET_WIDTH = 26;
const BRACKET_ARM = 0.3 * SPACE;
const BRACKET_REACH = 0.8 * SPACE;
/** From what stands between the brackets to their uprights: the arms do not reach over it. */
const BRACKET_GAP = BRACKET_ARM + GAP / 2;

/** Square brackets before the left and after the right, as tall as the heads between them. */
export function bracketMarks(heads: readonly Head[], left: number, right: number): string {
  const [top, bottom] = [topOf(heads) - BRACKET_REACH, bottomOf(heads) + BRACKET_REACH];
  const bracket = (x: number, arm: number): string =>
    `<path d="M${point(x + arm, top)} L${point(x, top)} L${point(x, bottom)} L${point(x + arm, bottom)}" stroke-width="${BRACKET_WIDTH}" fill="none" />`;
  return bracket(left - BRACKET_GAP, BRACKET_ARM) + bracket(right + BRACKET_GAP, -BRACKET_ARM);
}
