/**
 * What a sign that was just typed brings with it: a full bar closes itself, a custos stands before the barline, a dead key
 * gives its apostrophe back.
 */
import type { TextEdit } from 'vscode-languageserver-types';
import type { FindingCode } from '../../grammar/findings/catalogue';
import { indexAtOrBelow } from '../../grammar/place';
import type { Project } from '../workspace/project';
import { barFill } from './barFill';
import { isInCommentOrString } from './completion';
import { hereAt } from './nodes';
import { offsetOfPosition, rangeOfOffsets } from './place';
import type { TypedParams, TypedResult } from './protocol';

/** Slips that a keyboard makes and not its player. */
const KEYBOARD_SLIPS: ReadonlySet<FindingCode> = new Set(['dead-key', 'typographic-apostrophe']);

/** What is to be done after a sign was typed before a place; null as a rule. */
export function afterTyping(project: Project, { position, reading }: Omit<TypedParams, 'textDocument'>): TypedResult {
  const offset = offsetOfPosition(project.tree, position);
  const typed = project.tree.text.charAt(offset - 1);
  if (typed !== ' ') return apostrophe(project, offset);
  if (isInCommentOrString(lineBefore(project, offset))) return null;
  const barline = closingBarline(project, offset, reading);
  if (barline !== undefined) return { kind: 'barline', edits: [inserted(project, offset, `${barline} `)] };
  return custosAfterBarline(project, offset);
}

const inserted = ({ tree }: Project, offset: number, newText: string): TextEdit => ({
  range: rangeOfOffsets(tree, offset, offset),
  newText,
});

/** What stands on the same line before a place. */
const lineBefore = ({ tree: { text, lineStarts } }: Project, offset: number): string =>
  text.slice(lineStarts[indexAtOrBelow(lineStarts, offset)], offset);

/** What stands on the same line behind a place. */
function restOfLine(text: string, offset: number): string {
  const lineEnd = /\r|\n|$/g;
  lineEnd.lastIndex = offset;
  return text.slice(offset, lineEnd.exec(text)?.index);
}

/**
 * The barline that a space types at the end of a lane, directly after the last event of a full bar that has none yet: the one
 * that the lanes above have there.
 */
function closingBarline(project: Project, offset: number, reading: string): string | undefined {
  const { text } = project.tree;
  if (restOfLine(text, offset).trim() !== '' || /\s/.test(text.charAt(offset - 2))) return undefined;
  if (isBracketOpen(project, offset)) return undefined;
  const fill = barFill(project, offset, reading);
  if (fill?.isFull !== true || fill.segment.bar !== undefined || fill.segment.items.length === 0) return undefined;
  const { shape = '|', editors = false } = fill.closing ?? {};
  return editors ? `${shape}[]` : shape;
}

/** Whether a span or options are being typed, also over a barline: bars are not closed there by themselves. */
function isBracketOpen({ tree }: Project, offset: number): boolean {
  const here = hereAt(tree, offset);
  const problems = here?.holder.placed.tree.problems ?? [];
  return problems.some(({ code, pos }) => code === 'unclosed-bracket' && here !== undefined && pos < here.pos);
}

/** The last bar of a line closed itself, and then a custos is typed: it stands before the barline. */
function custosAfterBarline({ tree }: Project, offset: number): TypedResult {
  const [whole, barline = ''] = /(?<=\S )([|:]+(?:\[\])? )\(custos $/.exec(tree.text.slice(0, offset)) ?? [];
  if (whole === undefined || !/^\)?\s*$/.test(restOfLine(tree.text, offset))) return null;
  const start = offset - whole.length;
  return { kind: 'custos', edits: [{ range: rangeOfOffsets(tree, start, start + barline.length), newText: '' }] };
}

function apostrophe({ analysis, tree }: Project, offset: number): TypedResult {
  const slip = analysis
    .findings()
    .find(({ code, range }) => KEYBOARD_SLIPS.has(code) && range.start.offset < offset && offset <= range.end.offset);
  const edits = slip?.fixes[0]?.edits ?? [];
  if (edits.length === 0) return null;
  return {
    kind: 'apostrophe',
    edits: edits.map(({ offset: at, length, text }) => ({
      range: rangeOfOffsets(tree, at, at + length),
      newText: text,
    })),
  };
}
