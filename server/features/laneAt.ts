/** What lane stands at a place of the file. */
import { indexAtOrBelow } from '../../grammar/place';
import type { Block, FileTree, PlacedLane } from '../../grammar/tree';

export interface LanePlace {
  /** Index in the tree's blocks. */
  readonly block: number;
  /** Index in the block's lanes. */
  readonly lane: number;
  readonly placed: PlacedLane;
  /** In the lane's joined text. */
  readonly pos: number;
}

/** The block in which an offset stands. */
export const blockAt = (tree: FileTree, offset: number): number =>
  indexAtOrBelow(
    tree.blocks.map((block) => block.offset),
    offset,
  );

/** The lane on whose music an offset stands, its name and opening barline left out; undefined where there is none. */
export function laneAt(tree: FileTree, offset: number): LanePlace | undefined {
  const index = blockAt(tree, offset);
  const block = tree.blocks[index];
  if (block === undefined) return undefined;
  for (const [lane, placed] of block.lanes.entries()) {
    const pos = posIn(block, placed, offset);
    if (pos !== undefined) return { block: index, lane, placed, pos };
  }
  return undefined;
}

/** The place in a lane's joined text; undefined if the offset is on none of its lines. */
function posIn(block: Block, { starts, tree: { joints, text } }: PlacedLane, offset: number): number | undefined {
  for (const [line, start] of starts.entries()) {
    const from = block.offset + start;
    const joint = joints[line] ?? 0;
    const length = (joints[line + 1] ?? text.length + 1) - 1 - joint;
    if (offset >= from && offset <= from + length) return joint + offset - from;
  }
  return undefined;
}
