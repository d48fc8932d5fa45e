/** What a statement, clause, change or recipe takes, and which part comes next. */
import { MarkupKind, type Position, type SignatureHelp } from 'vscode-languageserver-types';
import { type Expected, expectedInChange, expectedInStatement } from '../../grammar/statements/parser';
import type { Part } from '../../grammar/vocabulary/parts';
import { changes, lookUp, recipeForms, statements } from '../../grammar/vocabulary/statements';
import type { Project } from '../workspace/project';
import { staveBeforeClef } from './completeStatement';
import { isInCommentOrString } from './completion';
import { hereAt, isInside } from './nodes';
import { offsetOfPosition } from './place';

/** Typed, these show it; a space only goes on with one that is shown. */
export const SIGNATURE_TRIGGERS = ['(', ':', '='];
export const SIGNATURE_RETRIGGERS = [' ', ','];

interface Form {
  readonly name: string;
  readonly describe: string;
  readonly parts: readonly Part[];
}

export function signatureHelp(project: Project, position: Position): SignatureHelp | null {
  const { tree } = project;
  const offset = offsetOfPosition(tree, position);
  const here = hereAt(tree, offset);
  const line = tree.text.slice(tree.lineStarts[position.line], offset);
  if (here === undefined || !isInside(here, offset) || isInCommentOrString(line)) return null;
  const before = here.holder.placed.tree.text.slice(0, here.pos);
  if (here.holder.kind === 'lane') return inChange(before);
  const [keyword = ''] = /^[\w-]+/.exec(before) ?? [];
  const entry = lookUp(statements, keyword);
  if (entry === undefined) return null;
  const text = beforeWord(before);
  const expected = expectedInStatement(text);
  if (staveBeforeClef(project, text, expected) !== undefined) return clefHelp(formsOf('system', entry));
  return helpOf(expected, formsOf(keyword, entry));
}

/** Of a head: which of its words are a stave and its clef is known only when both stand there. */
function clefHelp(forms: readonly Form[]): SignatureHelp | null {
  const clef = forms.find(({ name }) => name === 'clef');
  return clef === undefined ? null : shown(clef, clef.parts.length - 1);
}

/** The part that is being typed is still the one expected. */
const beforeWord = (text: string): string => text.replace(/[^\s"(]+$/, '');

function inChange(before: string): SignatureHelp | null {
  const text = /\([^()]*$/.exec(before)?.[0];
  const [, word = ''] = /^\((\w+)/.exec(text ?? '') ?? [];
  const entry = lookUp(changes, word);
  return text === undefined || entry === undefined
    ? null
    : helpOf(expectedInChange(beforeWord(text)), formsOf(word, entry));
}

function formsOf(name: string, { describe, parts, clauses }: (typeof changes)[string] & object): Form[] {
  const own = [
    { name, describe, parts },
    ...Object.entries(clauses).map(([clause, entry]) => ({
      name: clause,
      describe: entry.describe,
      parts: entry.parts,
    })),
  ];
  return [...own, ...own.flatMap((form) => form.parts.flatMap(formsWithin))];
}

/** Words that have parts of their own: `meantone` of a tuning. */
function formsWithin(part: Part): Form[] {
  if (part.kind === 'either') return part.forms.flatMap((parts) => parts.flatMap(formsWithin));
  if (part.kind === 'free') return [];
  return Object.entries(part.words).flatMap(([name, { describe, follow = [] }]) =>
    follow.length === 0 ? [] : [{ name, describe, parts: follow }, ...follow.flatMap(formsWithin)],
  );
}

/** The form whose part is expected next. */
function helpOf(expected: readonly Expected[], forms: readonly Form[]): SignatureHelp | null {
  if (expected.some(({ kind }) => kind === 'recipe')) return recipe;
  for (const one of expected) {
    const form = forms.find(({ parts }) => parts.some((part) => isMeant(part, one)));
    if (form !== undefined)
      return shown(
        form,
        form.parts.findIndex((part) => isMeant(part, one)),
      );
  }
  return null;
}

const isMeant = (part: Part, expected: Expected): boolean =>
  expected.kind === 'part' ? expected.part === part : expected.kind === 'word' && part.after === expected.word;

const partText = ({ after, optional, what }: Part): string => {
  const text = `${after === undefined ? '' : `${after} `}‹${what}›`;
  return optional ? `[${text}]` : text;
};

function shown({ name, describe, parts }: Form, active: number): SignatureHelp {
  const texts = parts.map(partText);
  return {
    signatures: [
      {
        label: [name, ...texts].join(' '),
        documentation: { kind: MarkupKind.Markdown, value: describe },
        parameters: texts.map((label) => ({ label })),
      },
    ],
    activeSignature: 0,
    activeParameter: active,
  };
}

const recipe: SignatureHelp = {
  signatures: [
    {
      label: 'on beat | before beat, steps [for SHARE | at SPEED], (steps) repeated, hold | rest',
      documentation: {
        kind: MarkupKind.Markdown,
        value: Object.entries(recipeForms)
          .map(([form, describe]) => `- \`${form}\`: ${describe}`)
          .join('\n'),
      },
      parameters: [],
    },
  ],
  activeSignature: 0,
};
