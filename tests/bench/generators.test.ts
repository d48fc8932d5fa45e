/** What the benches measure is what they say it is; they themselves run by hand (`npm run bench`). */
import { describe, expect, it } from 'vitest';
import { parseFile } from '../../grammar/parse';
import type { Item } from '../../grammar/tree';
import { proof } from '../../server/library';
import { HEAD } from '../helpers/music';
import { generateScore } from './generateScore';
import { layouts, modifiersIn } from './keystrokes';
import { generateStylesheet, openStylesheet, proofStylesheet } from './stylesheet';
import { Writer } from './writer';

const typedEvents = (items: readonly Item[]): number =>
  items.reduce((count, item) => {
    if (item.kind === 'event') return count + 1;
    if (item.kind === 'span') return count + typedEvents(item.items);
    return item.kind === 'options' ? count + typedEvents(item.options.flatMap((option) => option.items)) : count;
  }, 0);

describe('a generated score', () => {
  const text = generateScore(20_000);

  it('is as long as wished and the same each time', () => {
    expect(text.length).toBeGreaterThanOrEqual(20_000);
    expect(text.length).toBeLessThan(21_000);
    expect(generateScore(20_000)).toBe(text);
    expect(generateScore(20_000, 2)).not.toBe(text);
  });

  it('has no errors', () => {
    const errors = proof(text).findings.filter(({ level }) => level === 'error');
    expect(errors.map(({ message }) => message)).toEqual([]);
  });

  it('has an event in about seven characters', () => {
    const lanes = parseFile(text).blocks.flatMap((block) => block.lanes.flatMap(({ tree }) => tree.segments));
    const events = lanes.reduce((count, { items }) => count + typedEvents(items), 0);
    expect(text.length / events).toBeGreaterThan(6.5);
    expect(text.length / events).toBeLessThan(7.5);
  });
});

describe('a generated stylesheet', () => {
  it('is as long as wished, and its linter finds little in it', () => {
    const text = generateStylesheet(20_000);
    expect(text.length).toBeGreaterThanOrEqual(20_000);
    expect(proofStylesheet(openStylesheet(text))).toBeLessThan(text.split('}').length / 2);
  });
});

describe('the keys of a lane', () => {
  const head = `${HEAD}system upper G2 lower F4 meter C\n`;
  /** The keys of the last lane of a passage: `⇥` takes what is offered, `⌫` takes away, `⏎` ends the lane. */
  function keysOf(passage: string): string {
    const text = `${head}${passage}\n`;
    const block = parseFile(text).blocks.at(-1);
    const lane = block?.lanes.at(-1);
    if (block === undefined || lane === undefined) throw new Error('there is no lane');
    const signs: Readonly<Record<string, string>> = { '\t': '⇥', '\b': '⌫', '\n': '⏎' };
    return new Writer(text).keysFor(block, lane).replace(/[\t\b\n]/g, (key) => signs[key] ?? '');
  }

  it('are those of its signs with one space between, comments left out', () => {
    expect(keysOf('  dessus | 4 c5   d // high')).toBe('4 c5 d⏎');
  });

  it('are without the barlines of full bars, which close themselves', () => {
    expect(keysOf('  dessus | 4 c5 d e f | 1 g |')).toBe('4 c5 d e f 1 g ⏎');
    expect(keysOf('  dessus | 1 c5 | 1 d ||')).toBe('1 c5 1 d ||⏎');
    expect(keysOf('  dessus | 1 c5 :||\n  taille | 1 e4 :||')).toBe('1 e4 ⏎');
  });

  it('are more where a barline comes that is not wanted', () => {
    expect(keysOf('  dessus | 1 c5 8 d |')).toBe('1 c5 ⌫⌫8 ⌫⌫d |⏎');
  });

  it('are fewer where a word is offered, and a custos stands before the barline', () => {
    expect(keysOf('  dessus | 1 c5 (custos d5) |')).toBe('1 c5 (c⇥d5) ⏎');
  });

  it('leave out what the next system brings', () => {
    expect(keysOf(`  dessus | (down) 1 c4 |\nsystem\n  dessus | (down) 1 d4 |`)).toBe('⇥1 d4 ⏎');
    expect(keysOf(`  dessus | (down) 1 c4 |\nsystem\n  dessus | 1 d5 |`)).toBe('1 d5 ⏎');
  });

  it('need Shift or AltGr where the layout has them', () => {
    const needed = layouts.map((layout) => modifiersIn(" 4. c#5'zz | ||:", layout));
    // US: # and the run of bars with their colon; German: ' and the bars, then the colon; French: "4." and 5, # and bars.
    expect(needed).toEqual([3, 4, 5]);
  });
});
