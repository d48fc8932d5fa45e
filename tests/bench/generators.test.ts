/** What the benches measure is what they say it is; they themselves run by hand (`npm run bench`). */
import { describe, expect, it } from 'vitest';
import { parseLane } from '../../grammar/lanes/lane';
import { parseFile } from '../../grammar/parse';
import type { Item } from '../../grammar/tree';
import { proof } from '../../server/library';
import { generateScore } from './generateScore';
import { layouts, modifiersIn, typedOf } from './keystrokes';
import { generateStylesheet, openStylesheet, proofStylesheet } from './stylesheet';

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
  const typed = (text: string): string => typedOf(parseLane('lane', text, [0]));

  it('are those of its signs with one space between, comments left out', () => {
    expect(typed(' 4 c5   d | // high\n')).toBe('4 c5 d |');
  });

  it('need Shift or AltGr where the layout has them', () => {
    const needed = layouts.map((layout) => modifiersIn(" 4. c#5'zz | ||:", layout));
    // US: # and the run of bars with their colon; German: ' and the bars, then the colon; French: "4." and 5, # and bars.
    expect(needed).toEqual([3, 4, 5]);
  });
});
