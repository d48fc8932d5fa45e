/** What grows around the caret: note, group, bar, lane, system, page. */
import type { Position, SelectionRange } from 'vscode-languageserver-types';
import type { FileTree } from '../../grammar/tree';
import { hereAt, pathTo, stretchOf } from './nodes';
import { stretchesOf, textEnd } from './outline';
import { offsetOfPosition, rangeOfOffsets } from './place';

interface Stretch {
  readonly start: number;
  readonly end: number;
}

export const selectionRanges = (tree: FileTree, positions: readonly Position[]): SelectionRange[] =>
  positions.map((position) => rangesAt(tree, offsetOfPosition(tree, position)));

const rangesAt = (tree: FileTree, offset: number): SelectionRange =>
  chain(
    tree,
    around(tree, offset).filter(({ start, end }) => start <= offset && offset <= end),
  );

/** What may lie around an offset, the outermost first: of a place beside the music what is nearest does not. */
function around(tree: FileTree, offset: number): Stretch[] {
  const whole = { start: 0, end: tree.text.length };
  const here = hereAt(tree, offset);
  const pages = stretchesOf(tree).filter(({ start, end }) => start <= offset && offset <= end);
  if (here === undefined) return [whole, ...pages];
  const { block, holder } = here;
  const system = block.kind === 'system' ? [{ start: block.offset, end: textEnd(block) }] : [];
  const nodes = pathTo(here).map((node) => stretchOf(here, node));
  const named =
    holder.kind === 'lane' ? [{ start: block.offset + holder.placed.name.pos, end: nodes[0]?.end ?? offset }] : [];
  return [whole, ...pages, ...system, ...named, ...nodes];
}

/** Each must lie in the one before it and be smaller. */
function chain(tree: FileTree, stretches: readonly Stretch[]): SelectionRange {
  let range: SelectionRange | undefined;
  let last: Stretch | undefined;
  for (const one of stretches) {
    const isInside = last === undefined || (last.start <= one.start && one.end <= last.end);
    const isSame = last !== undefined && last.start === one.start && last.end === one.end;
    if (!isInside || isSame) continue;
    range = { range: rangeOfOffsets(tree, one.start, one.end), ...(range === undefined ? {} : { parent: range }) };
    last = one;
  }
  return range ?? { range: rangeOfOffsets(tree, 0, tree.text.length) };
}
