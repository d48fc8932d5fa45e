/** The tunings of a sheet: in its margin in short, and the strings on which each is laid. */
import { printedNames } from '../../score/pitchNames';
import { type SheetInterval, sheetOf, TUNING_CAUTIONS } from '../../tuning/sheet';
import type { Tuning } from '../../tuning/tuning';
import { type Html, tag, text } from '../html';
import { stringsDrawing } from '../stringsDrawing';
import type { SheetText } from './texts';

/** A tuning and the readings that have it. */
export interface SharedTuning {
  readonly tuning: Tuning;
  readonly readings: readonly string[];
}

export function tuningsOf(texts: readonly SheetText[]): readonly SharedTuning[] {
  const found = new Map<string, SharedTuning & { readonly readings: string[] }>();
  for (const { name, tuning } of texts) {
    const key = `${tuning.temperament.title} ${tuning.pitch}`;
    const known = found.get(key);
    if (known === undefined) found.set(key, { tuning, readings: [name] });
    else known.readings.push(name);
  }
  return [...found.values()];
}

/** Beside the readings: the fork, the temperament, which thirds are pure and which are not to be had. */
export const tuningMargin = (all: readonly SharedTuning[]): Html =>
  tag('aside', { class: 'tuning', 'aria-label': 'Tuning' }, ...all.map(inMargin));

function inMargin({ tuning, readings }: SharedTuning, index: number): Html {
  const sheet = sheetOf(tuning);
  return [
    tag('p', { class: 'fork' }, text(`a4 = ${tuning.pitch} Hz`)),
    tag('p', {}, tag('b', {}, text(sheet.title)), text(` (${readings.join(', ')})`)),
    tag(
      'dl',
      {},
      ...told('Wolf fifths', sheet.fifths.filter(isWolf)),
      ...told('Pure thirds', sheet.majorThirds.filter(isPure)),
      ...told('Rough thirds', sheet.majorThirds.filter(isRough)),
    ),
    tag('p', {}, tag('a', { href: `#tuning-${index + 1}` }, 'How it is laid')),
  ].join('');
}

/** In cents: a fifth that howls; a third as wide as in a circle of pure fifths, less what nobody could tell from it; one that beats no more than can be heard. */
const WOLF = 10;
const ROUGH = 21;
const PURE = 0.5;

const isWolf = ({ width }: SheetInterval): boolean => Math.abs(width) > WOLF;
const isRough = ({ width }: SheetInterval): boolean => width > ROUGH;
const isPure = ({ width }: SheetInterval): boolean => Math.abs(width) < PURE;

const told = (head: string, intervals: readonly SheetInterval[]): readonly Html[] =>
  intervals.length === 0
    ? []
    : [tag('dt', {}, head), tag('dd', {}, text(intervals.map(({ interval }) => printedNames(interval)).join(', ')))];

/** What whoever tunes must know, once for all tunings, and how each is laid by ear. */
export const tuningSections = (all: readonly SharedTuning[]): readonly Html[] => [
  ...(all.length === 0 ? [] : TUNING_CAUTIONS.map((one) => tag('p', { class: 'caution' }, text(one)))),
  ...all.map(({ tuning, readings }, index) => {
    const sheet = sheetOf(tuning);
    const id = `tuning-${index + 1}`;
    return tag(
      'section',
      { class: 'laying', 'aria-labelledby': id },
      tag('h3', { id }, text(`${sheet.title}, a4 = ${tuning.pitch} Hz (${readings.join(', ')})`)),
      stringsDrawing(sheet, sheet.steps, `strings-${index + 1}`),
    );
  }),
];
