/** The formatter: the same that the command line has. */
import type { Range, TextEdit } from 'vscode-languageserver-types';
import type { Block, FileTree } from '../../grammar/tree';
import { aligned } from '../workspace/aligned';
import type { Project } from '../workspace/project';
import { positionOfOffset, rangeOfOffsets } from './place';

/** What must change for the text to be laid out: an edit for each run of lines that differ. */
export function formatting({ file, tree }: Project): TextEdit[] {
  return lineEdits(tree, aligned(file, tree.text).text);
}

/** The same of the lines of a range; systems are laid out as wholes, so that columns never disagree. */
export function rangeFormatting(project: Project, range: Range): TextEdit[] {
  const { tree } = project;
  const { start, end } = range;
  // Whoever selects whole lines ends at the beginning of the next one.
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  const touched = tree.blocks
    .map((block) => linesOf(tree, block))
    .filter(({ from, to }) => from <= last && start.line <= to);
  const isTouched = (line: number): boolean => touched.some(({ from, to }) => from <= line && line <= to);
  return formatting(project).filter((edit) => isTouched(edit.range.start.line));
}

/** First and last line of a block. */
const linesOf = (tree: FileTree, { line, offset, length }: Block): { readonly from: number; readonly to: number } => ({
  from: line,
  to: positionOfOffset(tree, offset + Math.max(length - 1, 0)).line,
});

const withEnds = (text: string): string[] => text.match(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g) ?? [];

/**
 * The formatter only takes blank lines away and changes lines in their place, so that going through both texts side by side
 * finds what belongs together.
 */
function lineEdits(tree: FileTree, laidOut: string): TextEdit[] {
  const [old, fresh] = [withEnds(tree.text), withEnds(laidOut)];
  const edits: TextEdit[] = [];
  let [at, offset] = [0, 0];
  for (const line of old) {
    const next = fresh[at];
    const end = offset + line.length;
    const isDropped = line.trim() === '' && next?.trim() !== '';
    if (!isDropped) at++;
    const text = isDropped ? '' : (next ?? '');
    if (text !== line) edits.push({ range: rangeOfOffsets(tree, offset, end), newText: text });
    offset = end;
  }
  return edits;
}
