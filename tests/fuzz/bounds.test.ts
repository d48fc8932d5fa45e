/** Scores in which there is far too much of one thing: nothing is thrown, and each thing more takes no longer than those before. */
import { describe, expect, test } from 'vitest';
import { drawingFlavour } from '../../server/engraving/flavour';
import { meiTree } from '../../server/export/mei';
import { MOST_CHOICES } from '../../server/score/environment';
import { analysed, codes, findingOf, scoreOf } from '../helpers/music';
import { check } from './check';

const many = (count: number, text: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => text(index)).join('');

const SYSTEM = 'system dessus G2 meter C\n  dessus | 1 c5 |\n';

describe('a file with too much of one thing', () => {
  test('has no more readings, sources and hands to choose from than 256, and is told where the others begin', () => {
    const one = analysed(`bentside 1\nvoice dessus\n${many(300, (n) => `source S${n} "a copy"\n`)}${SYSTEM}`);
    expect(one.choices).toHaveLength(MOST_CHOICES);
    expect(one.score('S254')).toBeDefined();
    expect(one.score('S255')).toBeUndefined();
    // The first two lines, then a source in each.
    expect(findingOf(one, 'too-many-choices').range.start.line).toBe(3 + 255);
  });

  test('carries a hundred open curves over the end of a system; those begun before them never end', () => {
    const open = `system dessus G2 meter C\n  dessus | 4 ${"c5'u ".repeat(104)}(irregular) |\n`;
    const closing = `system\n  dessus | 4 ${"d5'. ".repeat(101)}(irregular) |\n`;
    const found = codes(analysed(`bentside 1\nvoice dessus\n${open}${closing}`));
    expect(found.filter((code) => code === 'curve-never-ends')).toHaveLength(4);
    expect(found.filter((code) => code === 'curve-end-alone')).toHaveLength(1);
  });

  test('finds nothing wrong with a bar of 150 000 notes', () => {
    const bar = `4 c5 ${'d c '.repeat(75_000)}(irregular) |||`;
    expect(codes(analysed(`bentside 1\nvoice dessus\nsystem dessus G2 meter C\n  dessus | ${bar}\n`))).toEqual([]);
  });

  test('names the first of a thousand readings that are built on one another in a circle', () => {
    const circle = many(1000, (n) => `reading R${n} from R${(n + 1) % 1000}\n`);
    const { message } = findingOf(analysed(`bentside 1\nvoice dessus\n${circle}${SYSTEM}`), 'reading-circle');
    expect(message).toContain('R1, R2, R3');
    expect(message.length).toBeLessThan(200);
  });

  test.each([
    ['sections in an order', `order ${'A '.repeat(150_000)}\nsection A\n${SYSTEM}`],
    ['sections each in the one before', many(5000, (n) => `section s${n}${n > 0 ? ` in s${n - 1}` : ''}\n${SYSTEM}`)],
    ['temperaments each from the one before', many(5000, (n) => `temperament t${n} from t${n + 1}\n  c-g -1/4 sc\n`)],
  ])('reads very many %s', { timeout: 120_000 }, (_, text) => {
    expect(() => check(`bentside 1\nvoice dessus\n${text}`, 100_000)).not.toThrow();
  });
});

/** Kinds of things of which there may be many, each with as many as asked for. */
const KINDS: readonly (readonly [string, (count: number) => string])[] = [
  [
    'changes of signature in a lane',
    (count) => lane(many(count, (n) => `(now key ${n % 2 === 0 ? 'f#' : 'bb'}) 1 c5 | `)),
  ],
  ['voices that nothing declares', (count) => lane('1 c5 |') + many(count, (n) => `  abd${n} | 1 c5 |\n`)],
  ['options of one place', (count) => lane(`<${many(count, (n) => `${n > 0 ? ' ;' : ''} S${n}: 1 c5`)}> |`)],
  ['curves that cross', (count) => lane(`4 ${"c5'u(a) ".repeat(count)}${"d5'.(a) ".repeat(count)}|`)],
  ['readings built on one another', (count) => many(count, (n) => `reading R${n + 1} from R${n}\n`) + lane('1 c5 |')],
];

const lane = (music: string): string => `bentside 1\nvoice dessus\nsystem dessus G2 meter C\n  dessus | ${music}\n`;

/** How many times as long four times as many may take: their square would be sixteen times as long. */
const FOURFOLD = 12;

/** Milliseconds of the processor's time. */
function took(work: () => void): number {
  const { user: before } = process.cpuUsage();
  work();
  return (process.cpuUsage().user - before) / 1000;
}

function expectFourfold(few: number, more: number): void {
  // What takes only a moment cannot be measured.
  if (more > 2000) expect(more).toBeLessThan(few * FOURFOLD);
}

describe('four times as many', () => {
  test.each(KINDS)('%s take little more than four times as long', { timeout: 120_000 }, (_, text) => {
    const read = (count: number): number => took(() => check(text(count), 100_000));
    read(250);
    expectFourfold(read(500), read(2000));
  });

  test('notes, rests and signs of three voices in a bar are made ready to be drawn in little more than four times as long', {
    timeout: 120_000,
  }, () => {
    const drawn = (count: number): number => {
      const voices = ["16 c5 d r e'zz", "16 e4 r f4 e'zz", '16 c4 b3 a r'].map((beat) => many(count, () => `${beat} `));
      const lanes = voices.map((music, voice) => `  v${voice} | ${music}(irregular) |\n`).join('');
      const text = `bentside 1\nstave upper\n${many(3, (voice) => `voice v${voice} upper\n`)}system upper G2\n${lanes}`;
      const { root } = meiTree(scoreOf(analysed(text)), { clefs: 'source', leaveGaps: true });
      return took(() => root && drawingFlavour(root));
    };
    drawn(250);
    expectFourfold(drawn(500), drawn(2000));
  });
});
