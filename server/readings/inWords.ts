/** What a text of a file chooses besides its notes, in the words of the trade. */
import { grouped } from '../../grammar/lists';
import type { Argument } from '../../grammar/tree';
import { heard } from '../practice/alter';
import { practiceInWords } from '../practice/inWords';
import type { AccidentalPractice, Choice } from '../score/choice';
import { tempoInWords } from '../score/clock';
import type { Environment } from '../score/environment';
import { lineage, practicesOfReading, statedTempo, tableOfReading } from './choices';
import { statedTuningOf } from './tunings';

/** How far “a written accidental holds”. */
export const accidentalReach: Readonly<Record<AccidentalPractice, string>> = {
  note: 'for its note and the immediate repetitions of that pitch in its voice',
  group: 'for the notes under its beam',
  bar: 'to the barline, in its octave, for all voices of its stave',
};

/** A sign table by its name; one of the file is said to be its own, for whoever has not the file does not know it. */
export function tableInWords({ tables }: Environment, name: string): string {
  const own = tables.find((table) => table.name === name);
  if (own === undefined) return name;
  return `${name}, as the file defines it${own.from === undefined ? '' : ` from ${own.from}`}`;
}

/** The title of the temperament that a reading has; what is typed where nothing is called so. */
export const tuningInWords = (environment: Environment, reading: string, args: readonly Argument[]): string =>
  statedTuningOf(environment, reading)?.temperament.title ?? argumentsText(args);

/** The arguments of a statement as typed, as far as a report needs them. */
const argumentsText = (args: readonly Argument[]): string =>
  args
    .flatMap((arg) => {
      if (arg.kind === 'name' || arg.kind === 'word' || arg.kind === 'number') return [arg.text];
      if (arg.kind === 'value') return [arg.form.text];
      if (arg.kind === 'ratio') return [`${arg.sign}${arg.n}/${arg.d}`];
      if (arg.kind === 'pair') return [`${arg.first.text}-${arg.second.text}`];
      return arg.kind === 'pitch' ? [arg.spelling.text] : [];
    })
    .join(' ');

/** Of each place what is said of it first: the nearest reading has the last word. */
const nearestOf = (stated: Choice['stated']): Choice['stated'] =>
  [...grouped(stated, ({ place }) => place).values()].flatMap(([nearest]) => nearest ?? []);

/** What a text takes, by which table and practices it plays, in which tempo and tuning: whoever has said so. */
export function choiceInWords(
  environment: Environment,
  { name, labels, stated, accidentals }: Choice,
): readonly string[] {
  const built = lineage(environment, name)
    .slice(1)
    .map((reading) => reading.name);
  const others = labels.filter((label) => label !== name && !built.includes(label));
  const table = tableOfReading(environment, name);
  const tempo = statedTempo(environment, name);
  const tuning = name === 'written' ? undefined : statedTuningOf(environment, name);
  return [
    ...built.map((reading) => `built on ${reading}`),
    ...(others.length === 0 ? [] : [`takes ${others.join(', ')}`]),
    ...nearestOf(stated).map(({ place, label }) => `at ${place} ${label}`),
    table === undefined ? 'signs not played' : `signs after ${tableInWords(environment, table)}`,
    ...heard(practicesOfReading(environment, name)).map(practiceInWords),
    `a written accidental holds ${accidentalReach[accidentals]}`,
    ...(tempo === undefined ? [] : [tempoInWords(tempo)]),
    ...(tuning === undefined ? [] : [tuning.temperament.title]),
  ];
}
