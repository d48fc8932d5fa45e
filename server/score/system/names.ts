/** The names that an environment declares, looked up for every system of it. */
import { keeping } from '../../../grammar/keeping';
import type { SystemEnvironment } from '../environment';

/** Of two of one name the first. */
const byName = (all: readonly { readonly name: string }[]): ReadonlyMap<string, number> =>
  new Map(all.map(({ name }, index): [string, number] => [name, index]).reverse());

export const voicesByName = keeping((environment: SystemEnvironment) => byName(environment.voices));
export const stavesByName = keeping((environment: SystemEnvironment) => byName(environment.staves));
export const sourceNames = keeping(
  (environment: SystemEnvironment) => new Set(environment.sources.map(({ name }) => name)),
);
