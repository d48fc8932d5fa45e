/** Texts that no one types: they too are read in bounded time, with a bounded number of findings. */
import { describe, expect, test } from 'vitest';
import { MOST_PROBLEMS } from '../../grammar/lanes/problems';
import { parseFile } from '../../grammar/parse';
import { MOST } from '../../server/document/levels';
import { check } from './check';

/** No reading but `written`: what takes long is the music of so large a file, and that once is enough. */
const HEAD = 'bentside 1\nstave upper\nstave lower\nvoice dessus upper\nvoice basse lower\n';

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
  ['lines of a barline alone', '\n  |'],
  ['carriage returns', '\r'],
];

/** Kinds that are read as music, bar after bar. */
const MUSIC: ReadonlySet<string> = new Set([
  'barlines',
  'ties apart',
  'one giant chord',
  'options never closed',
  'spans never closed',
  'spans',
  'curves never closed',
  'notes',
  'bars',
  'changes',
  'systems',
]);

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

/** How many times as long a text five times as long may take. */
const FIVEFOLD = 15;

function grows(frame: (junk: string) => string, piece: string, length: number): void {
  const small = timed(frame(times(piece, length / 5)), 20_000);
  const great = timed(frame(times(piece, length)), 60_000);
  // What takes only a moment cannot be measured.
  if (great > 2000) expect(great).toBeLessThan(small * FIVEFOLD);
}

describe('a megabyte', () => {
  test.each(KINDS.filter(([name]) => !MUSIC.has(name)))('of %s', { timeout: 120_000 }, (_, piece) => {
    grows(inLane, piece, 1000 * KB);
  });
});

describe('200 kilobytes', () => {
  test.each(KINDS.filter(([name]) => MUSIC.has(name)))('of %s', { timeout: 120_000 }, (_, piece) => {
    grows(inLane, piece, 200 * KB);
  });
});

test('the problems of one lane are bounded, and the last says how many were left out', () => {
  for (const [, piece] of KINDS) {
    for (const { lanes } of parseFile(inLane(times(piece, 20 * KB))).blocks) {
      for (const { tree } of lanes) expect(tree.problems.length).toBeLessThanOrEqual(MOST_PROBLEMS + 1);
    }
  }
  const [, system] = parseFile(inLane('} '.repeat(5000))).blocks;
  // Each stray bracket is a problem of its own.
  expect(system?.lanes[0]?.tree.problems.at(-1)).toMatchObject({
    code: 'and-more',
    slots: { count: 4000, where: 'lane' },
  });
});
