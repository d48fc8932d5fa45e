/** The choices that a file offers: as written, each reading, each witness and layer. */
import { keeping } from '../../grammar/keeping';
import { clauseOf } from '../../grammar/statements/read';
import type { Practice } from '../practice/practice';
import { practicesOf } from '../practice/stated';
import { type Choice, type StatedOrder, written } from '../score/choice';
import { tempoOfArgs } from '../score/clauses';
import {
  allChoices,
  declaredNames,
  type Environment,
  MOST_CHOICES,
  type ReadingDeclaration,
} from '../score/environment';
import type { Tempo } from '../score/score';

/** A reading and those on which it is built, itself first, then the nearest; a circle ends where it closes. */
export function lineage(environment: Environment, name: string): ReadingDeclaration[] {
  const byName = readingsByName(environment);
  const line = new Set<ReadingDeclaration>();
  for (let at: string | undefined = name; at !== undefined; ) {
    const reading = byName.get(at);
    if (reading === undefined || line.has(reading)) break;
    line.add(reading);
    at = reading.from;
  }
  return [...line];
}

const readingsByName = keeping(
  ({ readings }: Environment): ReadonlyMap<string, ReadingDeclaration> =>
    new Map(readings.map((reading): [string, ReadingDeclaration] => [reading.name, reading]).reverse()),
);

function readingChoice(environment: Environment, line: readonly ReadingDeclaration[], name: string): Choice {
  const stated = line.find((reading) => reading.accidentals !== undefined);
  const ordered = line.find((reading) => reading.order !== undefined);
  const atPlaces = line.flatMap(({ at }) => [...at].map(([place, label]) => ({ place, label })));
  return {
    ...written(stated?.accidentals ?? environment.accidentals),
    name,
    // The nearest reading that says something of a place has the last word.
    at: new Map([...atPlaces].reverse().map(({ place, label }) => [place, [label]])),
    stated: atPlaces,
    labels: [...new Set([...line.map((reading) => reading.name), ...line.flatMap((reading) => reading.takes)])],
    order: ordered && orderOf(ordered),
  };
}

const orderOf = ({ order, block, statement, file }: ReadingDeclaration): StatedOrder | undefined =>
  order === undefined ? undefined : { names: order, block, statement, file };

/** A witness takes its own options; a layer its own, and beneath them those of its source. */
function witnessChoice(environment: Environment, name: string): Choice {
  const [source = name] = name.split('.');
  const labels = source === name ? [name] : [name, source];
  return { ...written(environment.accidentals), name, labels };
}

const witnessesAndLayers = keeping((environment: Environment): ReadonlySet<string> => {
  const { witnesses, layers } = declaredNames(environment);
  return new Set([...witnesses, ...layers]);
});

/** The choice of a name: `written`, a reading, a witness or a layer (`K.2`); undefined if the file declares no such one. */
export function choiceOf(environment: Environment, name: string): Choice | undefined {
  if (name === 'written') return written(environment.accidentals);
  const line = lineage(environment, name);
  if (line.length > 0) return readingChoice(environment, line, name);
  return witnessesAndLayers(environment).has(name) ? witnessChoice(environment, name) : undefined;
}

/** The tempo that a reading states, or else the nearest on which it is built; undefined where the file's own holds. */
export function statedTempo(environment: Environment, name: string): Tempo | undefined {
  for (const reading of lineage(environment, name)) {
    const tempo = tempoOfArgs(clauseOf(reading, 'tempo')?.args ?? []);
    if (tempo !== undefined) return tempo;
  }
  return undefined;
}

/** The sign table of a reading: its own, that of the nearest on which it is built, or the file's; `written` has none. */
export function tableOfReading(environment: Environment, name: string): string | undefined {
  if (name === 'written') return undefined;
  return lineage(environment, name).find(({ signs }) => signs !== undefined)?.signs ?? environment.signs;
}

/** The practices of rhythm of a reading: its own, those of the readings on which it is built, the file's; `written` has none. */
export const practicesOfReading = (environment: Environment, name: string): readonly Practice[] =>
  name === 'written' ? [] : practicesOf(environment, lineage(environment, name));

/** The practices that hold for every reading but `written`. */
export const practicesOfFile = (environment: Environment): readonly Practice[] => practicesOf(environment, []);

/** `written`, then the readings, the witnesses and their layers, each kind in the order of the file, as many as can be chosen. */
export const choiceNames = (environment: Environment): readonly string[] =>
  allChoices(environment.readings, environment.sources).slice(0, MOST_CHOICES);

/** The readings that a file declares; where it declares none, its sources. */
export function readingsOrSources(environment: Environment): readonly string[] {
  const [, ...names] = choiceNames(environment);
  const { length } = environment.readings;
  return length > 0 ? names.slice(0, length) : names;
}
