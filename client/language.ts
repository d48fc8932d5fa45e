/** Which documents are ours. */
import { type TextDocument, type TextEditor, window } from 'vscode';

export const LANGUAGE = 'bentside';

export const isOurs = (document: TextDocument): boolean => document.languageId === LANGUAGE;

/** The editor in front, if it shows a score. */
export function scoreEditor(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor !== undefined && isOurs(editor.document) ? editor : undefined;
}

/** A document as requests name it. */
export const named = (document: TextDocument): { readonly uri: string } => ({ uri: document.uri.toString() });
