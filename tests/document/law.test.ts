/** After any edits a document says what a fresh analysis of its text says. `npm run law` tries many more. */
import { expect, test } from 'vitest';
import { sources } from '../fuzz/check';
import { keepsLaw, scriptOf } from './law';

const SCRIPTS = 40;
const STEPS = 10;

test('a seed makes the same edits again', () => {
  const texts = sources();
  expect([...scriptOf(3, texts, 5)]).toEqual([...scriptOf(3, texts, 5)]);
});

test(`${SCRIPTS * STEPS} edits leave a document that equals a fresh one`, { timeout: 300_000 }, () => {
  const texts = sources();
  let edits = 0;
  for (let seed = 1; seed <= SCRIPTS; seed++) edits += keepsLaw(seed, texts, STEPS);
  expect(edits).toBe(SCRIPTS * STEPS);
});
