/** Nothing runs into anything else: heads, accidentals, signs, words, figures, syllables of all pages of all samples. */
import { describe, expect, it } from 'vitest';
import { type Box, boxesIn, overlap } from '../helpers/boxes';
import { drawn } from '../helpers/drawn';
import { scoreOf } from '../helpers/music';
import { sampleAnalysis, sampleNames } from '../helpers/samples';

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
function collisions(boxes: readonly Box[]): readonly string[] {
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

describe('what is drawn', () => {
  it.each(sampleNames)('keeps its distance in %s', async (name) => {
    const pages = await drawn(scoreOf(sampleAnalysis(name)));
    for (const [i, page] of pages.entries()) {
      const boxes = await boxesIn(page);
      expect(boxes.length).toBeGreaterThan(20);
      expect(collisions(boxes), `page ${i + 1}`).toEqual([]);
    }
  });

  it('would be found where it did not', () => {
    const head: Box = { what: 'notehead', id: 'a', left: 0, top: 0, right: 1.18, bottom: 1 };
    expect(collisions([head, { ...head, what: 'accid', id: 'b', left: 1, right: 2 }])).toEqual([
      'notehead a and accid b: 0.18',
    ]);
    expect(collisions([head, { ...head, what: 'accid', id: 'b', left: 1.1, right: 2 }])).toEqual([]);
  });
});
