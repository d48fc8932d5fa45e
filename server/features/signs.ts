/** Signs in words: what is drawn, and how tables call and play it. */
import type { Row, Statement } from '../../grammar/tree';
import { type Shape, shapeByName } from '../../grammar/vocabulary/shapes';
import type { Environment } from '../score/environment';
import { shapesOfSign } from '../score/signs';
import { rowsWithInherited, signTableByName } from '../signs/tables';
import { certainties, type SignRow } from '../signs/tables/table';
import { literally, markdown } from './markdown';

/** The shapes that a name typed after `'` draws. */
export const shapesDrawn = (name: string, environment: Environment): readonly Shape[] =>
  shapesOfSign(name, environment).shapes.flatMap((short) => shapeByName(short) ?? []);

const sameShapes = (a: readonly string[], b: readonly string[]): boolean => a.join('+') === b.join('+');

const rowInWords = ({ label, recipe, played, when, note }: SignRow): string =>
  [
    `“${label}”${when === undefined ? '' : `, when ${when.join(' and ')}`}: \`${recipe}\` (${certainties[played]})`,
    ...(note === undefined ? [] : [note]),
  ].join(' ');

/** How a table plays what stands there, as Markdown: a built-in one by its rows, one of the file by its own. */
export function playedBy(table: string, shapes: readonly string[], environment: Environment): string[] {
  const builtIn = signTableByName(table);
  if (builtIn !== undefined) {
    return rowsWithInherited(builtIn)
      .filter((row) => sameShapes(row.shapes, shapes))
      .map(rowInWords);
  }
  const own = environment.statements.find(({ statement }) => isTable(statement, table));
  const rows = (own?.statement.rows ?? []).filter((row) => sameShapes(shapesOf(row), shapes)).map(ownRowInWords);
  const from = environment.tables.find(({ name }) => name === table)?.from;
  return rows.length > 0 || from === undefined || from === table ? rows : playedBy(from, shapes, environment);
}

const isTable = ({ keyword, args: [name] }: Statement, table: string): boolean =>
  keyword === 'table' && name?.kind === 'name' && name.text === table;

const shapesOf = ({ args: [shapes] }: Row): string[] =>
  shapes?.kind === 'names' ? shapes.names.map(({ text }) => shapeByName(text)?.short ?? text) : [];

const ownRowInWords = ({ args: [, name], recipe }: Row): string => {
  const called = name?.kind === 'string' ? markdown`“${name.text}”` : 'a row of this table';
  return recipe?.unresolved === undefined ? called : `${called}: ${literally(recipe.unresolved)}`;
};
