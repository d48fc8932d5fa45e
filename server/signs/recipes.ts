/** Recipes from their text, as a table has it after the colon of a row. */
import type { Problem } from '../../grammar/findings/finding';
import { lex } from '../../grammar/statements/lexer';
import { readRecipe } from '../../grammar/statements/recipe';
import type { Recipe } from '../../grammar/tree';

/** A recipe and what is wrong with it: of a built-in table nothing, which a test makes sure of. */
export interface ReadRecipe {
  readonly recipe: Recipe;
  readonly problems: readonly Problem[];
}

const read = new Map<string, ReadRecipe>();

/** The recipe of a text such as `on beat, 0 -1 0, hold`. Each text is read once. */
export function recipeOf(text: string): ReadRecipe {
  const known = read.get(text);
  if (known !== undefined) return known;
  const { tokens, problems } = lex(text);
  const colon = { kind: ':', text: ':', pos: 0, len: 0, line: 0 } as const;
  const recipe = readRecipe(
    tokens,
    colon,
    (code, { pos, len }, slots) => problems.push({ code, slots, pos, len }),
    () => {},
  );
  const made = { recipe, problems };
  read.set(text, made);
  return made;
}
