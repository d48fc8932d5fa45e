/**
 * What has a sign played of which the table in force says nothing: another table for the readings, or a row in a table of
 * the file's own.
 */
import { stretchIn } from '../../../grammar/place';
import { clauseOf, firstOf } from '../../../grammar/statements/read';
import type { Argument, FileTree } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import { lineage } from '../../readings/choices';
import type { Declared } from '../../score/environment';
import { keyOf } from '../../signs/rows';
import { signTables } from '../../signs/tables';
import type { SignRow } from '../../signs/tables/table';
import type { Project } from '../../workspace/project';
import type { OpenSign, Way } from './openSigns';

export interface TableChange {
  readonly title: string;
  readonly changes: readonly TextChange[];
}

/** Nothing where the tables stand in files that are included. */
export function tableChanges(project: Project, { signs, typed }: OpenSign, way: Way): TableChange[] {
  if (way.row !== undefined || way.choices.length > 0) return [];
  const wanted = keyOf(signs.flatMap(({ shapes }) => shapes));
  const having = signTables.flatMap(({ table, rows }) => {
    const fitting = rows.filter(({ shapes }) => keyOf(shapes) === wanted);
    return fitting.length === 0 ? [] : [{ table, rows: fitting }];
  });
  const readings = readingsChanged(project, way).join(', ');
  return having.flatMap(({ table, rows }) => [
    ...offered(`Play ${typed} in ${readings} as ${table} does, and all other signs as before`, () =>
      rows.some(isKnown) ? withRows(project, way, rows) : undefined,
    ),
    ...offered(`Play all signs in ${readings} by ${table}`, () => tableStated(project, way, table)),
  ]);
}

/** A row of which it is known how it is played. */
const isKnown = ({ recipe }: SignRow): boolean => !recipe.startsWith('unresolved');

/** Those for which a table is stated in the same places, whether they have this sign or not. */
function readingsChanged(project: Project, { readings }: Way): readonly string[] {
  const places = new Set(readings.map((reading) => statedFor(project, reading)?.start));
  return project.analysis.choices.filter(
    (choice) => readings.includes(choice) || (choice !== 'written' && places.has(statedFor(project, choice)?.start)),
  );
}

function offered(title: string, make: () => TextChange[] | undefined): TableChange[] {
  const changes = make();
  return changes === undefined ? [] : [{ title, changes }];
}

// ─── rows of one's own ───────────────────────────────────────────────────────────────────────────────────────────

/** Rows in the table in force, or in a new one that takes over all it has. */
function withRows(project: Project, way: Way, rows: readonly SignRow[]): TextChange[] | undefined {
  const { environment, tree } = project;
  const lines = rows.map((row) => `  ${rowText(row)}\n`).join('');
  const own = environment.tables.find(({ name }) => name === way.table);
  if (own !== undefined) {
    if (own.file !== undefined) return undefined;
    const offset = lineAfter(tree, own);
    const isCut = offset === tree.text.length && !/[\r\n]$/.test(tree.text);
    return [{ offset, length: 0, text: isCut ? `\n${lines}` : lines }];
  }
  const name = freeTable(environment.tables.map((table) => table.name));
  const stated = tableStated(project, way, name);
  const [first] = stated ?? [];
  if (stated === undefined || first === undefined) return undefined;
  // The table stands before the first statement that takes it.
  const at = lineBefore(tree, Math.min(...stated.map(({ offset }) => offset)));
  return [{ offset: at, length: 0, text: `table ${name} from ${way.table}\n${lines}` }, ...stated];
}

const rowText = ({ shapes, label, when = [], recipe }: SignRow): string =>
  [shapes.join('+'), `"${label}"`, ...when.map((condition) => `when ${condition}`), ':', recipe].join(' ');

/** `house`, or the first `house2`, `house3` … that is free. */
function freeTable(taken: readonly string[]): string {
  let number = 1;
  const name = (): string => (number === 1 ? 'house' : `house${number}`);
  while (taken.includes(name())) number++;
  return name();
}

// ─── where tables are stated ─────────────────────────────────────────────────────────────────────────────────────

/** Another name wherever these readings, those on which they are built, or the file state their table. */
function tableStated(project: Project, { readings }: Way, name: string): TextChange[] | undefined {
  const places = new Map<number, TextChange>();
  for (const reading of readings) {
    const place = statedFor(project, reading);
    if (place === undefined) return undefined;
    places.set(place.start, { offset: place.start, length: place.end - place.start, text: name });
  }
  return [...places.values()];
}

function statedFor(
  { tree, environment }: Project,
  reading: string,
): { readonly start: number; readonly end: number } | undefined {
  const own = lineage(environment, reading).find(({ signs }) => signs !== undefined);
  if (own !== undefined) return stretchOf(tree, own, clauseOf(own, 'signs')?.args);
  const file = environment.statements.find(({ statement }) => statement.keyword === 'signs');
  return file && stretchOf(tree, file.declared, file.statement.args);
}

function stretchOf(
  tree: FileTree,
  declared: Declared,
  args: readonly Argument[] = [],
): { readonly start: number; readonly end: number } | undefined {
  const [block, name] = [tree.blocks[declared.block], firstOf(args, 'name')];
  const holder = block?.statements[declared.statement];
  if (declared.file !== undefined || block === undefined || holder === undefined || name === undefined)
    return undefined;
  return stretchIn(block, holder, name);
}

/** The beginning of the line after a statement's last; the end of the text where none follows. */
function lineAfter({ blocks, lineStarts, text }: FileTree, { block: index, statement }: Declared): number {
  const block = blocks[index];
  const holder = block?.statements[statement];
  if (block === undefined || holder === undefined) return text.length;
  const { end } = stretchIn(block, holder, { pos: 0, len: holder.tree.text.length });
  return lineStarts.find((start) => start >= end) ?? text.length;
}

/** The beginning of the line on which the statement around an offset begins: a line that is not indented. */
function lineBefore({ lineStarts, text }: FileTree, offset: number): number {
  const starts = lineStarts.filter((start) => start <= offset && /\S/.test(text[start] ?? ''));
  return starts.at(-1) ?? 0;
}
