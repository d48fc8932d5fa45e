/**
 * The formatter: what sounds together stands together.
 *
 * In each system the bars of the lanes stand under one another and so do the names of the voices; clauses are parted by two
 * spaces, statements of one kind stand in columns, blank lines never stand in heaps. Lines stay as the writer broke them,
 * for in them he follows the source, and every comment stays in its place. What is not understood stands as it is, and so
 * does what lies between the comments `// align off` and `// align on`.
 */
import type { Problem } from './findings/finding';
import { spaces, widthOf } from './layout/columns';
import { laidLanes } from './layout/lanes';
import { type FileLine, fileLines, isBlank, isComment, type Laid, switchedOff } from './layout/lines';
import { lost } from './layout/same';
import { laidStatements } from './layout/statements';
import { parseFile } from './parse';
import type { FileTree } from './tree';

export interface Formatted {
  readonly text: string;
  /** Places count from the start of the file. */
  readonly problems: readonly Problem[];
}

/** Spaces before a comment that ends a line. */
const BEFORE_COMMENT = 2;

/** The lines of all statements and lanes that can be laid out. */
function laidLines(tree: FileTree, lines: readonly FileLine[], off: readonly boolean[]): Map<number, Laid> {
  return new Map(
    tree.blocks.flatMap((block) => [...laidStatements(block, lines, off), ...laidLanes(tree, block, lines, off)]),
  );
}

/** The column of the comments of lines of one kind that follow one another, by line. */
function commentColumns(laid: ReadonlyMap<number, Laid>): Map<number, number> {
  const columns = new Map<number, number>();
  const numbers = [...laid].flatMap(([line, { comment }]) => (comment === '' ? [] : [line])).sort((a, b) => a - b);
  let run: number[] = [];
  const close = (): void => {
    const column = run.reduce((most, line) => Math.max(most, widthOf(laid.get(line)?.body ?? '')), 0);
    for (const line of run) columns.set(line, column + BEFORE_COMMENT);
    run = [];
  };
  for (const line of numbers) {
    const before = run.at(-1);
    if (before !== undefined && (before !== line - 1 || laid.get(before)?.kind !== laid.get(line)?.kind)) close();
    run.push(line);
  }
  close();
  return columns;
}

function commentLine(text: string): string {
  return `${/^\s/.test(text) ? '  ' : ''}${text.trim()}`;
}

/** A text as it was read and as it would be laid out. */
export interface LaidOut {
  readonly tree: FileTree;
  readonly text: string;
}

/** The text with its lines laid out; nothing is proved about it yet. */
export function laidOut(given: string): LaidOut {
  const tree = parseFile(given);
  const lines = fileLines(tree);
  const off = switchedOff(lines);
  const laid = laidLines(tree, lines, off);
  const columns = commentColumns(laid);
  const usualEnd = lines.find(({ end }) => end !== '')?.end ?? '\n';
  const written = (line: FileLine, number: number): string => {
    if (off[number]) return line.text;
    const own = laid.get(number);
    if (own === undefined)
      return isBlank(line.text) ? '' : isComment(line.text) ? commentLine(line.text) : line.text.trimEnd();
    if (own.comment === '') return own.body;
    return own.body + spaces((columns.get(number) ?? 0) - widthOf(own.body)) + own.comment;
  };
  const kept: string[] = [];
  let blanks = 0;
  lines.forEach((line, number) => {
    blanks = !off[number] && isBlank(line.text) ? blanks + 1 : 0;
    if (blanks < 2) kept.push(written(line, number) + (line.end === '' ? usualEnd : line.end));
  });
  if (blanks > 0) kept.pop();
  return { tree, text: kept.join('') };
}

/**
 * A text laid out by `layOut`, if that keeps every sign, every comment and the tree, and a second time changes nothing;
 * otherwise the text as it is, with a finding that says why.
 */
export function proved(text: string, layOut: (text: string) => LaidOut): Formatted {
  const first = layOut(text);
  if (first.text === text) return { text, problems: [] };
  const second = layOut(first.text);
  const reason =
    lost(first.tree, second.tree) ?? (second.text === first.text ? undefined : 'it would change once more');
  if (reason === undefined) return { text: first.text, problems: [] };
  return { text, problems: [{ code: 'align-refused', pos: 0, len: 0, slots: { reason } }] };
}

/** The text laid out, or as it is with a finding where that would change what it says. */
export const formatFile = (text: string): Formatted => proved(text, laidOut);
