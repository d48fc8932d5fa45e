/** The rows by which the signs of a note are played where it stands. */
import type { PerformedEvent } from '../score/performance';
import type { BorneSign } from './bearing';
import { holds } from './conditions';
import type { Passage } from './passage';
import { type FoundRow, type PlayedTable, rowsFor } from './rows';

/** A note among the others, and the table in force. */
export interface Standing {
  readonly passage: Passage;
  readonly table: PlayedTable;
  readonly event: PerformedEvent;
}

/** The signs of one note or chord, each with its row. */
export function rowsAt({ passage, table, event }: Standing, signs: readonly BorneSign[]): FoundRow<BorneSign>[] {
  const [sign] = signs;
  if (sign === undefined) return [];
  return rowsFor(table, signs, (condition) => holds(condition, { passage, event, sign }));
}

/** The signs that are looked up together: those for the chord, then those of each of the notes tied. */
export function signGroups(signs: readonly BorneSign[]): (readonly BorneSign[])[] {
  const forChord = signs.filter((sign) => sign.forChord);
  const forNote = signs.filter((sign) => !sign.forChord);
  const written = [...new Set(forNote.map((sign) => sign.written))];
  const groups = [forChord, ...written.map((one) => forNote.filter((sign) => sign.written === one))];
  return groups.filter((group) => group.length > 0);
}
