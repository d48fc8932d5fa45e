/** After any edits a document says what a fresh analysis of its text says. `npm run law` tries many more. */
import { expect, test } from 'vitest';
import { Document } from '../../server/document/document';
import { sources } from '../fuzz/check';
import { keepsLaw, scriptOf, updateLawfully } from './law';

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

test('readings that prefer one witness to another draw its barlines, where its bars are empty too', () => {
  const text = `bentside 1
source K "Thornmere Keyboard Book"
source L "a loose copy"
source M "a later copy"
reading early "the loose copy first"
  takes L,M
reading late "the later copy first"
  takes M,L
stave upper
stave lower
voice dessus upper
voice basse lower
system upper G2 lower F4 meter C
  dessus   | 1 c5 | d | e |
  dessus L ||: | :|| |
  dessus M || || 1 f5 | |
  basse    | 1 e3 | f | g |
  basse M  | | | |||
`;
  const barlines = (reading: string): readonly (string | undefined)[] => {
    const [piece] = document.update(text).score(reading)?.pieces ?? [];
    return [piece?.bars[0]?.opening?.shape, ...(piece?.bars ?? []).map(({ closing }) => closing?.shape)];
  };
  const document = new Document('edited.bent');
  for (const typed of [text, text.replace('||:', '|'), text.replace(':||', '|'), text.replace('|| ||', '| ||')])
    updateLawfully(document, typed);
  expect(barlines('written')).toEqual([undefined, '|', '|', '|']);
  expect(barlines('L')).toEqual(['||:', '|', ':||', '|']);
  // A bar of the witness preferred that says nothing leaves the word to the other.
  expect(barlines('early')).toEqual(['||:', '||', ':||', '|||']);
  expect(barlines('late')).toEqual(['||', '||', '|', '|||']);
});
