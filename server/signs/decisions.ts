/**
 * The decisions list: what was decided at each sign without a word of the editor, by which row of which table, how sure that
 * is, and what else could stand there.
 */
import type { Position } from '../../grammar/findings/finding';
import { keeping } from '../../grammar/keeping';
import { putUnder } from '../../grammar/lists';
import { format } from '../../grammar/time';
import type { Recipe } from '../../grammar/tree';
import { pitchText } from '../../grammar/vocabulary/pitches';
import { hasTime, type Performance, type PerformedEvent, type Realised, type WrittenEvent } from '../score/performance';
import { addressOf, positionOf } from '../score/walk';
import { partsOf } from './atoms';
import { type BorneSign, signsOf } from './bearing';
import { rowsAt, type Standing, signGroups } from './found';
import { Passage } from './passage';
import { keyOf, type PlayedRow, type PlayedTable } from './rows';
import { FROM, recipeSaid } from './said';
import { isSettled } from './settled';
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

/** A sign, or several that are one, in a reading that plays signs by a table. */
export interface PlayedSign {
  /** A word in round brackets, or an annotation, is glued to the first. */
  readonly signs: readonly [BorneSign, ...BorneSign[]];
  readonly table: string;
  /** Undefined where the table says nothing of it. */
  readonly row: PlayedRow | undefined;
  /** What is played, in order; empty where the note is played plain. */
  readonly notes: readonly string[];
  /** What would be played otherwise. */
  readonly choices: readonly SignChoice[];
  /** The editor has said how it is played. */
  readonly settled: boolean;
}

/** A word that, in round brackets after a sign, has it played otherwise. */
export interface SignChoice {
  readonly word: string;
  /** The row that is then played, by that word or as it stands. */
  readonly row: PlayedRow;
  readonly recipe: Recipe;
  /** Who speaks for it; undefined of what no treatise offers. */
  readonly advocates: string | undefined;
}

/**
 * The signs of a performance and what is made of each, by place.
 * @param written the performance before its signs were realised
 * @param played the same with its signs realised by the table
 * @param block only the signs of notes of its system
 */
export function playedSigns(
  written: Performance,
  played: Performance,
  table: PlayedTable,
  block?: number,
): PlayedSign[] {
  const notes = notesBySign(played);
  const seen = new Set<string>();
  return written.pieces.flatMap((piece) => {
    const passage = new Passage(piece);
    return piece.events.flatMap((event) => {
      if (block !== undefined && event.from.every(({ placed }) => placed.system.block !== block)) return [];
      const standing = { passage, table, event };
      return signGroups(signsOf(event)).flatMap((group) =>
        rowsAt(standing, group).flatMap(({ signs: [first, ...others], row }) => {
          if (first === undefined || seen.has(placeOf(first)) || !hasTime(event)) return [];
          seen.add(placeOf(first));
          const signs = [first, ...others] as const;
          const settled = isSettled(signs, row, written.score.environment);
          const key = keyOfSign(first.written, signs.flatMap(({ shapes }) => shapes).join('+'));
          const sounds = notes.get(key) ?? [];
          const choices = choicesAt(standing, signs, row, sounds.length > 0);
          return [{ signs, table: table.name, row, notes: sounds, choices, settled }];
        }),
      );
    });
  });
}

/** The decisions among the signs of which the editor has said nothing: those that are not played plain. */
export const decisionsOf = ({ reading, score }: Performance, signs: readonly PlayedSign[]): Decision[] =>
  signs.flatMap(({ signs: [first, ...others], row, notes, settled }) => {
    if (row === undefined || notes.length === 0 || settled) return [];
    const { system, event } = first.written.placed;
    return [
      {
        reading,
        address: addressOf(system, event),
        ...positionIn(positionOf(score.tree, system, first.mark.source)),
        sign: [first, ...others].flatMap(({ shapes }) => shapes).join('+'),
        table: row.table,
        row: row.label,
        played: row.played,
        citation: row.citation,
        notes,
        others: row.rivals.map(({ name, advocates }) => ({ name, advocates })),
      },
    ];
  });

