/** What a file says of its tuning. */
import { allOf, firstOf } from '../../grammar/statements/read';
import type { Argument, Spelling } from '../../grammar/tree';
import type { Environment } from '../score/environment';
import { temperamentByName } from './defined';
import { placeOfSpelling } from './fifths';
import { meantone } from './schemes';
import { firstAfter, placesFrom, type Temperament, USUAL_FIRST } from './temperament';
import { partOf } from './tempering';

/**
 * The temperament that stands after `tuning`: a meantone, or a name; undefined if no temperament is called so.
 * @param pitch frequency of a4 in hertz, on which fifths that are told in beats depend
 */
export function temperamentOfArgs(
  environment: Environment,
  args: readonly Argument[],
  pitch: number,
): Temperament | undefined {
  const name = firstOf(args, 'name');
  if (name !== undefined) return temperamentByName(environment, name.text, pitch);
  const part = firstOf(args, 'ratio');
  if (part === undefined) return undefined;
  const comma = allOf(args, 'word').some(({ text }) => text === 'pc') ? 'pc' : 'sc';
  const wolf = firstOf(args, 'pair');
  return meantone(partOf(comma, '-', part.n, part.d), wolf === undefined ? USUAL_FIRST : firstAfter(wolf));
}

/** The arguments of the file's own `tuning`: includes bring none. */
export const statedTuning = ({ statements }: Environment): readonly Argument[] | undefined =>
  statements.find(({ statement, declared }) => statement.keyword === 'tuning' && declared.file === undefined)?.statement
    .args;

/** Notes besides the twelve that have a key of their own where these keys are divided: their places on the line of fifths. */
export function dividedBeyond(keys: readonly (readonly Spelling[])[], { first }: Temperament): readonly number[] {
  const twelve = placesFrom(first);
  const places = keys.flat().map(placeOfSpelling);
  return [...new Set(places.filter((place) => !twelve.includes(place)))];
}
