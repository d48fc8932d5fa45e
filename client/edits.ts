/** Changes of a text that the server has thought of. */
import { Range, type TextDocument, WorkspaceEdit, workspace } from 'vscode';
import type { Range as LspRange, TextEdit } from 'vscode-languageserver-types';

export const rangeOf = ({ start, end }: LspRange): Range =>
  new Range(start.line, start.character, end.line, end.character);

/** Makes them in a document, all in one step that can be undone. */
export async function applyEdits(document: TextDocument, edits: readonly TextEdit[]): Promise<void> {
  const changes = new WorkspaceEdit();
  for (const { range, newText } of edits) changes.replace(document.uri, rangeOf(range), newText);
  await workspace.applyEdit(changes);
}
