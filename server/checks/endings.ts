/** Endings of a strain that lack the one before or after them: the nth playing takes ending n, so they would not be played. */
import { firstOf } from '../../grammar/statements/read';
import type { FileTree, Item } from '../../grammar/tree';
import type { Bar, Piece } from '../score/score';
import { checkOfWritten, problemAt, type Spot } from './check';

/** An ending, and which other one it lacks. */
interface Alone {
  readonly bar: Bar;
  readonly ending: number;
  readonly missing: number;
}

/** Endings are counted from 1 in every strain, and there are two of them at least. */
function alone({ bars }: Piece): Alone[] {
  const begun = bars.flatMap((bar) => (bar.ending === undefined ? [] : [{ bar, ending: bar.ending }]));
  return begun.flatMap(({ bar, ending }, index): Alone[] => {
    const before = begun[index - 1]?.ending ?? 0;
    if (ending > 1) return before === ending - 1 ? [] : [{ bar, ending, missing: ending - 1 }];
    return (begun[index + 1]?.ending ?? 1) > 1 ? [] : [{ bar, ending, missing: 2 }];
  });
}

const isEnding = (item: Item, ending: number): boolean =>
  item.kind === 'change' && item.change?.word === 'ending' && firstOf(item.change.args, 'number')?.value === ending;

/** Where the ending is typed, in any lane of its system; the system where it stands in options. */
function spotOf(tree: FileTree, { systems }: Piece, { bar, ending }: Alone): Spot {
  const system = systems[bar.system];
  const block = system?.block ?? 0;
  const index = bar.index - (system?.firstBar ?? 0);
  for (const [lane, { tree: typed }] of (tree.blocks[block]?.lanes ?? []).entries()) {
    const found = typed.segments[index]?.items.find((item) => isEnding(item, ending));
    if (found !== undefined) return { block, lane, pos: found.pos, len: found.len };
  }
  return { block, statement: 0, pos: 0, len: 'system'.length };
}

export const endingsAlone = checkOfWritten('endings-alone', ['tree', 'score'], ({ tree, score }) =>
  score.pieces.flatMap((piece) =>
    alone(piece).map((one) => {
      const { bar, ending, missing } = one;
      const where = missing < ending ? 'before' : 'after';
      return problemAt('ending-alone', spotOf(tree, piece, one), { bar: bar.number, ending, missing, where });
    }),
  ),
);
