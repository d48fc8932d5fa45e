/** What runs into one another in a picture. */
import { type Box, overlap } from './boxes';

/** In stave spaces. */
const MOST = 0.1;

const isHead = ({ what }: Box): boolean => what === 'notehead';
const chordOf = ({ id }: Box): string => id.replace(/-n\d+$/, '');

/** What may run into one another, and why. */
const EXCEPTIONS: readonly { readonly reason: string; readonly holds: (a: Box, b: Box) => boolean }[] = [
  {
    reason: 'two voices in unison share one head (common practice)',
    holds: (a, b) => isHead(a) && isHead(b) && a.left === b.left && a.top === b.top,
  },
  {
    reason: 'the upright strokes of breves a third apart meet: they are higher than a stave space',
    holds: (a, b) => isHead(a) && isHead(b) && chordOf(a) === chordOf(b) && a.bottom - a.top > 1.2,
  },
];

const mayMeet = (a: Box, b: Box): boolean =>
  (a.what === b.what && a.id === b.id) || EXCEPTIONS.some(({ holds }) => holds(a, b));

/** Pairs that run into one another, each in words. */
export function collisions(boxes: readonly Box[]): readonly string[] {
  const sorted = [...boxes].sort((a, b) => a.left - b.left);
  return sorted.flatMap((a, i) => {
    const found: string[] = [];
    for (const b of sorted.slice(i + 1)) {
      if (b.left > a.right) break;
      if (overlap(a, b) > MOST && !mayMeet(a, b))
        found.push(`${a.what} ${a.id} and ${b.what} ${b.id}: ${overlap(a, b).toFixed(2)}`);
    }
    return found;
  });
}
