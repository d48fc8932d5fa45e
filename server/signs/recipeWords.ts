/** What a recipe does, in words. */
import { time } from '../../grammar/time';
import type { Recipe, RecipePhrase, RecipeStep } from '../../grammar/tree';
import { accidentalNames } from '../../grammar/vocabulary/pitches';
import { howMany, valuesInWords } from '../score/amounts';
import { isMain } from './atoms';

/**
 * "on the beat: the note, the note below, and the note again, held": every stroke is named once, and a note that stands at
 * the end is the last stroke.
 */
export function recipeInWords({ start, unresolved, phrases }: Recipe): string {
  if (unresolved !== undefined) return `how it is played is not known: ${unresolved}`;
  const [early, own] = start === 'before beat' ? partedAtBeat(phrases) : [[], phrases];
  const parts = [
    ...(early.length === 0 ? [] : [`before the beat: ${phrasesInWords(early)}`]),
    ...(own.length === 0 ? [] : [`on the beat: ${phrasesInWords(own)}`]),
  ];
  return parts.join('; ');
}

/** What comes before the beat, which is all before the written note is first struck, and what begins with it. */
function partedAtBeat(phrases: readonly RecipePhrase[]): readonly [readonly RecipePhrase[], readonly RecipePhrase[]] {
  const at = phrases.findIndex((phrase) => phrase.kind !== 'steps' || phrase.repeated || phrase.steps.some(isMain));
  const phrase = phrases[at];
  if (phrase === undefined) return [phrases, []];
  const struck = phrase.repeated ? 0 : Math.max(0, phrase.steps.findIndex(isMain));
  const early = struck === 0 ? [] : [{ ...phrase, steps: phrase.steps.slice(0, struck) }];
  return [
    [...phrases.slice(0, at), ...early],
    [{ ...phrase, steps: phrase.steps.slice(struck) }, ...phrases.slice(at + 1)],
  ];
}

function phrasesInWords(phrases: readonly RecipePhrase[]): string {
  const said = phrases.flatMap((phrase, index) => {
    if (isEndOf(phrases[index - 1], phrase)) return [];
    const next = phrases[index + 1];
    const again = phrases.slice(0, index).some(({ kind, steps }) => kind === 'hold' || steps.some(isMain));
    return [phraseInWords(phrase, isEndOf(phrase, next) ? next : undefined, again)];
  });
  return said.join(', then ');
}

/** Whether a `hold` is no stroke of its own: the notes before it are held already, or the last of them is the one that stands. */
function isEndOf(phrase: RecipePhrase | undefined, next: RecipePhrase | undefined): next is RecipePhrase {
  if (phrase === undefined || next?.kind !== 'hold') return false;
  return phrase.kind === 'spread' || (phrase.repeated ? phrase.steps.some(isMain) : isMain(phrase.steps.at(-1)));
}

/** @param again whether the written note was struck before */
function phraseInWords(phrase: RecipePhrase, hold: RecipePhrase | undefined, again: boolean): string {
  const { kind, spread, repeated, leaned } = phrase;
  const long = shareInWords(phrase);
  if (kind === 'hold') return `the note${again ? ' again' : ''}, held${long}`;
  if (kind === 'rest') return `silence${long}`;
  if (spread !== undefined) return spreadInWords(spread);
  const notes = `${stepsInWords(phrase, hold !== undefined, again)}${speedInWords(phrase)}${leaned ? ', leaned on' : ''}${long}`;
  if (hold === undefined) return notes;
  return repeated ? `${notes}, coming to rest on the note${shareInWords(hold)}` : `${notes}, held${shareInWords(hold)}`;
}

function shareInWords({ share }: RecipePhrase): string {
  if (share === undefined) return '';
  return share.n === share.d ? ' to the end' : ` for ${share.n}/${share.d} of the value`;
}

function spreadInWords({ direction, filled }: NonNullable<RecipePhrase['spread']>): string {
  const from = direction === 'up' ? 'the lowest up' : 'the highest down';
  return `the notes of the chord one after another from ${from}, each held${filled ? ', with the notes between them in passing' : ''}`;
}

/** @param held whether the last note stands, which therefore is told by itself */
function stepsInWords({ steps, repeated }: RecipePhrase, held: boolean, again: boolean): string {
  const words = steps.map(stepInWords);
  if (repeated) return words.length === 2 ? `${words.join(' and ')} by turns` : `${words.join(', ')} over and over`;
  const isAgain = words.length > 1 && isMain(steps.at(-1)) && (again || steps.slice(0, -1).some(isMain));
  const last = `${words.at(-1)}${isAgain ? ' again' : ''}`;
  const told = held || isAgain ? [...inRuns(words.slice(0, -1)), last] : inRuns(words);
  return enumerated(told, held || isAgain ? ', then ' : ' and ');
}

/** "a, b, and c"; @param between two alone */
function enumerated(told: readonly string[], between: string): string {
  const last = told.at(-1) ?? '';
  if (told.length <= 2) return told.join(between);
  return `${told.slice(0, -1).join(', ')}, ${last.includes(' and ') ? 'then' : 'and'} ${last}`;
}

/** Two notes that come several times one after the other are told together: "the note and the note above three times". */
function inRuns(words: readonly string[]): string[] {
  const [first, second] = words;
  if (first === undefined || second === undefined) return [...words];
  let times = 1;
  while (words[2 * times] === first && words[2 * times + 1] === second) times++;
  if (times === 1) return [first, ...inRuns(words.slice(1))];
  return [
    `${first} and ${second} ${times === 2 ? 'twice' : `${TIMES[times] ?? times} times`}`,
    ...inRuns(words.slice(2 * times)),
  ];
}

const TIMES: Readonly<Record<number, string>> = { 3: 'three', 4: 'four', 5: 'five', 6: 'six' };

const RATES = { second: 'a second', pulse: 'a pulse' } as const;

function speedInWords({ speed }: RecipePhrase): string {
  if (speed === undefined) return '';
  return speed.kind === 'value'
    ? ` in ${valuesInWords({ base: time(1, speed.number), dots: 0 })}`
    : `, ${howMany(speed.number, 'note', 'notes')} ${RATES[speed.kind]}`;
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

function stepInWords({ step, accidental }: RecipeStep): string {
  const far = INTERVALS[Math.abs(step)] ?? `the note ${Math.abs(step)} steps`;
  const way = step === 0 ? '' : step > 0 ? ' above' : ' below';
  return `${far}${way}${accidental === undefined ? '' : ` (${accidentalNames[accidental]})`}`;
}
