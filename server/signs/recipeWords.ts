/** What a recipe does, in words. */

import type { Recipe, RecipePhrase, RecipeStep } from '../../grammar/tree';
import { howMany } from '../score/amounts';

/** "on the beat: the note above and the note by turns, then the note held". */
export function recipeInWords({ start, unresolved, phrases }: Recipe): string {
  if (unresolved !== undefined) return `it is not known how: ${unresolved}`;
  const when = start === 'before beat' ? 'before the beat: ' : 'on the beat: ';
  return `${when}${phrases.map(phraseInWords).join(', then ')}`;
}

function phraseInWords(phrase: RecipePhrase): string {
  const { kind, spread, share, leaned } = phrase;
  const long = share === undefined || isWhole(share) ? '' : ` for ${share.n}/${share.d} of its value`;
  if (kind === 'hold') return `the note held${long}`;
  if (kind === 'rest') return `silence${long}`;
  if (spread !== undefined) return spreadInWords(spread);
  return `${stepsInWords(phrase)}${speedInWords(phrase)}${leaned ? ', leaned on' : ''}${long}`;
}

const isWhole = ({ n, d }: { readonly n: number; readonly d: number }): boolean => n === d;

function spreadInWords({ direction, filled }: NonNullable<RecipePhrase['spread']>): string {
  const from = direction === 'up' ? 'the lowest up' : 'the highest down';
  return `the notes of the chord one after another from ${from}, each held${filled ? ', with the notes between them in passing' : ''}`;
}

function stepsInWords({ steps, repeated }: RecipePhrase): string {
  const words = steps.map(stepInWords);
  if (!repeated) return words.join(', ');
  return words.length === 2 ? `${words.join(' and ')} by turns` : `${words.join(', ')} over and over`;
}

const SPEEDS = { second: 'a second', pulse: 'a pulse' } as const;

function speedInWords({ speed }: RecipePhrase): string {
  if (speed === undefined) return '';
  return speed.kind === 'value'
    ? ` in values of ${speed.number}`
    : `, ${howMany(speed.number, 'note', 'notes')} ${SPEEDS[speed.kind]}`;
}

/** By how many steps it lies away. */
const INTERVALS = [
  'the note',
  'the note',
  'the third',
  'the fourth',
  'the fifth',
  'the sixth',
  'the seventh',
  'the octave',
];

const ACCIDENTALS = { '#': 'sharp', '##': 'double sharp', b: 'flat', bb: 'double flat', n: 'natural' } as const;

function stepInWords({ step, accidental }: RecipeStep): string {
  const far = INTERVALS[Math.abs(step)] ?? `the note ${Math.abs(step)} steps`;
  const way = step === 0 ? '' : step > 0 ? ' above' : ' below';
  return `${far}${way}${accidental === undefined ? '' : ` (${ACCIDENTALS[accidental]})`}`;
}
