/** The order in which sections are played against the repeats that the source draws. */
import { allOf } from '../../grammar/statements/read';
import type { FileTree } from '../../grammar/tree';
import { repeatsAfter, repeatsBefore } from '../score/playing';
import type { Piece, Section } from '../score/score';
import { checkOfWritten, problemAt, type Spot } from './check';

/** The dots at either end of a section that say that it is played again. */
function dotsAround(
  { bars }: Piece,
  { firstBar, endBar }: Section,
): { readonly start: boolean; readonly end: boolean } {
  const closing = bars[endBar - 1]?.closing?.shape;
  return {
    start: repeatsAfter(bars[firstBar]?.opening?.shape) || repeatsAfter(bars[firstBar - 1]?.closing?.shape),
    end: repeatsBefore(closing),
  };
}

/** A repeat within a section says something of a part of it. */
const hasInnerRepeat = ({ bars }: Piece, { firstBar, endBar }: Section): boolean =>
  bars
    .slice(firstBar, endBar - 1)
    .some(({ closing }) => repeatsBefore(closing?.shape) || repeatsAfter(closing?.shape)) ||
  bars.slice(firstBar + 1, endBar).some(({ opening }) => repeatsAfter(opening?.shape));

/** How often a section is played when its turn first comes. */
function playings(order: readonly string[], name: string): number {
  const first = order.indexOf(name);
  if (first < 0) return 0;
  const next = order.findIndex((other, index) => index > first && other !== name);
  return (next < 0 ? order.length : next) - first;
}

/** The name in the `order` statement of a piece. */
function nameInOrder(tree: FileTree, order: readonly string[], name: string): Spot | undefined {
  for (const [block, { statements }] of tree.blocks.entries()) {
    for (const [statement, placed] of statements.entries()) {
      const { keyword, args } = placed.tree.statement;
      const names = keyword === 'order' ? allOf(args, 'name') : [];
      const at =
        names.map(({ text }) => text).join(' ') === order.join(' ')
          ? names.find(({ text }) => text === name)
          : undefined;
      if (at !== undefined) return { block, statement, pos: at.pos, len: at.len };
    }
  }
  return undefined;
}

// A reading may leave out repeats as it likes.
export const orderAgainstRepeats = checkOfWritten('order-against-repeats', ['tree', 'score'], ({ tree, score }) =>
  score.pieces.flatMap((piece) =>
    piece.sections.flatMap((section) => {
      const { order = [] } = piece;
      if (section.within !== undefined || playings(order, section.name) !== 1 || hasInnerRepeat(piece, section))
        return [];
      const { start, end } = dotsAround(piece, section);
      const at = nameInOrder(tree, order, section.name);
      if (at === undefined || (!start && !end)) return [];
      const where = [...(start ? ['begins'] : []), ...(end ? ['ends'] : [])].join(' and ');
      return [problemAt('order-against-repeats', at, { section: section.name, where })];
    }),
  ),
);
