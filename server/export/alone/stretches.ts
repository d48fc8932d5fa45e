/** Changes of one lane's text, which count in its joined text, and where they stand in the file. */
import { stretchIn } from '../../../grammar/place';
import type { Barline, Block, LaneTree, Placed, Span } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';

/** What stands in the place of a stretch of a lane. */
export interface LaneChange extends Span {
  readonly text: string;
}

export const put = (pos: number, text: string): LaneChange => ({ pos, len: 0, text });
export const drop = (from: number, to: number): LaneChange => ({ pos: from, len: to - from, text: '' });

/** Where a barline ends, with what is glued to it. */
export const endOfGlued = ({ pos, len, suffixes }: Barline): number =>
  suffixes.reduce((end, one) => Math.max(end, one.pos + one.len), pos + len);

/** The same with the one that begins the next line. */
export const endOfBarline = (bar: Barline): number =>
  Math.max(endOfGlued(bar), ...(bar.again ?? []).map(({ pos, len }) => pos + len));

/** Strings, in which two strokes are no comment, and comments. */
const LITERALS = /"(?:[^"\n]|"")*"|\/\/.*/g;

const commentsOf = (text: string): string[] =>
  [...text.matchAll(LITERALS)].flatMap(([literal]) => (literal.startsWith('//') ? [literal.trimEnd()] : []));

/** A text without its comments, on one line. */
export const onOneLine = (text: string): string =>
  text
    .replace(LITERALS, (literal) => (literal.startsWith('//') ? '' : literal))
    .replaceAll('\n', ' ')
    .trim();

/**
 * Changes of a lane as changes of the file. One that reaches over several lines makes them one; their comments then stand
 * on lines of their own above it.
 */
export function inFile(
  text: string,
  block: Block,
  placed: Placed<LaneTree>,
  changes: readonly LaneChange[],
): TextChange[] {
  return changes.flatMap((change): TextChange[] => {
    const { start, end } = stretchIn(block, placed, change);
    const own: TextChange = { offset: start, length: end - start, text: change.text };
    const comments = commentsOf(text.slice(start, end));
    if (comments.length === 0) return [own];
    const line = text.lastIndexOf('\n', start - 1) + 1;
    return [{ offset: line, length: 0, text: comments.map((one) => `  ${one}\n`).join('') }, own];
  });
}

const lineEnd = (text: string, from: number): number => {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end;
};

/** Where the last line of a statement or lane ends in the file, with its comment. */
export const endOfLines = (text: string, { offset }: Block, { starts }: Pick<Placed<unknown>, 'starts'>): number =>
  lineEnd(text, offset + (starts.at(-1) ?? 0));

/** The lines of a statement or lane in the file, the first from a place of the block on, without their comments. */
export const linesOf = (
  { offset }: Block,
  { starts, tree }: Placed<{ readonly joints: readonly number[]; readonly text: string }>,
  from = starts[0] ?? 0,
): { readonly start: number; readonly end: number }[] =>
  starts.map((start, line) => {
    const text = tree.text.slice(tree.joints[line], (tree.joints[line + 1] ?? tree.text.length + 1) - 1);
    const [comment] = commentsOf(text);
    const length = comment === undefined ? text.length : text.lastIndexOf(comment);
    return { start: offset + (line === 0 ? from : start), end: offset + start + length };
  });

/**
 * Takes lines' contents away, and the lines where nothing else stands on them; a comment at the end of a line stays.
 * @param stretches in file offsets, each within one line
 */
export function cleared(
  text: string,
  stretches: readonly { readonly start: number; readonly end: number }[],
): TextChange[] {
  return stretches.map(({ start, end }) => {
    const from = text.lastIndexOf('\n', start - 1) + 1;
    const to = Math.min(text.length, lineEnd(text, end) + 1);
    const isAll = text.slice(from, start).trim() === '' && text.slice(end, to).trim() === '';
    return isAll ? { offset: from, length: to - from, text: '' } : { offset: start, length: end - start, text: '' };
  });
}
