/** What a sign that was just typed brings with it: a full bar closes itself, a dead key gives its apostrophe back. */
import type { TextEdit } from 'vscode-languageserver-types';
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Project } from '../workspace/project';
import { barFill } from './barFill';
import { offsetOfPosition, rangeOfOffsets } from './place';
import type { TypedParams, TypedResult } from './protocol';

/** Slips that a keyboard makes and not its player. */
const KEYBOARD_SLIPS: ReadonlySet<FindingCode> = new Set(['dead-key', 'typographic-apostrophe']);

/** What is to be done after a sign was typed before a place; null as a rule. */
export function afterTyping(project: Project, { position, reading }: Omit<TypedParams, 'textDocument'>): TypedResult {
  const offset = offsetOfPosition(project.tree, position);
  const typed = project.tree.text.charAt(offset - 1);
  if (typed !== ' ') return apostrophe(project, offset);
  return closesBar(project, offset, reading) ? { kind: 'barline', edits: [inserted(project, offset, '| ')] } : null;
}

const inserted = ({ tree }: Project, offset: number, newText: string): TextEdit => ({
  range: rangeOfOffsets(tree, offset, offset),
  newText,
});

/** Whether the space stands at the end of a lane, directly after the last event of a full bar that has no barline yet. */
function closesBar(project: Project, offset: number, reading: string): boolean {
  const { text } = project.tree;
  const lineEnd = /\r|\n|$/g;
  lineEnd.lastIndex = offset;
  const rest = text.slice(offset, lineEnd.exec(text)?.index);
  if (rest.trim() !== '' || /\s/.test(text.charAt(offset - 2))) return false;
  const fill = barFill(project, offset, reading);
  return fill?.isFull === true && fill.segment.bar === undefined && fill.segment.items.length > 0;
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
