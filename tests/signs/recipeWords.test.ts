/** Recipes read aloud: what a player hears named is what is struck. */
import { describe, expect, it } from 'vitest';
import { recipeOf } from '../../server/signs/recipes';
import { recipeInWords } from '../../server/signs/recipeWords';
import { signTables } from '../../server/signs/tables';

const inWords = (recipe: string): string => recipeInWords(recipeOf(recipe).recipe);

/** How many strokes the words name, each "the note …" and "the third …" one, pairs as often as they are said to come. */
function strokesNamed(words: string): number {
  const each = (text: string): number => text.match(/\bthe (?:note|third)\b/g)?.length ?? 0;
  const times = { twice: 2, 'three times': 3 };
  const pairs = [...words.matchAll(/the note(?: above| below)? and the note(?: above| below)? (twice|three times)/g)];
  return pairs.reduce((sum, [text, often]) => sum + (times[often as keyof typeof times] - 1) * each(text), each(words));
}

/** The strokes of a recipe that repeats nothing: its steps, and the note that stands if the step before it is another. */
function strokesIn(recipe: string): number {
  const { phrases } = recipeOf(recipe).recipe;
  const heights = phrases.flatMap(({ kind, steps }) => (kind === 'hold' ? [0] : steps.map(({ step }) => step)));
  return heights.filter((height, index) => height !== heights[index - 1]).length;
}

describe('a recipe in words', () => {
  it.each([
    // The pincé of one stroke and of two (Couperin 1713, Rameau 1724, from memory).
    ['on beat, 0 -1 0, hold', 'on the beat: the note, the note below, and the note again, held'],
    ['on beat, 0 -1 0 -1 0, hold', 'on the beat: the note and the note below twice, then the note again, held'],
    // The turn.
    ['on beat, +1 0 -1 0', 'on the beat: the note above, the note, the note below, and the note again'],
    // Santa María's redoble, 1565, as reprinted by Brenet: e d e f sharp e f sharp e f sharp, then e.
    [
      'on beat, 0 -1 0 +1 0 +1 0 +1, hold',
      'on the beat: the note, the note below, then the note and the note above three times, then the note again, held',
    ],
    // Trills: with a stop, with a suffix, from the note below.
    ['on beat, (+1 0) repeated, hold', 'on the beat: the note above and the note by turns, coming to rest on the note'],
    [
      'on beat, (+1 0) repeated, -1 0',
      'on the beat: the note above and the note by turns, then the note below, then the note again',
    ],
    // What comes before the beat is told apart from what is on it.
    [
      'before beat, -2 -1 at 32, 0',
      'before the beat: the third below and the note below in demisemiquavers; on the beat: the note',
    ],
    ['on beat, spread up, hold', 'on the beat: the notes of the chord one after another from the lowest up, each held'],
    ['on beat, 0 for 1/2, rest', 'on the beat: the note for 1/2 of the value, then silence'],
    ['on beat, hold, +1', 'on the beat: the note, held, then the note above'],
  ])('%s', (recipe, words) => expect(inWords(recipe)).toBe(words));

  const plain = signTables
    .flatMap(({ rows }) => rows.flatMap((row) => [row, ...(row.rivals ?? [])]))
    .map(({ recipe }) => recipe)
    .filter((recipe) => !/unresolved|repeated|spread/.test(recipe));

  it.each([...new Set(plain)])('names each stroke of %s once', (recipe) => {
    expect(strokesNamed(inWords(recipe))).toBe(strokesIn(recipe));
  });
});
