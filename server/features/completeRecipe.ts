/** What can be typed in a recipe, told by what stands before the caret. */
import { recipeForms } from '../../grammar/vocabulary/statements';
import { KINDS, type Proposal } from './proposal';

/** A word, and the form that it is or begins. */
type Word = readonly [label: string, form: keyof typeof recipeForms];

const asForms = (...forms: readonly string[]): readonly Word[] => forms.map((form) => [form, form]);

const share: Word = ['for', 'for'];
const speed: Word = ['at', 'a second'];

/** Contexts in the order in which they are tried: how the recipe ends before the word that is typed, and what can follow. */
const contexts: readonly (readonly [RegExp, readonly Word[]])[] = [
  [/^\s*$/, asForms('on beat', 'before beat', 'extends', 'unresolved')],
  [/,\s*$/, asForms('hold', 'rest', 'spread')],
  [/\bon\s+$/, [['beat', 'on beat']]],
  [/\bbefore\s+$/, [['beat', 'before beat']]],
  [/\bspread\s+$/, asForms('up', 'down')],
  [/\bspread\s+(?:up|down)\s+$/, asForms('filled')],
  [/\)\s*$/, asForms('repeated')],
  [/\bat\s+[\d.]+\s+$/, asForms('a second', 'a pulse')],
  [
    /\bat\s+[\d.]+\s+a\s+$/,
    [
      ['second', 'a second'],
      ['pulse', 'a pulse'],
    ],
  ],
  [/\bfor\s+\d+\/\d+\s+$/, [speed]],
  [/\b(?:second|pulse)\s+$/, [share]],
  [/\bleaned\s+$/, [share, speed]],
  [/(?:^|[\s(])[+-]?\d[#bn]*\s+$|\brepeated\s+$/, [...asForms('leaned'), share, speed]],
];

/** @param before the row of a table up to the word that is typed */
export function completeRecipe(before: string, replaces: number): Proposal[] {
  const recipe = before.replace(/"[^"]*"/g, '""').replace(/^[^:]*:/, '');
  const words = contexts.find(([ending]) => ending.test(recipe))?.[1] ?? [];
  return words.map(([label, form]) => ({
    label,
    kind: KINDS.Keyword,
    replaces,
    documentation: recipeForms[form],
  }));
}
