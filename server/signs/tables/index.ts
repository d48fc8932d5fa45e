/** The built-in sign tables: every treatise, and which names and shapes it has. */
import { putUnder } from '../../../grammar/lists';
import { anglebert1689 } from './anglebert1689';
import { chambonnieres1670 } from './chambonnieres1670';
import { clementi1801 } from './clementi1801';
import { correa1626 } from './correa1626';
import { couperin1713 } from './couperin1713';
import { dandrieu1724 } from './dandrieu1724';
import { diruta1593 } from './diruta1593';
import { englishStrokes } from './englishStrokes';
import { leRoux1705 } from './leRoux1705';
import { marpurg1755 } from './marpurg1755';
import { muffat1690 } from './muffat1690';
import { muffat1739 } from './muffat1739';
import { purcell1696 } from './purcell1696';
import { quantz1752 } from './quantz1752';
import { rameau1724 } from './rameau1724';
import { santaMaria1565 } from './santaMaria1565';
import type { SignRow, SignTable } from './table';
import { turk1789 } from './turk1789';

/** Every built-in table, by year. */
export const signTables: readonly SignTable[] = [
  santaMaria1565,
  englishStrokes,
  diruta1593,
  correa1626,
  chambonnieres1670,
  anglebert1689,
  muffat1690,
  purcell1696,
  leRoux1705,
  couperin1713,
  rameau1724,
  dandrieu1724,
  muffat1739,
  quantz1752,
  marpurg1755,
  turk1789,
  clementi1801,
];

/** Their names, by year. */
export const builtInTables: readonly string[] = signTables.map(({ table }) => table);

const byTable: ReadonlyMap<string, SignTable> = new Map(signTables.map((each) => [each.table, each]));

/** A built-in table; undefined where there is none of this name. */
export const signTableByName = (table: string): SignTable | undefined => byTable.get(table);

/** A table's own rows, then those of the table that it takes over and whose names it does not have itself. */
export function rowsWithInherited(table: SignTable): readonly SignRow[] {
  const base = table.from === undefined ? undefined : byTable.get(table.from);
  if (base === undefined) return table.rows;
  const own = new Set(table.rows.flatMap((each) => each.names));
  return [...table.rows, ...rowsWithInherited(base).filter(({ names: [name] }) => !own.has(name))];
}

/** What one table means by a name. */
export interface NamedShapes {
  readonly table: string;
  readonly shapes: readonly string[];
}

function collectNames(): ReadonlyMap<string, readonly NamedShapes[]> {
  const all = new Map<string, NamedShapes[]>();
  for (const table of signTables) {
    for (const { names, shapes } of rowsWithInherited(table)) {
      for (const name of names) putUnder(all, name, { table: table.table, shapes });
    }
  }
  return all;
}

const byName = collectNames();

/** The tables that have a row of this name, by year, with the shapes each means; empty where none has. */
export const namesOf = (name: string): readonly NamedShapes[] => byName.get(name) ?? [];

/** Every name that a built-in table gives to a sign. */
export const tableNames: readonly string[] = [...byName.keys()];
