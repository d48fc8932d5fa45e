/** What can be typed at the caret: it knows where it stands. */
import { type CompletionItem, type CompletionList, MarkupKind, type Position } from 'vscode-languageserver-types';
import { tablesNamed } from '../signs/rows';
import type { Project } from '../workspace/project';
import { completeLane } from './completeLane';
import { beginningOfLine, completeLine } from './completeLine';
import { completeStatement } from './completeStatement';
import { type Here, hereAt, isInside } from './nodes';
import { offsetOfPosition, positionOfOffset } from './place';
import type { Proposal } from './proposal';
import { playedBy, shapesDrawn } from './signs';

/** Typed, these open the list; never a space, the end of a line or a barline, so that notes can be typed fast. */
export const TRIGGERS = ["'", '(', '{', '<', '*', ':'];

/** @param triggered whether a sign of {@link TRIGGERS} was typed, rather than a word or a wish for the list */
export function completion(project: Project, position: Position, triggered: boolean): CompletionList {
  const { tree } = project;
  const offset = offsetOfPosition(tree, position);
  const lineStart = tree.lineStarts[position.line] ?? offset;
  const line = tree.text.slice(lineStart, offset);
  const proposals = isInCommentOrString(line) ? [] : proposalsAt(project, offset, line, triggered);
  return { isIncomplete: false, items: proposals.map((one, index) => itemOf(project, one, offset, index)) };
}

/** What stands before the caret on its line ends inside a comment or a quoted text. */
export function isInCommentOrString(line: string): boolean {
  let isQuoted = false;
  for (let at = 0; at < line.length; at++) {
    if (line[at] === '"') isQuoted = !isQuoted;
    else if (!isQuoted && line.startsWith('//', at)) return true;
  }
  return isQuoted;
}

function proposalsAt(project: Project, offset: number, line: string, triggered: boolean): readonly Proposal[] {
  const here = hereAt(project.tree, offset);
  const beginning = beginningOfLine(line, here?.block);
  const begins = beginning === undefined ? [] : completeLine(project, here?.block, beginning, offset);
  if (triggered && beginning !== undefined) return [];
  if (here === undefined) return begins;
  const { holder } = here;
  if (holder.kind === 'lane') {
    const isNotes = holder.placed.tree.kind === 'lane' && isInside(here, offset);
    return isNotes && beginning === undefined ? completeLane(project, here, triggered) : begins;
  }
  const text = textBefore(here, offset, line);
  return [...begins, ...(text === undefined ? [] : completeStatement(project, text))];
}

/** What the statement says before the caret; on an indented line below that is nothing yet, it may go on. */
function textBefore(here: Here, offset: number, line: string): string | undefined {
  const { text } = here.holder.placed.tree;
  const isBlank = line.trim() === '';
  const isIndented = /^[ \t]/.test(line);
  if (isIndented && (isBlank || !isInside(here, offset))) return `${text}\n${line.trimStart()}`;
  const isKeyword = /^\S*$/.test(line);
  return isKeyword || !isInside(here, offset) ? undefined : text.slice(0, here.pos);
}

function itemOf({ tree, file }: Project, proposal: Proposal, offset: number, index: number): CompletionItem {
  const { label, kind, detail, documentation, insert = label, isSnippet, replaces, sign } = proposal;
  return {
    label,
    kind,
    // In the order in which they were proposed.
    sortText: `${index}`.padStart(5, '0'),
    ...(detail === undefined ? {} : { detail }),
    ...(documentation === undefined ? {} : { documentation: { kind: MarkupKind.Markdown, value: documentation } }),
    ...(isSnippet ? { insertTextFormat: 2 } : {}),
    ...(proposal.filter === undefined ? {} : { filterText: proposal.filter }),
    ...(proposal.isFirst ? { preselect: true } : {}),
    ...(sign === undefined ? {} : { data: { file, sign } }),
    textEdit: {
      range: { start: positionOfOffset(tree, offset - replaces), end: positionOfOffset(tree, offset) },
      newText: insert,
    },
  };
}

/** Of signs the tables tell much, and are asked only when one is looked at. */
export function resolved(item: CompletionItem, { environment }: Project): CompletionItem {
  const { sign } = item.data as { readonly sign: string };
  const shorts = shapesDrawn(sign, environment).map(({ short }) => short);
  const told = tablesNamed(environment).flatMap((table) =>
    playedBy(table, shorts, environment).map((row) => `${table}: ${row}`),
  );
  return told.length === 0 ? item : { ...item, documentation: { kind: MarkupKind.Markdown, value: told.join('\n\n') } };
}
