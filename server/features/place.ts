/** Between the editor's places (lines and columns from 0) and offsets in a file. */
import type { Position, Range } from 'vscode-languageserver-types';
import type { Range as FindingRange } from '../../grammar/findings/finding';
import { indexAtOrBelow } from '../../grammar/place';
import type { FileTree } from '../../grammar/tree';

/** The offset of a place; one beyond the text or its line is taken for the end. */
export function offsetOfPosition({ lineStarts, text }: FileTree, { line, character }: Position): number {
  const start = lineStarts[line];
  if (start === undefined) return text.length;
  return Math.min(start + character, lineEnd({ lineStarts, text }, line));
}

/** Where a line ends, its line feed left out. */
function lineEnd({ lineStarts, text }: Pick<FileTree, 'lineStarts' | 'text'>, line: number): number {
  let end = lineStarts[line + 1] ?? text.length;
  if (line + 1 < lineStarts.length) while (end > 0 && /[\r\n]/.test(text[end - 1] ?? '')) end--;
  return Math.max(end, lineStarts[line] ?? 0);
}

export function positionOfOffset({ lineStarts }: FileTree, offset: number): Position {
  const line = indexAtOrBelow(lineStarts, offset);
  return { line, character: offset - (lineStarts[line] ?? 0) };
}

export const rangeOfOffsets = (tree: FileTree, start: number, end: number): Range => ({
  start: positionOfOffset(tree, start),
  end: positionOfOffset(tree, end),
});

/** The place of a finding, whose lines and columns count from 1. */
export const editorRange = ({ start, end }: FindingRange): Range => ({
  start: { line: start.line - 1, character: start.column - 1 },
  end: { line: end.line - 1, character: end.column - 1 },
});

/** Whether two ranges share a sign or touch. */
export const meets = (a: Range, b: Range): boolean => !isBefore(a.end, b.start) && !isBefore(b.end, a.start);

const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
