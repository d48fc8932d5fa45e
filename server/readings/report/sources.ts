/** Sources, hands, editors, readings: what the edition rests on. */
import { clauseOf } from '../../../grammar/statements/read';
import { practiceInWords } from '../../practice/inWords';
import type { Practice } from '../../practice/practice';
import { tempoOfArgs } from '../../score/clauses';
import { tempoInWords } from '../../score/clock';
import type { Environment, ReadingDeclaration } from '../../score/environment';
import { practicesOfReading } from '../choices';
import { accidentalReach, tableInWords, tuningInWords } from '../inWords';
import { type ReportSection, tableOf } from './document';

export function sourcesSection({ sources, editors }: Environment): ReportSection {
  const rows = sources.flatMap(({ name, description, hands }) => [
    [name, description],
    ...hands.map((hand) => [`${name}.${hand.layer}`, `${hand.description} (a hand in ${name})`]),
  ]);
  const [main] = sources;
  return {
    heading: 'Sources',
    said:
      main === undefined
        ? []
        : [
            `Where sources differ, the main text has what is typed first at that place; ${main.name} is the first source.`,
          ],
    tables: [
      ...tableOf('Sources and hands', ['siglum', 'source'], rows),
      ...tableOf(
        'Editors',
        ['letters', 'name'],
        [...editors].map(([letters, { name }]) => [letters, name]),
      ),
    ],
  };
}

export function readingsSection(environment: Environment): ReportSection {
  const rows = environment.readings.map((reading) => [
    reading.name,
    reading.description,
    choicesOf(environment, reading),
  ]);
  return {
    heading: 'Readings',
    said: [],
    tables: tableOf('Readings offered, and what each chooses', ['reading', 'described as', 'chooses'], rows),
  };
}

/** What is stated for a reading; what it leaves unsaid is the file's. */
function choicesOf(environment: Environment, reading: ReadingDeclaration): string {
  const { from, takes, at, signs, accidentals, order, name } = reading;
  const tempo = tempoOfArgs(clauseOf(reading, 'tempo')?.args ?? []);
  const tuning = clauseOf(reading, 'tuning');
  return [
    ...(from === undefined ? [] : [`built on ${from}`]),
    ...(takes.length === 0 ? [] : [`takes ${takes.join(', ')}`]),
    ...[...at].map(([place, label]) => `at ${place} ${label}`),
    ...(signs === undefined ? [] : [`signs after ${tableInWords(environment, signs)}`]),
    ...ownPractices(environment, name).map(practiceInWords),
    ...(accidentals === undefined ? [] : [`a written accidental holds ${accidentalReach[accidentals]}`]),
    ...(tempo === undefined ? [] : [`tempo: ${tempoInWords(tempo)}`]),
    ...(tuning === undefined ? [] : [`tuning: ${tuningInWords(environment, name, tuning.args)}`]),
    ...(order === undefined ? [] : [`order ${order.join(' ')}`]),
  ].join('; ');
}

/** Those that the reading states itself: what it is built on, and the file, say the others. */
const ownPractices = (environment: Environment, name: string): readonly Practice[] =>
  practicesOfReading(environment, name).filter(({ distance }) => distance === 0);
