/** A sign, an accidental or a tie made the editor's, and back. */
import { CodeActionKind } from 'vscode-languageserver-types';
import type { MarkForm, Spelling } from '../../../grammar/tree';
import { stretchOf } from '../nodes';
import { innermost, type Offer } from './refactoring';

export const makeEditors: Offer = ({ here, path }) => {
  const mark = innermost(path, 'mark')?.mark;
  const member = innermost(path, 'member')?.member;
  const made = mark === undefined ? member && spelling(member.spelling) : markText(mark.form);
  const at = mark ?? member;
  if (made === undefined || at === undefined) return undefined;
  const typed = mark?.form.text ?? member?.spelling.text ?? '';
  const { start } = stretchOf(here, at);
  const from = start + Math.max(here.holder.placed.tree.text.slice(at.pos, at.pos + at.len).indexOf(typed), 0);
  return {
    title: made.isEditors ? "Make it the editor's" : "Make it the source's",
    kind: CodeActionKind.RefactorRewrite,
    changes: [{ offset: from, length: typed.length, text: made.text }],
  };
};

interface Made {
  readonly text: string;
  readonly isEditors: boolean;
}

/** `'zz?` becomes `'[zz]?`. */
function markText({ text, name, editors, openEnded, type }: MarkForm): Made | undefined {
  if (type === 'curveEnd' || type === 'weight') return undefined;
  const core = `${name}${openEnded ? '~' : ''}`;
  const [typed, wished] = editors ? [`'[${core}]`, `'${core}`] : [`'${core}`, `'[${core}]`];
  return text.startsWith(typed) ? { text: wished + text.slice(typed.length), isEditors: !editors } : undefined;
}

/** `f#5` becomes `f[#]5`; a note without an accidental has nothing that could be the editor's. */
function spelling({ text, letter, accidental, editors, cautionary }: Spelling): Made | undefined {
  const sign = accidental ?? editors;
  if (sign === undefined || cautionary !== undefined || (accidental !== undefined && editors !== undefined))
    return undefined;
  const [typed, wished] =
    editors === undefined ? [`${letter}${sign}`, `${letter}[${sign}]`] : [`${letter}[${sign}]`, `${letter}${sign}`];
  return { text: wished + text.slice(typed.length), isEditors: editors === undefined };
}
