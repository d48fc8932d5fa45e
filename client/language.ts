/** Which documents are ours. */
import {
  l10n,
  type Position,
  TabInputText,
  TabInputTextDiff,
  type TextDocument,
  type TextEditor,
  Uri,
  window,
  workspace,
} from 'vscode';

export const LANGUAGE = 'bentside';

export const isOurs = (document: TextDocument): boolean => document.languageId === LANGUAGE;

/** The editor in front, if it shows a score. */
export function scoreEditor(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor !== undefined && isOurs(editor.document) ? editor : undefined;
}

/**
 * The score in front; where something else is in front, the walkthrough say, one that is in view or else open: of several the
 * user picks one. Who has none is told.
 */
export async function scoreAtHand(): Promise<TextDocument | undefined> {
  const front = scoreEditor()?.document;
  if (front !== undefined) return front;
  const open = workspace.textDocuments.filter((document) => isOurs(document) && hasTab(document));
  const inView = open.filter((document) => window.visibleTextEditors.some((editor) => editor.document === document));
  const [first, ...others] = inView.length > 0 ? inView : open;
  if (first === undefined) void window.showInformationMessage(l10n.t('Open a score first.'));
  return first === undefined || others.length === 0 ? first : pickScore([first, ...others]);
}

/** It is open for the user: neither read for somebody else nor the former side of a comparison. */
function hasTab({ uri }: TextDocument): boolean {
  const inputs = window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ input }) => input));
  return inputs.some((input) => {
    const shown = input instanceof TabInputText ? input.uri : input instanceof TabInputTextDiff && input.modified;
    return shown !== false && shown.toString() === uri.toString();
  });
}

async function pickScore(scores: readonly TextDocument[]): Promise<TextDocument | undefined> {
  const items = scores.map((score) => ({ label: workspace.asRelativePath(score.uri), score }));
  return (await window.showQuickPick(items, { title: l10n.t('Which score?') }))?.score;
}

/** A document as requests name it. */
export const named = (document: TextDocument): { readonly uri: string } => ({ uri: document.uri.toString() });

/** A place as requests say it: a worker is sent plain values alone. */
export const plain = ({ line, character }: Position): { readonly line: number; readonly character: number } => ({
  line,
  character,
});

/** Without its folder. */
export const fileName = ({ path }: Uri): string => path.slice(path.lastIndexOf('/') + 1);

/** The document at an address; undefined if the file is gone. */
export async function openDocument(uri: string): Promise<TextDocument | undefined> {
  try {
    return await workspace.openTextDocument(Uri.parse(uri));
  } catch {
    return undefined;
  }
}
