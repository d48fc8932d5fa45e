/** What the command line says of the making of a score. */
import { foundIn, type MadeFile, type MadeReading, make as makeContents, type Wish } from '../export/making';
import { pitchOf, tuningByWords } from '../readings/tunings';
import { howMany } from '../score/amounts';
import { tableInForce } from '../signs/rows';
import { builtInTables } from '../signs/tables';
import type { Project } from '../workspace/project';
import { didYouMean } from './options';
import { findingLine, shown } from './print';
import { noTemperament } from './temperaments';

export interface Made {
  readonly files: readonly MadeFile[];
  /** What the user is to be told, as lines. */
  readonly says: string;
  /** Whether all that was wished for was made. */
  readonly whole: boolean;
}

const nothing = (says: string): Made => ({ files: [], says, whole: false });

export function make(project: Project, wish: Wish): Made {
  const unknown = unknownTable(project, wish) ?? unknownTuning(project, wish);
  if (unknown !== undefined) return nothing(unknown);
  const made = makeContents(project, wish);
  const file = shown(project.file);
  if (made.kind === 'unknown reading') {
    const { wished, choices } = made;
    const others = `${choices.join(', ')}.${didYouMean(wished, choices)}`;
    return nothing(`${file}: it has no reading or witness “${shown(wished)}”, but ${others}\n`);
  }
  if (made.kind === 'unread')
    return nothing(`${findingLine(made.unread)}${file}: not exported, for it cannot be read\n`);
  if (made.kind === 'faulty') {
    const count = howMany(made.errors.length, 'error', 'errors');
    const why = `not exported, because of ${count}; --leave-gaps exports what is sound`;
    return nothing(`${made.errors.map(findingLine).join('')}${file}: ${why}\n`);
  }
  return {
    files: made.readings.flatMap(({ files }) => files),
    says: foundIn(made.readings).map(findingLine).join('') + refusalsOf(file, made.readings),
    whole: made.readings.every(({ files }) => files.length > 0),
  };
}

/** That a score has no table of the name wished for, and which it has. */
function unknownTable({ file, environment }: Project, { options: { table } }: Wish): string | undefined {
  if (table === undefined || tableInForce(table, environment) !== undefined) return undefined;
  const known = [...environment.tables.map(({ name }) => name), ...builtInTables];
  return `${shown(file)}: there is no sign table “${shown(table)}”, but ${known.join(', ')}.${didYouMean(table, known)}\n`;
}

/** That the words wished for state no tuning, neither a known one nor one of the score's own. */
function unknownTuning({ file, environment }: Project, { options: { tuning } }: Wish): string | undefined {
  if (tuning === undefined || tuningByWords(environment, tuning, pitchOf(environment)) !== undefined) return undefined;
  return `${shown(file)}: ${noTemperament(tuning, environment)}\n`;
}

const refusalsOf = (file: string, readings: readonly MadeReading[]): string =>
  readings
    .filter(({ files }) => files.length === 0)
    .map(({ reading }) => `${file}: the reading ${reading} was not exported\n`)
    .join('');
