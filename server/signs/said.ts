/** What stands in round brackets after a sign: where it is drawn, from which note it begins, another reading. */
import type { Recipe, RecipePhrase } from '../../grammar/tree';
import { isMain, partsOf } from './atoms';
import type { BorneSign } from './bearing';
import { keyOf, type PlayedRow, type PlayedTable } from './rows';

/** Where a sign is drawn; only `after` tells in how it is played. */
const PLACES = ['above', 'below', 'before', 'after'];
/** From which note it begins. */
export const FROM: readonly string[] = ['from main', 'from upper'];

const phrasesIn = (parameters: readonly string[]): string[] =>
  parameters.flatMap((word, i) => {
    if (word === 'from') return [`from ${parameters[i + 1] ?? ''}`];
    return parameters[i - 1] === 'from' ? [] : [word];
  });

/** Words that say nothing of this sign, and those that would. */
export function unknownWords(
  sign: BorneSign,
  row: PlayedRow,
  table: PlayedTable,
): { readonly words: readonly string[]; readonly known: readonly string[] } {
  if (sign.parameters.length === 0) return { words: [], known: [] };
  const known = [...PLACES, ...FROM, ...row.rivals.map(({ name }) => name)];
  // In the table of another reading it may choose; here it says nothing, but it is no slip.
  const elsewhere = table.elsewhere.get(keyOf(row.shapes));
  const words = phrasesIn(sign.parameters).filter(
    (word) => !known.includes(word) && !table.names.has(word) && elsewhere?.has(word) !== true,
  );
  return { words, known };
}

/** Whether more stands in round brackets than where the sign is drawn. */
export const saysHow = ({ parameters }: BorneSign): boolean => parameters.some((word) => !PLACES.includes(word));

/** Whether a word in round brackets says how the sign is played: it names the row by which it is, or a rival, or a first note. */
export const isSaidBy = ({ parameters }: BorneSign, row: PlayedRow): boolean => {
  const words = [...FROM, ...row.names, ...row.rivals.map(({ name }) => name)];
  return phrasesIn(parameters).some((word) => words.includes(word));
};

/** The recipe by which a sign is played here: the row's, or that of the reading chosen, begun as its brackets say. */
export function recipeSaid(signs: readonly BorneSign[], row: PlayedRow): Recipe {
  if (signs.every(({ parameters }) => parameters.length === 0)) return row.recipe;
  const said = signs.flatMap(({ parameters }) => phrasesIn(parameters));
  const rival = row.rivals.find(({ name }) => said.includes(name));
  const recipe = rival?.recipe ?? row.recipe;
  if (said.includes('from main')) return fromMain(recipe);
  if (said.includes('from upper')) return fromUpper(recipe);
  return recipe;
}

/** Whether the sign is drawn after its note. */
export const isDrawnAfter = (signs: readonly BorneSign[]): boolean =>
  signs.some(({ parameters }) => parameters.includes('after'));

const begun = (recipe: Recipe, isFirst: (step: RecipePhrase['steps'][number]) => boolean): Recipe => {
  const { cycle, tail } = partsOf(recipe);
  const first = cycle?.steps.findIndex(isFirst) ?? -1;
  if (cycle === undefined || first < 0) return recipe;
  const steps = [...cycle.steps.slice(first), ...cycle.steps.slice(0, first)];
  const closes = tail.length > 0 || isMain(steps.at(-1)) ? tail : [mainNote(cycle)];
  return { ...recipe, phrases: [{ ...cycle, steps }, ...closes] };
};

const mainNote = ({ pos, len }: RecipePhrase): RecipePhrase => ({
  kind: 'steps',
  steps: [{ step: 0, pos, len }],
  repeated: false,
  pos,
  len,
});

function fromMain(recipe: Recipe): Recipe {
  const { cycle } = partsOf(recipe);
  if (cycle !== undefined) return begun(recipe, isMain);
  const [first] = recipe.phrases;
  if (first === undefined || first.kind !== 'steps' || isMain(first.steps[0])) return recipe;
  return { ...recipe, phrases: [mainNote(first), ...recipe.phrases] };
}

const fromUpper = (recipe: Recipe): Recipe => begun(recipe, ({ step }) => step > 0);
