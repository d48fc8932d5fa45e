/** A tuner's sheet as plain text. */
import { KEY_FIGURES } from '../tuning/keyColours';
import type { SheetStep, TuningSheet } from '../tuning/sheet';

/** The tuning, what it consists of, how it is laid, and what to beware of. */
export const sheetText = (sheet: TuningSheet): string =>
  [
    heading(sheet),
    ...retuning(sheet),
    ['Laying it by ear', '', ...stepLines(sheet.steps), '', OCTAVES],
    ['Notes', '', ...notes(sheet)],
    ['Fifths', '', ...fifths(sheet)],
    ['Keys', '', ...keys(sheet)],
    ['Beware', '', ...sheet.cautions],
  ]
    .map((part) => `${part.join('\n')}\n`)
    .join('\n');

const OCTAVES = 'Then the octaves from these notes, downwards and upwards, without beats.';

const heading = ({ title, temperament, pitch, note }: TuningSheet): string[] => [
  `${title.startsWith(temperament) ? title : `${title} (${temperament})`}, a4 = ${pitch} Hz`,
  ...(note === '' ? [] : [note]),
];

/** "pure", or "2.81 beats a second, wide". */
const beatsInWords = ({ beats, direction }: Pick<SheetStep, 'beats' | 'direction'>): string =>
  direction === 'pure' ? 'pure' : `${beats.toFixed(2)} beats a second, ${direction}`;

/** Steps that tune are counted, those that prove are not. */
function stepLines(steps: readonly SheetStep[]): string[] {
  let count = 0;
  return steps.map((step) => {
    const what = `${step.interval.padEnd(9)} ${step.kind.padEnd(11)} ${beatsInWords(step)}`;
    if (step.tunes === null) return `      proof    ${what}`;
    return `${`${++count}`.padStart(4)}  ${step.tunes.padEnd(7)}  ${what}`;
  });
}

function retuning({ retuning: found }: TuningSheet): string[][] {
  if (found === null) return [];
  const from = `${found.from}, a4 = ${found.fromPitch} Hz`;
  if (found.notes.length === 0) return [[`From ${from}: nothing moves.`]];
  const moves = found.notes.map(({ note, was, cents }) => {
    const name = note === was ? note : `${was} becomes ${note}`;
    return `  ${name.padEnd(14)} ${Math.abs(cents).toFixed(1).padStart(6)} cents ${cents < 0 ? 'down' : 'up'}`;
  });
  return [[`From ${from}`, '', ...moves, '', ...stepLines(found.steps)]];
}

const column = (value: number, places: number, width: number): string => value.toFixed(places).padStart(width);
const signed = (value: number, places: number, width: number): string =>
  `${value > 0 ? '+' : ''}${value.toFixed(places)}`.padStart(width);

const notes = (sheet: TuningSheet): string[] => [
  '        cents from c  cents from a  from equal      hertz',
  ...sheet.notes.map(
    ({ note, fromC, fromA, offset, frequency }) =>
      `  ${note.padEnd(4)}${column(fromC, 3, 14)}${column(fromA, 3, 14)}${signed(offset, 2, 12)}${column(frequency, 3, 11)}`,
  ),
];

const fifths = (sheet: TuningSheet): string[] =>
  sheet.fifths.map(
    ({ interval, tempering, width }) => `  ${interval.padEnd(8)}${tempering.padEnd(24)}${signed(width, 3, 9)} cents`,
  );

const keys = (sheet: TuningSheet): string[] => [
  KEY_FIGURES,
  '',
  '                 third   fifth   unrest',
  ...sheet.keys.map(
    ({ tonic, mode, third, fifth, unrest, word }) =>
      `  ${`${tonic} ${mode}`.padEnd(12)}${signed(third, 2, 8)}${signed(fifth, 2, 8)}${column(unrest, 2, 9)}  ${word}`,
  ),
];
