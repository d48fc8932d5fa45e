/** A sign, an accidental or a tie made the editor's, and back. */
import { CodeActionKind } from 'vscode-languageserver-types';
import type { MarkForm, Member, Spelling, TieForm } from '../../../grammar/tree';
import { stretchOf } from '../nodes';
import { type Asked, innermost, type Offer } from './refactoring';

export const makeEditors: Offer = (asked) => {
  const found = signAt(asked);
  if (found?.made === undefined) return undefined;
  const { pos, typed, made } = found;
  const { start } = stretchOf(asked.here, { pos, len: typed.length });
  return {
    title: made.isEditors ? "Make it the editor's" : "Make it the source's",
    kind: CodeActionKind.RefactorRewrite,
    changes: [{ offset: start, length: typed.length, text: made.text }],
  };
};

interface Made {
  readonly text: string;
  readonly isEditors: boolean;
}

/** What is typed at a place of the lane, and what it would be as the other's. */
interface Found {
  readonly pos: number;
  readonly typed: string;
  readonly made: Made | undefined;
}

function signAt(asked: Asked): Found | undefined {
  const { path } = asked;
  const mark = innermost(path, 'mark')?.mark;
  if (mark !== undefined) return { pos: mark.pos, typed: mark.form.text, made: markText(mark.form) };
  const member = innermost(path, 'member')?.member;
  if (member !== undefined) return ofNote(asked, member);
  const item = innermost(path, 'item')?.item;
  if (item?.kind !== 'event' || item.tie === undefined) return undefined;
  return { pos: item.pos, typed: item.tie.text, made: tieText(item.tie) };
}

/** The tie of a note from where it begins, before it the note itself. */
function ofNote({ here }: Asked, { pos, len, spelling, tie }: Member): Found {
  const { text } = here.holder.placed.tree;
  // What leads a member of a chord to another stave stands before it.
  const start = pos + Math.max(text.slice(pos, pos + len).indexOf(spelling.text), 0);
  const end = start + spelling.text.length;
  return tie !== undefined && here.pos >= end
    ? { pos: end, typed: tie.text, made: tieText(tie) }
    : { pos: start, typed: spelling.text, made: noteText(spelling) };
}

/** `=?` becomes `[=]?`. */
function tieText({ text, editors }: TieForm): Made {
  const [typed, wished] = editors ? ['[=]', '='] : ['=', '[=]'];
  return { text: wished + text.slice(typed.length), isEditors: !editors };
}

/** `'zz?` becomes `'[zz]?`. */
function markText({ text, name, editors, openEnded, type }: MarkForm): Made | undefined {
  if (type === 'curveEnd' || type === 'weight') return undefined;
  const core = `${name}${openEnded ? '~' : ''}`;
  const [typed, wished] = editors ? [`'[${core}]`, `'${core}`] : [`'${core}`, `'[${core}]`];
  return text.startsWith(typed) ? { text: wished + text.slice(typed.length), isEditors: !editors } : undefined;
}

/** `f#5` becomes `f[#]5`; a note without an accidental has nothing that could be the editor's. */
function noteText({ text, letter, accidental, editors, cautionary }: Spelling): Made | undefined {
  const sign = accidental ?? editors;
  if (sign === undefined || cautionary !== undefined || (accidental !== undefined && editors !== undefined))
    return undefined;
  const [typed, wished] =
    editors === undefined ? [`${letter}${sign}`, `${letter}[${sign}]`] : [`${letter}[${sign}]`, `${letter}${sign}`];
  return { text: wished + text.slice(typed.length), isEditors: editors === undefined };
}
