/** What is told where the table does not say how a sign is played, and what may stand in its place. */
import { putUnder } from '../../grammar/lists';
import type { BorneSign } from './bearing';
import { contextWords } from './contexts';
import { wordFix } from './fixes';
import type { Remarks } from './remarks';
import { type FoundRow, keyOf, type PlayedRow, type PlayedTable } from './rows';
import { recipeSaid, unknownWords } from './said';
import { signTables } from './tables';

/** The row, if it says how its sign is played; if not, that is told. */
export function playableRow(
  { signs, row }: FoundRow<BorneSign>,
  table: PlayedTable,
  remarks: Remarks,
): PlayedRow | undefined {
  const [sign] = signs;
  if (sign === undefined) return undefined;
  if (row === undefined) {
    remarks.ofSign(sign, 'sign-not-in-table', { table: table.name, others: otherwise(sign, table) });
    return undefined;
  }
  const { words, known } = unknownWords(sign, row, table);
  if (words.length > 0) {
    const slots = { word: words.join(' '), known: known.join(', ') };
    remarks.ofSign(sign, 'sign-parameter', slots, wordFix(sign, words, [...known, ...table.names]));
  }
  const { unresolved } = recipeSaid(signs, row);
  if (unresolved === undefined) return row;
  remarks.ofSign(sign, 'sign-unresolved', { table: row.table, reason: unresolved, others: rivalsOf(row) });
  return undefined;
}

/** The built-in tables that have rows of these shapes, by the shapes. */
const having: ReadonlyMap<string, readonly string[]> = tablesByShapes();

function tablesByShapes(): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const { table, rows } of signTables) {
    for (const key of new Set(rows.map(({ shapes }) => keyOf(shapes)))) {
      putUnder(found, key, table);
    }
  }
  return found;
}

/** Where else the table has a sign, or which built-in tables have it. */
function otherwise({ shapes }: BorneSign, { byShapes }: PlayedTable): string {
  const elsewhere = byShapes.get(keyOf(shapes)) ?? [];
  if (elsewhere.length > 0) {
    const places = elsewhere.map(({ when }) => when.map((one) => contextWords[one] ?? one).join(' and ')).join(', or ');
    const names = [...new Set(elsewhere.flatMap((row) => row.names.slice(0, 1)))];
    const said = names.length === 0 ? '' : `; here the name of a row in round brackets decides: ${names.join(', ')}`;
    return `it has it only ${places}${said}`;
  }
  const tables = having.get(keyOf(shapes)) ?? [];
  return tables.length === 0 ? 'no built-in table has it' : `it stands in ${tables.join(', ')}`;
}

const rivalsOf = ({ rivals }: PlayedRow): string =>
  rivals.length === 0
    ? 'no other reading is offered'
    : `in round brackets after it one of these decides: ${rivals.map(({ name }) => name).join(', ')}`;
