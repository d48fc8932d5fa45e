/** Which documents are ours. */
import { type Position, type TextDocument, type TextEditor, window } from 'vscode';

export const LANGUAGE = 'bentside';

export const isOurs = (document: TextDocument): boolean => document.languageId === LANGUAGE;

/** The editor in front, if it shows a score. */
export function scoreEditor(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor !== undefined && isOurs(editor.document) ? editor : undefined;
}

/** A document as requests name it. */
export const named = (document: TextDocument): { readonly uri: string } => ({ uri: document.uri.toString() });

/** A place as requests say it: a worker is sent plain values alone. */
export const plain = ({ line, character }: Position): { readonly line: number; readonly character: number } => ({
  line,
  character,
});
