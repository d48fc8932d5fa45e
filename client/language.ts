/** Which documents are ours. */
import { l10n, type Position, type TextDocument, type TextEditor, Uri, window, workspace } from 'vscode';

export const LANGUAGE = 'bentside';

export const isOurs = (document: TextDocument): boolean => document.languageId === LANGUAGE;

/** The editor in front, if it shows a score. */
export function scoreEditor(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor !== undefined && isOurs(editor.document) ? editor : undefined;
}

/** The score in front; where something else is in front, the walkthrough say, one that is in view or open. Who has none is told. */
export function scoreAtHand(): TextDocument | undefined {
  const inView = window.visibleTextEditors.map(({ document }) => document);
  const found = scoreEditor()?.document ?? [...inView, ...workspace.textDocuments].find(isOurs);
  if (found === undefined) void window.showInformationMessage(l10n.t('Open a score first.'));
  return found;
}

/** A document as requests name it. */
export const named = (document: TextDocument): { readonly uri: string } => ({ uri: document.uri.toString() });

/** A place as requests say it: a worker is sent plain values alone. */
export const plain = ({ line, character }: Position): { readonly line: number; readonly character: number } => ({
  line,
  character,
});

/** The document at an address; undefined if the file is gone. */
export async function openDocument(uri: string): Promise<TextDocument | undefined> {
  try {
    return await workspace.openTextDocument(Uri.parse(uri));
  } catch {
    return undefined;
  }
}
