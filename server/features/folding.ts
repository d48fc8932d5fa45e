/** What can be folded away: movements, leaves, systems, statements of several lines, runs of comments. */
import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver-types';
import type { Block, FileTree } from '../../grammar/tree';
import { stretchesOf, textEnd } from './outline';
import { positionOfOffset } from './place';

export const foldingRanges = (tree: FileTree): FoldingRange[] => [
  ...stretchesOf(tree).flatMap(({ start, end }) =>
    fold(lineAt(tree, start), lineAt(tree, end), FoldingRangeKind.Region),
  ),
  ...tree.blocks.flatMap((block) => inBlock(tree, block)),
  ...comments(tree),
];

const lineAt = (tree: FileTree, offset: number): number => positionOfOffset(tree, offset).line;

const fold = (startLine: number, endLine: number, kind?: FoldingRangeKind): FoldingRange[] =>
  endLine > startLine ? [{ startLine, endLine, ...(kind === undefined ? {} : { kind }) }] : [];

function inBlock(tree: FileTree, block: Block): FoldingRange[] {
  if (block.kind === 'system') return fold(block.line, lineAt(tree, textEnd(block)));
  return block.statements.flatMap(({ lines }) => fold(block.line + (lines[0] ?? 0), block.line + (lines.at(-1) ?? 0)));
}

/** Lines that are comments and nothing else. */
function comments({ text, lineStarts }: FileTree): FoldingRange[] {
  const found: FoldingRange[] = [];
  let first: number | undefined;
  const isComment = (line: number): boolean =>
    /^[ \t]*\/\//.test(text.slice(lineStarts[line], lineStarts[line + 1] ?? text.length));
  for (let line = 0; line <= lineStarts.length; line++) {
    if (line < lineStarts.length && isComment(line)) first ??= line;
    else if (first !== undefined) {
      found.push(...fold(first, line - 1, FoldingRangeKind.Comment));
      first = undefined;
    }
  }
  return found;
}
