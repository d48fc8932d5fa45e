/** Texts that no one types: they too are read in bounded time, with a bounded number of findings. */
import { describe, expect, test } from 'vitest';
import { parseFile } from '../../grammar/parse';
import { MOST } from '../../server/document/levels';
import { HEAD } from '../helpers/music';
import { check } from './check';

/** One lane that holds the junk. */
const inLane = (junk: string): string =>
  `${HEAD}system upper C1 lower F4 meter C\n  dessus | 4 c5 ${junk}\n  basse | 1 c3 |||\n`;
const alone = (junk: string): string => junk;
const inStatement = (junk: string): string => `${HEAD}title ${junk}\n`;

const times = (piece: string, length: number): string =>
  piece.repeat(Math.ceil(length / piece.length)).slice(0, length);

const KINDS: readonly (readonly [string, string])[] = [
  ['round brackets', '('],
  ['braces', '{'],
  ['closing braces', '}'],
  ['angles', '<'],
  ['closing angles', '>'],
  ['angles and braces', '<{'],
  ['braces that close as angles', '{ >'],
  ['semicolons', '; '],
  ['quotes', '"'],
  ['quotes apart', '" '],
  ['colons', ':'],
  ['barlines run together', '|'],
  ['barlines', ' |'],
  ['slashes', '/'],
  ['typographic quotes', '“'],
  ['apostrophes', "'"],
  ['ties', '='],
  ['ties apart', '= '],
  ['NUL', '\0'],
  ['lone surrogates', '\ud800'],
  ['digits', '1'],
  ['dots', '.'],
  ['flats', 'b'],
  ['hyphens', '-'],
  ['asterisks', '*'],
  ['commas', ','],
  ['one giant chord', '-e'],
  ['one note with a heap of marks', "'zz"],
  ['labels', '<K,'],
  ['options never closed', '<K: 4 c5 ; '],
  ['spans never closed', '{small 8 c5 '],
  ['spans', '{small 8 c5} '],
  ['curves never closed', "c5'u "],
  ['notes', 'c5 '],
  ['bars', 'c5 d e f | '],
  ['gibberish', '@%$ '],
  ['changes', '(now C3) '],
  ['unknown changes', '(sideways) '],
  ['short lines', 'a\n'],
  ['short indented lines', '\n  a'],
  ['statements', '\nstave x'],
  ['systems', '\nsystem'],
  ['lanes', '\n  dessus | c5 |'],
  ['continuing lanes', '|\n  |'],
  ['carriage returns', '\r'],
];

const KB = 1000;

/** Milliseconds for a text; a generous bound, for a slow machine under load. */
function timed(text: string, most: number): number {
  const begun = performance.now();
  const findings = check(text, most);
  // "and N more" stands once for each lane or once for the file.
  expect(findings.length).toBeLessThanOrEqual(MOST.file + 10);
  return performance.now() - begun;
}

describe('a line of 20,000 characters', () => {
  test.each(KINDS)('of %s', (_, piece) => {
    for (const frame of [inLane, inStatement, alone]) timed(frame(times(piece, 20 * KB)), 3000);
  });
});

describe('a megabyte', () => {
  test.each(KINDS)('of %s', { timeout: 120_000 }, (_, piece) => {
    const small = timed(inLane(times(piece, 200 * KB)), 10_000);
    const great = timed(inLane(times(piece, 1000 * KB)), 30_000);
    // Five times the text in less than three times five times the time; what takes a moment only cannot be measured.
    if (great > 1500) expect(great / 5).toBeLessThan(small * 3);
  });
});

test('problems of one lane and one statement are bounded before they are counted', () => {
  for (const [, piece] of KINDS) {
    for (const frame of [inLane, inStatement]) {
      for (const block of parseFile(frame(times(piece, 100 * KB))).blocks) {
        for (const { tree } of [...block.lanes, ...block.statements])
          expect(tree.problems.length).toBeLessThanOrEqual(1001);
      }
    }
  }
});
