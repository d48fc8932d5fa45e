/** Tables of signs. */
import { clausesOf, firstOf } from '../../../grammar/statements/read';
import { typableName } from '../../../grammar/vocabulary/names';
import { shapes as allShapes, shapeByName } from '../../../grammar/vocabulary/shapes';
import { builtInTables } from '../../signs/tables';
import type { TableDeclaration } from '../environment';
import { type Declarations, type Found, nameIn, stringIn } from './declarations';
import { checkWays, fromIn } from './from';

const shapeNames = allShapes.flatMap(({ name, short }) => [short, name]);

export function tablesOf(declarations: Declarations): TableDeclaration[] {
  const founds: { found: Found; name: string }[] = [];
  const tables: TableDeclaration[] = [];
  for (const found of declarations.of('table')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('table', found, name)) continue;
    founds.push({ found, name: name.text });
    tables.push({
      ...found.declared,
      name: name.text,
      from: fromIn(found)?.text,
      rows: rowsOf(declarations, found),
    });
  }
  const known = [...builtInTables, ...tables.map((table) => table.name)];
  checkWays(declarations, founds, { known, unknown: 'unknown-table', circle: 'table-circle' });
  checkTables(declarations, new Set(known));
  return tables;
}

/** Rows of a table with the names that it gives them; several rows of one name and shape are one. */
function rowsOf(declarations: Declarations, found: Found): TableDeclaration['rows'] {
  const rows = new Map<string, { name: string; shapes: string[] }>();
  for (const { args, recipe } of found.statement.rows) {
    const typed = firstOf(args, 'names')?.names ?? [];
    for (const shape of typed) {
      if (shapeByName(shape.text) === undefined) declarations.unknown(found, shape, 'unknown-shape', shapeNames);
    }
    for (const shape of recipe?.extends?.split('+') ?? []) {
      if (shapeByName(shape) === undefined)
        declarations.report(found, recipe ?? found.statement, 'unknown-shape', { name: shape });
    }
    const shapes = typed.map(({ text }) => shapeByName(text)?.short ?? text);
    const name = typableName(stringIn(args) ?? '');
    if (name !== undefined && shapes.length > 0) rows.set(`${name} ${shapes.join('+')}`, { name, shapes });
  }
  return [...rows.values()];
}

/** Every table that the file or a reading chooses must be known. */
function checkTables(declarations: Declarations, known: ReadonlySet<string>): void {
  const chosen = [
    ...declarations.of('signs').map((found) => ({ found, args: found.statement.args })),
    ...declarations
      .of('reading')
      .flatMap((found) => clausesOf(found.statement, 'signs').map(({ args }) => ({ found, args }))),
  ];
  for (const { found, args } of chosen) {
    const name = nameIn(args);
    if (name !== undefined && !known.has(name.text)) declarations.unknown(found, name, 'unknown-table', known);
  }
}
