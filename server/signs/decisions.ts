/**
 * The decisions list: what was decided at each sign without a word of the editor, by which row of which table, how sure that
 * is, and what else could stand there.
 */
import type { Position } from '../../grammar/findings/finding';
import { pitchText } from '../../grammar/vocabulary/pitches';
import type { Performance, PerformedEvent } from '../score/performance';
import { addressOf, positionOf } from '../score/walk';
import { signsOf } from './bearing';
import type { PlayedRow, PlayedTable } from './rows';
import type { Confidence } from './tables/table';

export interface Decision {
  readonly reading: string;
  /** Of the note that bears the sign. */
  readonly address: string;
  /** From 1. */
  readonly line: number;
  readonly column: number;
  /** Short names of the shapes, joined by `+`. */
  readonly sign: string;
  readonly table: string;
  /** The table's name for it. */
  readonly row: string;
  /** Of a treatise: how sure it is that it plays the sign so, and where that is known from. */
  readonly played: Confidence | undefined;
  readonly citation: string | undefined;
  /** What is played, in order: `e5 d5 e5 d5`. */
  readonly notes: readonly string[];
  /** Other readings, and who speaks for them. */
  readonly others: readonly { readonly name: string; readonly advocates: string }[];
}

/** The decisions of a performance whose signs are realised by a table, by place. */
export function decisionsOf(performance: Performance, table: PlayedTable): Decision[] {
  return performance.pieces.flatMap(({ events }) =>
    [...bySign(events).values()].flatMap((played) => decisionOf(performance, table, played) ?? []),
  );
}

/** What is played for each sign, in the order of the signs: the notes of one come from the same written notes. */
function bySign(events: readonly PerformedEvent[]): Map<string, PerformedEvent[]> {
  const numbers = new Map<PerformedEvent['from'], number>();
  const found = new Map<string, PerformedEvent[]>();
  for (const event of events) {
    // Small notes are drawn as notes: nothing is decided about them but their length.
    if (event.realised === undefined || event.realised.row === '') continue;
    const number = numbers.get(event.from) ?? numbers.size;
    numbers.set(event.from, number);
    const key = `${number} ${event.realised.sign}`;
    found.set(key, [...(found.get(key) ?? []), event]);
  }
  return found;
}

function decisionOf(
  { score, reading }: Performance,
  { rows }: PlayedTable,
  played: readonly PerformedEvent[],
): Decision | undefined {
  const [first] = played;
  const realised = first?.realised;
  if (first === undefined || realised === undefined) return undefined;
  const shapes = realised.sign.split('+');
  const sign = signsOf(first).find((one) => one.shapes.every((shape) => shapes.includes(shape)));
  // A note that gives way to the sign of another has none of its own.
  if (sign === undefined) return undefined;
  const row = rows.find((one) => one.table === realised.table && one.label === realised.row);
  const { placed } = sign.written;
  return {
    reading,
    address: addressOf(placed.system, placed.event),
    ...positionIn(positionOf(score.tree, placed.system, sign.mark.source)),
    sign: realised.sign,
    table: realised.table,
    row: realised.row,
    played: row?.played,
    citation: row?.citation,
    notes: played.map(({ pitch }) => (pitch === undefined ? 'rest' : pitchText(pitch))),
    others: othersOf(row),
  };
}

const positionIn = ({ line, column }: Position): Pick<Decision, 'line' | 'column'> => ({ line, column });

const othersOf = (row: PlayedRow | undefined): Decision['others'] =>
  (row?.rivals ?? []).map(({ name, advocates }) => ({ name, advocates }));
