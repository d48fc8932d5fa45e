/** How the instrument is tuned for a reading. */
import { parseStatement } from '../../grammar/statements/parser';
import { clauseOf, firstOf } from '../../grammar/statements/read';
import type { Argument } from '../../grammar/tree';
import { dividedKeys } from '../instrument/instrument';
import type { Environment } from '../score/environment';
import { EQUAL } from '../tuning/schemes';
import { USUAL_PITCH } from '../tuning/standards';
import { dividedBeyond, statedTuning, temperamentOfArgs } from '../tuning/stated';
import type { Tuning } from '../tuning/tuning';
import { lineage } from './choices';

/** What a reading says of its tuning, or else the nearest on which it is built, or the file; `written` has that of the file. */
function tuningArgs(environment: Environment, name: string): readonly Argument[] | undefined {
  for (const reading of lineage(environment, name)) {
    const clause = clauseOf(reading, 'tuning');
    if (clause !== undefined) return clause.args;
  }
  return statedTuning(environment);
}

/** The tuning that is stated for a reading; undefined if nothing is, or no temperament is called so. */
export function statedTuningOf(
  environment: Environment,
  name: string,
  pitch = pitchOf(environment),
): Tuning | undefined {
  const args = tuningArgs(environment, name);
  return args && tuningOfArgs(environment, args, pitch);
}

function tuningOfArgs(environment: Environment, args: readonly Argument[], pitch: number): Tuning | undefined {
  const temperament = temperamentOfArgs(environment, args, pitch);
  return temperament && { temperament, pitch, more: dividedBeyond(dividedKeys(environment), temperament) };
}

/** The temperaments that the file defines, or has from its includes. */
export const ownTemperaments = ({ statements }: Environment): readonly string[] =>
  statements.flatMap(({ statement }) =>
    statement.keyword === 'temperament' ? (firstOf(statement.args, 'name')?.text ?? []) : [],
  );

/** The tuning that words would state after `tuning`; undefined if they are none, or no temperament is called so. */
export function tuningByWords(environment: Environment, words: string, hertz: number): Tuning | undefined {
  const { statement, problems } = parseStatement(`tuning ${words}`, []);
  return problems.length > 0 ? undefined : tuningOfArgs(environment, statement.args, hertz);
}

/** How the instrument is tuned for a reading: as words wish, where they state a tuning, or else as the reading says. */
export function tuningWished(
  environment: Environment,
  name: string,
  words: string | undefined,
): { readonly tuning: Tuning; readonly isUnknown: boolean } {
  const own = tuningOf(environment, name);
  const wished = words === undefined ? own : tuningByWords(environment, words, own.pitch);
  return { tuning: wished ?? own, isUnknown: wished === undefined };
}

/** Whether a tuning is stated that no temperament bears the name of. */
export const isUnknownTuning = (environment: Environment, name: string): boolean =>
  tuningArgs(environment, name) !== undefined && statedTuningOf(environment, name) === undefined;

/** Frequency of a4 in hertz, as stated or as it is assumed. */
export const pitchOf = ({ pitch }: Environment): number => pitch ?? USUAL_PITCH;

/** The tuning of a reading; equal temperament where nothing is stated. */
export const tuningOf = (environment: Environment, name: string, pitch = pitchOf(environment)): Tuning =>
  statedTuningOf(environment, name, pitch) ?? { temperament: EQUAL, pitch, more: [] };