const positionIn = ({ line, column }: Position): Pick<Decision, 'line' | 'column'> => ({ line, column });

// ─── what is played ──────────────────────────────────────────────────────────────────────────────────────────────

/** A sign by its place in the text, for one drawn for the chord may be found at each note; one across lanes by its moment. */
const placeOf = ({ mark, written: { placed } }: BorneSign): string =>
  `${placed.system.block} ${mark.form.linked ? `at ${format(placed.onset)}` : `${mark.source.lane} ${mark.source.pos}`}`;

const keyOfSign = ({ placed, member }: WrittenEvent, sign: string): string => {
  const { lane, pos } = (member ?? placed.event).source;
  return `${placed.system.block} ${lane} ${pos} ${sign}`;
};

/** The notes played for each sign, also those of other notes of its chord; the silence of a cut is `rest`. */
function notesBySign({ pieces }: Performance): Map<string, string[]> {
  const played = new Map<Realised, PerformedEvent[]>();
  for (const event of pieces.flatMap(({ events }) => events)) {
    // Small notes are drawn as notes: nothing is decided about them but their length.
    if (event.realised === undefined || event.realised.row === '') continue;
    putUnder(played, event.realised, event);
  }
  const found = new Map<string, string[]>();
  for (const [{ sign }, events] of played) {
    const isSpread = new Set(events.map(({ from }) => from)).size > 1;
    const notes = events.flatMap(({ pitch }) => (pitch !== undefined ? pitchText(pitch) : isSpread ? [] : 'rest'));
    const bearers = new Set(events.flatMap(({ from }) => from).map((written) => keyOfSign(written, sign)));
    for (const key of bearers) found.set(key, [...(found.get(key) ?? []), ...notes]);
  }
  return found;
}

// ─── what else could be ──────────────────────────────────────────────────────────────────────────────────────────

type Signs = PlayedSign['signs'];

/** The words that would have a sign played otherwise: of rivals, of other rows of its shapes, and those for its first note. */
function choicesAt(standing: Standing, signs: Signs, row: PlayedRow | undefined, sounds: boolean): SignChoice[] {
  const now = row === undefined ? '' : soundOf(recipeSaid(signs, row));
  const rows = standing.table.byShapes.get(keyOf(signs.flatMap(({ shapes }) => shapes))) ?? [];
  const words = [
    ...(row?.rivals ?? []).map(({ name }) => name),
    ...rows.flatMap(({ names }) => names.slice(0, 1)),
    // Only of a trill is it a question from which of its two notes it begins.
    ...(sounds && row !== undefined && partsOf(row.recipe).cycle !== undefined ? FROM : []),
  ];
  return [...new Set(words)].flatMap((word) => {
    const choice = chosen(standing, signs, word);
    if (choice === undefined || choice.recipe.unresolved !== undefined) return [];
    return soundOf(choice.recipe) === now ? [] : [choice];
  });
}

function chosen(standing: Standing, [first, ...others]: Signs, word: string): SignChoice | undefined {
  const said = [{ ...first, parameters: [...first.parameters, ...word.split(' ')] }, ...others];
  const found = rowsAt(standing, said).find(({ signs }) => signs.some((sign) => sign === said[0]));
  if (found?.row === undefined) return undefined;
  const { row } = found;
  const advocates = row.rivals.find(({ name }) => name === word)?.advocates;
  return { word, row, recipe: recipeSaid(found.signs, row), advocates };
}

/** What two recipes must share to be played alike, as one text: all but where they stand. */
const soundOf = keeping((recipe: Recipe): string =>
  JSON.stringify(recipe, (key, value) => (key === 'pos' || key === 'len' ? undefined : value)),
);
