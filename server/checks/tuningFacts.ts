/** The tunings of a file, each solved once as long as its declarations stand. */
import { keeping } from '../../grammar/keeping';
import { choiceNames } from '../readings/choices';
import { statedTuningOf } from '../readings/tunings';
import type { Environment } from '../score/environment';
import type { Tuning } from '../tuning/tuning';

const tuningsOf = keeping(
  (environment: Environment): ReadonlyMap<string, Tuning | undefined> =>
    new Map(choiceNames(environment).map((name) => [name, statedTuningOf(environment, name)])),
);

/** The tuning that is stated for a reading; undefined if none is. */
export const tuningFor = (environment: Environment, reading: string): Tuning | undefined =>
  tuningsOf(environment).get(reading);

/** All that are stated. */
export const allTunings = (environment: Environment): readonly Tuning[] =>
  [...tuningsOf(environment).values()].filter((tuning) => tuning !== undefined);
