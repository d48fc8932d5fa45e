/** A text printed from its tree is the text. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseFile } from '../../grammar/parse';
import { type Leaf, leavesOf, leavesOfLane, printFile } from '../../grammar/print';
import type { Block } from '../../grammar/tree';
import { HEAD } from '../helpers/music';
import { examplesOf, referenceText } from '../helpers/reference';

const SAMPLES = join(import.meta.dirname, '../../samples');
const samples = readdirSync(SAMPLES)
  .filter((name) => name.endsWith('.bent'))
  .map((name): [string, string] => [name, readFileSync(join(SAMPLES, name), 'utf8')]);

/** What the leaves leave out between the first and the last. */
const between = (text: string, leaves: readonly Leaf[]): string[] =>
  leaves.slice(1).map((leaf, i) => text.slice(leaves[i]?.end ?? 0, leaf.start));

const STRANGE: ReadonlySet<string> = new Set(['lane-without-barline', 'continues-nothing']);

/** The text with blanks for the lines that belong to nothing, which the cut has reported. */
function withoutStrangeLines(text: string, { offset, problems }: Block): string {
  let rest = text;
  for (const { code, pos, len } of problems) {
    if (!STRANGE.has(code)) continue;
    rest = `${rest.slice(0, offset + pos)}${' '.repeat(len)}${rest.slice(offset + pos + len)}`;
  }
  return rest;
}

const onlyWhiteSpaceOrComments = /^(?:\s|\/\/[^\n\r]*(?![^\n\r]))*$/;

function check(text: string): void {
  const tree = parseFile(text);
  let end = 0;
  for (const leaf of leavesOf(tree)) {
    expect(leaf.start, `“${leaf.text}” begins after the leaf before it ends`).toBeGreaterThanOrEqual(end);
    expect(leaf.text).toBe(text.slice(leaf.start, leaf.end));
    end = leaf.end;
  }
  expect(end).toBeLessThanOrEqual(text.length);
  for (const block of tree.blocks) {
    const understood = withoutStrangeLines(text, block);
    for (const lane of block.lanes) {
      for (const gap of between(understood, leavesOfLane(tree, block, lane)))
        expect(gap).toMatch(onlyWhiteSpaceOrComments);
    }
  }
  expect(printFile(tree)).toBe(text);
}

/** One lane under two staves. */
const lane = (music: string): string => `${HEAD}system upper C1 lower F4 meter C\n  dessus | ${music}\n`;
const leavesIn = (music: string): string[] => {
  const tree = parseFile(lane(music));
  const [block] = tree.blocks.filter(({ kind }) => kind === 'system');
  const [only] = block?.lanes ?? [];
  if (block === undefined || only === undefined) throw new Error('no lane');
  return leavesOfLane(tree, block, only).map(({ text }) => text);
};

describe('the leaves of a lane', () => {
  test.each<[string, string, string[]]>([
    ['a chord', "4. c4'zz-(up)e[#]-g=?:L'3*n1 |", ['4.', 'c4', "'zz", '-(up)e[#]', '-g', '=?:L', "'3", '*n1', '|']],
    [
      'a tuplet',
      '{3in2 8 c5 d e}*n7 {inegal 2:1:french c d} |',
      ['{3in2', '8', 'c5', 'd', 'e', '}', '*n7', '{inegal 2:1:french', 'c', 'd', '}', '|'],
    ],
    [
      'options',
      '<v3*n7*"why ""so""" K,M.2?: 4 c5 ; L: omit> |',
      ['<', 'v3', '*n7', '*"why ""so"""', 'K', ',', 'M', '.2?', ':', '4', 'c5', ';', 'L', ':', 'omit', '>', '|'],
    ],
    [
      'silences',
      "r rbar _ __ = [=]'zz lost 2. lost ? lost |",
      ['r', 'rbar', '_', '__', '=', '[=]', "'zz", 'lost', '2.', 'lost', '?', 'lost', '|'],
    ],
    [
      'words and changes',
      '(below  "tr ""x""") "Gay" (now C3 meter 3/4) & , |',
      ['(', 'below', '"tr ""x"""', ')', '"Gay"', '(now C3 meter 3/4)', '&', ',', '|'],
    ],
    ['barlines', '4 c5 ||[]*n3 d |||| e :||', ['4', 'c5', '||[]', '*n3', 'd', '||||', 'e', ':||']],
  ])('%s', (_, music, leaves) => {
    expect(leavesIn(music)).toEqual(['dessus', '|', ...leaves]);
    check(lane(music));
  });

  test('of a lane that goes on in the next line each barline is one', () => {
    expect(leavesIn('4 c5 | // the first\n    ||: d |')).toEqual(['dessus', '|', '4', 'c5', '|', '||:', 'd', '|']);
  });
});

