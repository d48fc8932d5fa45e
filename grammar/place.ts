/** From places in a statement or lane to places in the file. */
import type { Position, Range } from './findings/finding';
import type { Block, FileTree, Placed, Span } from './tree';

/** The last of so many indices that is low enough, where all below it are, too; 0 if none is. */
function lastLowEnough(count: number, isLowEnough: (index: number) => boolean): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (isLowEnough(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Index of the last element that is not above the value; 0 if none. */
export const indexAtOrBelow = (sorted: readonly number[], value: number): number =>
  lastLowEnough(sorted.length, (index) => (sorted[index] ?? 0) <= value);

/** Index of the block in which an offset lies; blank lines and comments belong to the block above. */
export const blockAt = ({ blocks }: Pick<FileTree, 'blocks'>, offset: number): number =>
  lastLowEnough(blocks.length, (index) => (blocks[index]?.offset ?? 0) <= offset);

/** Offset in the file of a place in the joined text of a statement or lane. */
export function offsetIn(
  block: Pick<Block, 'offset'>,
  placed: Placed<{ readonly joints: readonly number[] }>,
  pos: number,
): number {
  const line = indexAtOrBelow(placed.tree.joints, pos);
  return block.offset + (placed.starts[line] ?? 0) + pos - (placed.tree.joints[line] ?? 0);
}

/** Offsets in the file of a stretch of a joined text. It may run over several lines: its last character is found by itself. */
export function stretchIn(
  block: Pick<Block, 'offset'>,
  placed: Placed<{ readonly joints: readonly number[] }>,
  { pos, len }: Span,
): { readonly start: number; readonly end: number } {
  const start = offsetIn(block, placed, pos);
  return { start, end: len === 0 ? start : offsetIn(block, placed, pos + len - 1) + 1 };
}

/**
 * The place in the joined text of a statement or lane that an offset in the file means; one between its lines is taken for the
 * end of the line above, one before it is undefined.
 */
export function posIn(
  block: Pick<Block, 'offset'>,
  { tree, starts }: Placed<{ readonly joints: readonly number[]; readonly text: string }>,
  offset: number,
): number | undefined {
  const inBlock = offset - block.offset;
  if (inBlock < (starts[0] ?? 0)) return undefined;
  const line = indexAtOrBelow(starts, inBlock);
  const end = (tree.joints[line + 1] ?? tree.text.length + 1) - 1;
  return Math.min((tree.joints[line] ?? 0) + inBlock - (starts[line] ?? 0), end);
}

/** Line and column (both from 1, columns in UTF-16 units) of an offset. */
export function positionAt(tree: FileTree, offset: number): Position {
  const line = indexAtOrBelow(tree.lineStarts, offset);
  return { offset, line: line + 1, column: offset - (tree.lineStarts[line] ?? 0) + 1 };
}

export const rangeAt = (tree: FileTree, start: number, end: number): Range => ({
  start: positionAt(tree, start),
  end: positionAt(tree, end),
});
