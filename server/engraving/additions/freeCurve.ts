/** Curves of free music: each keeps the height of its note until the music reaches the note where it ends. */
import { below, classOf, glyphsOf, type SvgElement } from '../svg';
import { above, GAP, type Head, SPACE, staveAt, stavesIn } from './heads';
import { hangingCurve } from './marks';

/** How far under the middle of its head a curve begins. */
const LOWER = 0.65 * SPACE;

/** What is left of one that ends at the first note of a system is no more than a stub, and not drawn. */
const SHORTEST = SPACE;

/** From note to note; from system to system it goes on at the same height. One of the ends may be on no picture. */
export function freeCurve(from: Head | undefined, to: Head | undefined, dashed: boolean): string {
  const start = from && placeIn(from);
  const end = to && placeIn(to);
  const hang = (y: number, x1: number, x2: number): string =>
    x2 - x1 < SHORTEST ? '' : hangingCurve({ x: x1, y: y + LOWER }, { x: x2, y: y + LOWER }, dashed);
  const reach = (y: number, x1: number): string => (end === undefined ? '' : hang(y, x1, end.head.left - GAP));
  if (start === undefined) return end === undefined ? '' : reach(end.head.y, end.left);
  const begins = start.head.left + SPACE / 2;
  if (end?.system === start.system) return reach(start.head.y, begins);
  return hang(start.head.y, begins, start.right) + (end === undefined ? '' : reach(heightIn(end, start), end.left));
}

interface InSystem {
  readonly head: Head;
  readonly system: SvgElement;
  readonly measure: SvgElement;
  readonly stave: number;
  /** Where the music of the system begins and ends. */
  readonly left: number;
  readonly right: number;
}

function placeIn(head: Head): InSystem | undefined {
  const measure = above(head.element, 'measure');
  const system = measure && above(measure, 'system');
  if (measure === undefined || system === undefined) return undefined;
  const measures = system.children.filter((element) => classOf(element) === 'measure');
  const heads = [...below(system)].filter((element) => classOf(element) === 'notehead');
  return {
    head,
    system,
    measure,
    stave: staveAt(measure, head.y),
    left: Math.min(...heads.flatMap(glyphsOf).map(({ x }) => x)) - SPACE,
    right: Math.max(...measures.flatMap((one) => stavesIn(one).map(({ right }) => right))),
  };
}

/** The height that a curve from another system has in the system where it ends. */
function heightIn(end: InSystem, start: InSystem): number {
  const [there, here] = [stavesIn(start.measure)[start.stave], stavesIn(end.measure)[start.stave]];
  return there === undefined || here === undefined ? end.head.y : here.top + (start.head.y - there.top);
}