describe('printing what was read gives it back', () => {
  test.each(samples)('of the sample %s', (_, text) => check(text));

  test('of every example of the reference', () => {
    for (const example of examplesOf(referenceText())) check(example.file);
  });

  test('of lines that belong to nothing between lines of a lane', () => {
    check('o   | 2 e4 |\n         | 2 f4 |\n  tenore  2 a3 r |\n         |');
  });

  test('of a sample cut anywhere', () => {
    const text = samples.map(([, sample]) => sample).join('');
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(400), fc.nat(400), (at, before, after) => {
        check(text.slice(Math.max(at - before, 0), at) + text.slice(at + 1, at + after));
      }),
      { numRuns: 300 },
    );
  });

  test.each([`4 c5*"why" c5 'zz*"why" d5 |`, "__'through(dot) | __ '#'through(dot) "])(
    'of a mark that stands apart, whatever stood at a like note before: %s',
    (music) => check(lane(music)),
  );

  const sign = fc.constantFrom(
    ...'4 8. 16x 8x5in4? c5 f# bbb4 e[#]5 a(b) c5= [=] =?:L -e -(up)g r rbar _ __ lost omit'.split(' '),
    ...'\'zz \'[zz]? \'u \'.c3 \'4-5 \'through(dot) \'# *n7 *"a" *"say ""x""" {3in2 {small {black\'3in2 { } < <K: <v3*n1 ; ;L: K,L.02?: >'.split(
      ' ',
    ),
    ...'| || ||| :|| ||: :||: |||| |[] ::| (now (up) (below ("x" "tr." " “x” ’ // & , @ 8c5 c5/8 face á \0 \ud800'.split(
      ' ',
    ),
    ...[
      '\n',
      '\r\n',
      '\r',
      '\n  ',
      '\n  dessus | ',
      '\n  basse L || ',
      '\n  fig | ',
      '\n  text | ',
      '\nsystem ',
      '\nstave ',
      '\t',
      ' ',
    ],
    ...'key meter C 3/4 = 2/2 lines 5 upper C1 F4+C6 [6] 6+ 5,6 6/5 word- "two words" 01:2 g#-eb : , ( ) title at 12,3,4,5'.split(
      ' ',
    ),
  );
  const text = fc
    .array(fc.tuple(sign, fc.constantFrom(' ', ' ', '')), { maxLength: 60 })
    .map((signs) => signs.flat().join(''));

  test('of signs in any order', () => {
    fc.assert(
      fc.property(text, (signs) => check(signs)),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(text, (signs) => check(lane(signs))),
      { numRuns: 2000 },
    );
  });

  test('of statements in any order', () => {
    const words = fc.constantFrom(
      ...'reading french takes K,L signs anglebert-1689 practice overdot inegal 8 3:2 in B voice dessus tempo 2 at 50 source "x" "y at v3 from'.split(
        ' ',
      ),
      ...'instrument harpsichord compass g1-d6 short-octave c/e split d#/eb manual upper stops pitch a4 = 415 tuning meantone 1/4 wolf'.split(
        ' ',
      ),
      ...'temperament c-g -1/4 sc c4-g4 2.0 beats narrow rest table house zz "shake" : , on beat (+1 0) repeated hold 1/4 when before rest'.split(
        ' ',
      ),
      ...['\n', '\n  ', '\n  // why\n  ', ' ', 'before  rest', '“x”', '"a”', 'system upper C1', 'K , L', '1,2 , 3,4'],
    );
    const page = fc.array(fc.tuple(words, fc.constantFrom(' ', ' ', ' ', '\n', '')), { maxLength: 40 });
    fc.assert(
      fc.property(page, (pieces) => check(pieces.flat().join(''))),
      { numRuns: 2000 },
    );
  });

  test('of any characters whatever', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (any) => check(any)),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (any) => check(lane(any))),
      { numRuns: 500 },
    );
  });
});

describe('slips that were once printed otherwise than they were read', () => {
  test.each([
    ['a keyword behind a typographic quotation mark', 'bentside 1\n„voice \n'],
    ['a carriage return inside a lane', 'voice v\nsystem v G2\n  v | rbar || \n   4 \r | '],
  ])('%s', (_, text) => {
    check(text);
  });
});
