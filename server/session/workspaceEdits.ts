/** Edits of texts as the client takes them. */
import type { WorkspaceEdit } from 'vscode-languageserver-types';

/** The version of a file for which edits were made; null if it is not open. */
export type VersionOf = (uri: string) => number | null;

/** Makes of edits by file those of versions, so that a client refuses them once a text has changed: for one that can. */
export function forVersions({ changes = {} }: WorkspaceEdit, versionOf: VersionOf): WorkspaceEdit {
  const all = Object.entries(changes);
  return { documentChanges: all.map(([uri, edits]) => ({ textDocument: { uri, version: versionOf(uri) }, edits })) };
}
