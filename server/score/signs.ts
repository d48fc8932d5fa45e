/** From the name typed after an apostrophe to the shape that the source draws. */
import type { FindingCode } from '../../grammar/findings/catalogue';
import { nearest } from '../../grammar/nearest';
import { shapeByName, shapes } from '../../grammar/vocabulary/shapes';
import { namesOf, rowsWithInherited, signTableByName, tableNames } from '../signs/tables';
import type { SystemEnvironment } from './environment';

/** The shapes a name stands for, or why they are not known. */
export interface SignShapes {
  /** Short names; empty where the name is unknown or undecided. */
  readonly shapes: readonly string[];
  readonly problem?: {
    readonly code: FindingCode;
    readonly meant: readonly string[];
    readonly tables: string;
    /** What would decide between the tables. */
    readonly unsaid: string;
  };
}

interface Candidate {
  readonly table: string;
  readonly shapes: readonly string[];
}

const kept = new WeakMap<SystemEnvironment, Map<string, SignShapes>>();

/** The shapes of a sign's name among the tables that are built in and those that the file defines or includes. */
export function shapesOfSign(name: string, environment: SystemEnvironment): SignShapes {
  let known = kept.get(environment);
  if (known === undefined) {
    known = new Map();
    kept.set(environment, known);
  }
  const found = known.get(name) ?? resolve(name, environment);
  known.set(name, found);
  return found;
}

function resolve(name: string, environment: SystemEnvironment): SignShapes {
  const shape = shapeByName(name);
  if (shape !== undefined) return { shapes: [shape.short] };
  const candidates = candidatesFor(name, environment);
  const first = candidates[0];
  if (first === undefined) return { shapes: [], problem: unknown(name, environment) };
  const different = [...new Map(candidates.map((one) => [one.shapes.join('+'), one])).values()];
  if (different.length === 1) return { shapes: first.shapes };
  const decided = decide(name, candidates, environment);
  if (decided !== undefined) return { shapes: decided };
  return {
    shapes: [],
    problem: {
      code: 'sign-undecided',
      meant: different.map((one) => one.shapes.join("'")),
      tables: different.map((one) => `${one.table}: ${one.shapes.join(' with ')}`).join('; '),
      unsaid:
        environment.signs === undefined
          ? 'choose a table for the file or name the shape'
          : `${environment.signs}, the table of this file, has no such name: name the shape`,
    },
  };
}

function candidatesFor(name: string, environment: SystemEnvironment): Candidate[] {
  const own = environment.tables.flatMap((table) =>
    table.rows.filter((row) => row.name === name).map((row) => ({ table: table.name, shapes: row.shapes })),
  );
  return [...own, ...namesOf(name)];
}

/** The table that the file chooses; else what all readings that name a table agree on. */
function decide(
  name: string,
  candidates: readonly Candidate[],
  environment: SystemEnvironment,
): readonly string[] | undefined {
  if (environment.signs !== undefined) return inTable(name, environment.signs, candidates, environment);
  const named = environment.readings.flatMap((reading) => (reading.signs === undefined ? [] : [reading.signs]));
  const meanings = named.map((table) => inTable(name, table, candidates, environment)?.join('+'));
  const [first] = meanings;
  return first !== undefined && meanings.every((meaning) => meaning === first) ? first.split('+') : undefined;
}

/** What a table, or the one it comes from, gives to the name. */
function inTable(
  name: string,
  table: string,
  candidates: readonly Candidate[],
  environment: SystemEnvironment,
): readonly string[] | undefined {
  const seen = new Set<string>();
  let current: string | undefined = table;
  while (current !== undefined && !seen.has(current)) {
    seen.add(current);
    const here: string = current;
    const found = candidates.find((one) => one.table === here);
    if (found !== undefined) return found.shapes;
    const own: SystemEnvironment['tables'][number] | undefined = environment.tables.find((one) => one.name === here);
    if (own === undefined) {
      const builtIn = signTableByName(here);
      return builtIn && rowsWithInherited(builtIn).find((row) => row.names.includes(name))?.shapes;
    }
    current = own.from;
  }
  return undefined;
}

function unknown(name: string, environment: SystemEnvironment): NonNullable<SignShapes['problem']> {
  const all = [
    ...shapes.flatMap((shape) => [shape.name, shape.short]),
    ...tableNames,
    ...environment.tables.flatMap((table) => table.rows.map((row) => row.name)),
  ];
  const meant = nearest(name, all);
  return { code: 'unknown-sign', meant: meant === undefined ? [] : [meant], tables: '', unsaid: '' };
}
