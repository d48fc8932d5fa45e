/** The table in force: built in, or a table of the score's own, with all it takes over; and the row that a sign finds in it. */
import { putUnder } from '../../grammar/lists';
import { allOf, clauseOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type { Recipe, RecipePhrase, Row, Statement } from '../../grammar/tree';
import { typableName } from '../../grammar/vocabulary/names';
import { shapeByName } from '../../grammar/vocabulary/shapes';
import type { Environment } from '../score/environment';
import { recipeOf } from './recipes';
import { signTableByName } from './tables';
import type { Confidence, SignRow, SignTable } from './tables/table';

/** A row ready to be played. */
export interface PlayedRow {
  /** The table where it stands. */
  readonly table: string;
  readonly names: readonly string[];
  readonly label: string;
  readonly shapes: readonly string[];
  readonly when: readonly string[];
  readonly recipe: Recipe;
  /** What is played covers all notes of the chord. */
  readonly wholeChord: boolean;
  /** Of a treatise. */
  readonly played: Confidence | undefined;
  readonly citation: string | undefined;
  readonly rivals: readonly { readonly name: string; readonly recipe: Recipe; readonly advocates: string }[];
}

export interface PlayedTable {
  readonly name: string;
  /** Those of the table itself first, then those it takes over. */
  readonly rows: readonly PlayedRow[];
  readonly rules: Pick<SignTable, 'passing' | 'dotted' | 'whole' | 'beforeRest' | 'slowStart'>;
  /** It has a trill that leans on its first note: one by another row does not. */
  readonly tellsLeaning: boolean;
  /** The rows by their shapes in any order. */
  readonly byShapes: ReadonlyMap<string, readonly PlayedRow[]>;
  /** Shapes that make one sign together, most of them first. */
  readonly sets: readonly (readonly string[])[];
  /** Every name of a row. */
  readonly names: ReadonlySet<string>;
  /** By shapes: the words that choose among the ways of the other tables by which the file has signs played. */
  readonly elsewhere: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Shapes in any order as one text. */
export const keyOf = (shapes: readonly string[]): string =>
  shapes.length === 1 ? (shapes[0] ?? '') : [...shapes].sort().join('+');

// ─── making a table ──────────────────────────────────────────────────────────────────────────────────────────────

const builtInRow = (table: string, row: SignRow): PlayedRow => ({
  table,
  names: row.names,
  label: row.label,
  shapes: row.shapes,
  when: row.when ?? [],
  recipe: recipeOf(row.recipe).recipe,
  wholeChord: row.shapes.some(isDrawnForChord),
  played: row.played,
  citation: row.citation,
  rivals: (row.rivals ?? []).map(({ name, recipe, advocates }) => ({
    name,
    recipe: recipeOf(recipe).recipe,
    advocates,
  })),
});

function ownRow(table: string, { args, clauses, recipe }: Row): PlayedRow[] {
  const typed = firstOf(args, 'names')?.names ?? [];
  if (recipe === undefined || typed.length === 0) return [];
  const label = firstOf(args, 'string')?.text ?? '';
  const name = typableName(label);
  return [
    {
      table,
      names: name === undefined ? [] : [name],
      label,
      shapes: typed.map(({ text }) => shapeByName(text)?.short ?? text),
      when: clausesOf({ clauses }, 'when').flatMap((clause) => allOf(clause.args, 'word').map(({ text }) => text)),
      recipe,
      wholeChord: clauseOf({ clauses }, 'scope') !== undefined,
      played: undefined,
      citation: undefined,
      rivals: [],
    },
  ];
}

const isDrawnForChord = (shape: string): boolean => shapeByName(shape)?.drawnFor === 'chord';

/** Inherited rows are hidden by an own row of their shapes that fits everywhere. */
function withInherited(own: readonly PlayedRow[], inherited: readonly PlayedRow[]): PlayedRow[] {
  const hidden = new Set(own.filter(({ when }) => when.length === 0).map(({ shapes }) => keyOf(shapes)));
  return [...own, ...inherited.filter(({ shapes }) => !hidden.has(keyOf(shapes)))];
}

/** `extends zz`: what that row plays, without its last hold or rest where more follows. */
function extended(row: PlayedRow, rows: readonly PlayedRow[], seen: readonly string[] = []): PlayedRow {
  const { extends: base } = row.recipe;
  if (base === undefined || seen.includes(base)) return row;
  const wanted = keyOf(base.split('+').map((name) => shapeByName(name)?.short ?? name));
  const found = rows.find((other) => other !== row && keyOf(other.shapes) === wanted);
  if (found === undefined) return row;
  const { recipe } = extended(found, rows, [...seen, base]);
  const goesOn = row.recipe.phrases.length > 0;
  const last = recipe.phrases.at(-1)?.kind;
  const begins = goesOn && (last === 'hold' || last === 'rest') ? recipe.phrases.slice(0, -1) : recipe.phrases;
  const start = row.recipe.start ?? recipe.start;
  return {
    ...row,
    recipe: {
      ...row.recipe,
      ...(start === undefined ? {} : { start }),
      ...(recipe.unresolved === undefined ? {} : { unresolved: recipe.unresolved }),
      phrases: [...begins, ...row.recipe.phrases],
    },
  };
}

/** The rows and rules of a table and of those from which it comes. */
function gathered(
  name: string,
  environment: Environment,
  seen: readonly string[],
): Pick<PlayedTable, 'name' | 'rows' | 'rules'> | undefined {
  if (seen.includes(name)) return undefined;
  const before = [...seen, name];
  const statement = statementOf(name, environment);
  const builtIn = statement === undefined ? signTableByName(name) : undefined;
  if (statement === undefined && builtIn === undefined) return undefined;
  const from = statement === undefined ? builtIn?.from : firstOf(clauseOf(statement, 'from')?.args ?? [], 'name')?.text;
  const base = from === undefined ? undefined : gathered(from, environment, before);
  const own =
    statement === undefined
      ? (builtIn?.rows ?? []).map((row) => builtInRow(name, row))
      : statement.rows.flatMap((row) => ownRow(name, row));
  return { name, rows: withInherited(own, base?.rows ?? []), rules: { ...base?.rules, ...rulesOf(builtIn) } };
}

const statementOf = (name: string, environment: Environment): Statement | undefined =>
  environment.statements.find(
    ({ statement }) => statement.keyword === 'table' && firstOf(statement.args, 'name')?.text === name,
  )?.statement;

const rulesOf = (table: SignTable | undefined): PlayedTable['rules'] => ({
  ...(table?.passing === undefined ? {} : { passing: table.passing }),
  ...(table?.dotted === undefined ? {} : { dotted: table.dotted }),
  ...(table?.whole === undefined ? {} : { whole: table.whole }),
  ...(table?.beforeRest === undefined ? {} : { beforeRest: table.beforeRest }),
  ...(table?.slowStart === undefined ? {} : { slowStart: table.slowStart }),
});

const tables = new WeakMap<Environment, Map<string, PlayedTable | undefined>>();

/** The table of a name that the file defines or includes, or that is built in; undefined if there is none. */
export function tableInForce(name: string, environment: Environment): PlayedTable | undefined {
  const known = tables.get(environment) ?? new Map<string, PlayedTable | undefined>();
  tables.set(environment, known);
  if (!known.has(name)) {
    const table = gathered(name, environment, []);
    const elsewhere = wordsElsewhere(name, environment);
    known.set(
      name,
      table && indexed({ ...table, rows: table.rows.map((row) => extended(row, table.rows)) }, elsewhere),
    );
  }
  return known.get(name);
}

function wordsElsewhere(name: string, environment: Environment): PlayedTable['elsewhere'] {
  const found = new Map<string, Set<string>>();
  const others = tablesNamed(environment).filter((other) => other !== name);
  for (const { shapes, names, rivals } of others.flatMap((other) => gathered(other, environment, [])?.rows ?? [])) {
    const words = found.get(keyOf(shapes)) ?? new Set();
    found.set(keyOf(shapes), words);
    for (const word of [...names, ...rivals.map((rival) => rival.name)]) words.add(word);
  }
  return found;
}

/** The tables by which the file and its readings have signs played, each once. */
export const tablesNamed = ({ signs, readings }: Pick<Environment, 'signs' | 'readings'>): string[] => [
  ...new Set([signs, ...readings.map((reading) => reading.signs)].flatMap((table) => table ?? [])),
];

/** Leaned on a note above, and a repetition follows. */
const isLeaningTrill = ({ leaned, steps }: RecipePhrase, index: number, phrases: readonly RecipePhrase[]): boolean =>
  leaned === true && (steps[0]?.step ?? 0) > 0 && phrases[index + 1]?.repeated === true;

function indexed(
  table: Pick<PlayedTable, 'name' | 'rows' | 'rules'>,
  elsewhere: PlayedTable['elsewhere'],
): PlayedTable {
  const byShapes = new Map<string, PlayedRow[]>();
  for (const row of table.rows) putUnder(byShapes, keyOf(row.shapes), row);
  const sets = [...byShapes.keys()].map((key) => key.split('+')).filter((set) => set.length > 1);
  const names = new Set(table.rows.flatMap((row) => row.names));
  const tellsLeaning = table.rows.some(({ recipe: { phrases } }) => phrases.some(isLeaningTrill));
  return { ...table, byShapes, sets: sets.sort((a, b) => b.length - a.length), names, tellsLeaning, elsewhere };
}

// ─── finding a row ───────────────────────────────────────────────────────────────────────────────────────────────

/** A sign as it stands at a note: its shapes, and the name by which it was typed. */
export interface TypedSign {
  readonly name: string;
  readonly shapes: readonly string[];
  readonly parameters: readonly string[];
}

/** A row with the signs that it plays together. */
export interface FoundRow<Sign extends TypedSign> {
  readonly signs: readonly Sign[];
  /** Undefined where the table says nothing of the sign. */
  readonly row: PlayedRow | undefined;
}

/** The rows by which the signs of a note are played, in their order; the longest set that the table knows wins. */
export function rowsFor<Sign extends TypedSign>(
  table: PlayedTable,
  signs: readonly Sign[],
  fits: (condition: string) => boolean,
): FoundRow<Sign>[] {
  const [first] = signs;
  if (first === undefined) return [];
  if (signs.length === 1) return [{ signs, row: rowOf(table, first.shapes, signs, fits) }];
  const best = longestSet(table, signs, fits) ?? { signs: [first], row: rowOf(table, first.shapes, [first], fits) };
  const left = signs.filter((sign) => !best.signs.includes(sign));
  return [best, ...rowsFor(table, left, fits)];
}

function longestSet<Sign extends TypedSign>(
  table: PlayedTable,
  signs: readonly Sign[],
  fits: (condition: string) => boolean,
): FoundRow<Sign> | undefined {
  for (const set of table.sets) {
    const taken = signs.filter(({ shapes }) => shapes.every((shape) => set.includes(shape)));
    if (keyOf(taken.flatMap(({ shapes }) => shapes)) !== keyOf(set)) continue;
    const row = rowOf(table, set, taken, fits);
    if (row !== undefined) return { signs: taken, row };
  }
  return undefined;
}

/** The row whose own name was typed; else the first of these shapes that fits; where none does, a name decides alone. */
function rowOf(
  { byShapes }: PlayedTable,
  shapes: readonly string[],
  signs: readonly TypedSign[],
  fits: (condition: string) => boolean,
): PlayedRow | undefined {
  const ofShapes = byShapes.get(keyOf(shapes)) ?? [];
  const [first] = ofShapes;
  if (ofShapes.length === 1 && first?.when.length === 0) return first;
  const said = signs.flatMap(({ name, parameters }) => [...parameters, name]);
  const fitting = ofShapes.filter(({ when }) => when.every(fits));
  const named = (row: PlayedRow): boolean => row.names.some((name) => said.includes(name));
  const anywhere = ofShapes.filter(({ when }) => when.length === 0);
  return fitting.find(named) ?? anywhere.find(named) ?? fitting[0] ?? ofShapes.find(named);
}
