import { expect, test } from 'vitest';
import type { Analysis } from '../../server/document/analysis';
import { findingWhenPlayed } from '../../server/document/decided';
import { Document } from '../../server/document/document';
import { generateScore } from '../bench/generateScore';

const READINGS = `reading french
  signs anglebert-1689
reading german
  signs quantz-1752
  practice overdot
  practice inegal 8 2:1
`;

/** The longest step of playing all readings as a share of the whole, in the time of the processor. */
function longestStep(analysis: Analysis): number {
  const work = findingWhenPlayed(analysis);
  let [longest, whole] = [0, 0];
  for (let done = false; !done; ) {
    const begun = process.cpuUsage();
    done = work.next().done === true;
    const { user, system } = process.cpuUsage(begun);
    longest = Math.max(longest, user + system);
    whole += user + system;
  }
  return longest / whole;
}

// A turn of the language server is 10 ms (`inTurns`), and a step that is begun keeps all other requests waiting.
test('a score of 30 kB is played a little at a time: no step has more than an eighth of the work of its readings', () => {
  const text = generateScore(30_000).replace('\nstave upper', `\n${READINGS}\nstave upper`);
  // What the engine compiles, or collects, falls upon some step in every round, but not upon the same.
  const rounds = Array.from({ length: 5 }, () => {
    const analysis = new Document('long.bent').update(text);
    expect(analysis.findings().filter(({ level }) => level === 'error')).toEqual([]);
    return longestStep(analysis);
  });
  expect(Math.min(...rounds)).toBeLessThan(1 / 8);
});
