/** What a file says of its tuning: pitch, temperament, divided keys. */
import { allOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type { Argument } from '../../grammar/tree';
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

/** The file's own statement of a kind: includes bring none of these. */
const ownArgs = ({ statements }: Environment, keyword: string): readonly Argument[] | undefined =>
  statements.find(({ statement, declared }) => statement.keyword === keyword && declared.file === undefined)?.statement
    .args;

/** The arguments of the file's `tuning`. */
export const statedTuning = (environment: Environment): readonly Argument[] | undefined =>
  ownArgs(environment, 'tuning');

/** Notes besides the twelve that have a key of their own, since the instrument's keys are divided: their places on the line of fifths. */
export function dividedBeyond({ statements }: Environment, { first }: Temperament): readonly number[] {
  const instrument = statements.find(
    ({ statement, declared }) => statement.keyword === 'instrument' && declared.file === undefined,
  );
  const twelve = placesFrom(first);
  const pairs = instrument === undefined ? [] : clausesOf(instrument.statement, 'split');
  const places = pairs.flatMap(({ args }) =>
    allOf(args, 'pair').flatMap((pair) => [placeOfSpelling(pair.first), placeOfSpelling(pair.second)]),
  );
  return [...new Set(places.filter((place) => !twelve.includes(place)))];
}
