/** However a text is spoilt, it is read, judged and given back; nothing throws. `npm run fuzz` tries many more. */
import { expect, test } from 'vitest';
import { check, checkExports, sources } from './check';
import { randomFrom, textOf } from './edits';

const EDITS = 3000;

test('a seed makes the same text again', () => {
  const texts = sources();
  expect(texts.length).toBeGreaterThan(100);
  expect(textOf(7, texts)).toBe(textOf(7, texts));
  const made = Array.from({ length: 100 }, (_, seed) => textOf(seed, texts));
  expect(new Set(made).size).toBeGreaterThan(95);
});

test('its numbers are spread evenly', () => {
  const random = randomFrom(1);
  const counts = Array.from({ length: 10 }, () => 0);
  for (let i = 0; i < 10_000; i++) {
    const number = random(10);
    counts[number] = (counts[number] ?? 0) + 1;
  }
  // Five standard deviations of a fair draw: the square root of 10,000 × 1/10 × 9/10 is 30.
  for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(150);
});

test(`${EDITS} spoilt texts are read and judged`, { timeout: 300_000 }, () => {
  const texts = sources();
  for (const text of texts) check(text, 5000);
  // The passes of every day are the same, so that a failure is the change's and not the day's.
  for (let seed = 1; seed <= EDITS; seed++) {
    const text = textOf(seed, texts);
    try {
      check(text);
    } catch (error) {
      throw new Error(`seed ${seed}: ${error instanceof Error ? error.stack : error}\n${JSON.stringify(text)}`);
    }
  }
});

test('a head after which no music comes is no hindrance to any export', () => {
  checkExports(`bentside 1
title  "Air"
stave  upper
voice  dessus upper

page "1r"
system  upper G2  meter C
  dessus | 1 c5 |
system  upper C1  key bb
`);
});
