/** What can be folded away: the head's runs of statements, pages, systems, long statements, runs of comments. */
import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver-types';
import type { Block, FileTree } from '../../grammar/tree';

export function foldingRanges(tree: FileTree): FoldingRange[] {
  return [...pages(tree), ...tree.blocks.flatMap((block) => inBlock(block)), ...comments(tree)];
}

const fold = (startLine: number, endLine: number, kind?: FoldingRangeKind): FoldingRange[] =>
  endLine > startLine ? [{ startLine, endLine, ...(kind === undefined ? {} : { kind }) }] : [];

/** The last line of a block that is neither blank nor a comment. */
const lastLine = (block: Block): number =>
  block.line + Math.max(0, ...[...block.statements, ...block.lanes].map(({ lines }) => lines.at(-1) ?? 0));

function inBlock(block: Block): FoldingRange[] {
  const whole = block.kind === 'system' ? fold(block.line, lastLine(block)) : [];
  const statements = block.kind === 'system' ? [] : block.statements;
  return [
    ...whole,
    ...statements.flatMap(({ lines }) => fold(block.line + (lines[0] ?? 0), block.line + (lines.at(-1) ?? 0))),
  ];
}

/** From each `page` or `piece` to the next. */
function pages(tree: FileTree): FoldingRange[] {
  const begins = (keywords: readonly string[]): number[] =>
    tree.blocks.flatMap((block) =>
      block.statements
        .filter(({ tree: { statement } }) => keywords.includes(statement.keyword))
        .map(({ lines }) => block.line + (lines[0] ?? 0)),
    );
  const last = Math.max(0, ...tree.blocks.map(lastLine));
  const upToNext = (starts: readonly number[], ends: readonly number[]): FoldingRange[] =>
    starts.flatMap((start) => {
      const next = ends.find((line) => line > start);
      return fold(start, next === undefined ? last : next - 1, FoldingRangeKind.Region);
    });
  return [...upToNext(begins(['piece']), begins(['piece'])), ...upToNext(begins(['page']), begins(['page', 'piece']))];
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
