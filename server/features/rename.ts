/** Names written anew wherever they stand, in all files that share them. */
import type { Position, Range, TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { isName, isReserved, type NameRole, readsAsNoteOrClef } from '../../grammar/vocabulary/names';
import type { Project } from '../workspace/project';
import { type NameAt, namesakes, type Space } from './names';
import { nameHere, sharedNamesakes } from './navigation';
import { rangeOfOffsets } from './place';

/** Why a name cannot be written anew, as a sentence for the user. */
export class CannotRename extends Error {}

/** Which rules a name of each space follows. */
const roles: Readonly<Record<Space, NameRole>> = {
  stave: 'stave',
  voice: 'voice',
  label: 'reading',
  place: 'place',
  note: 'note',
  editor: 'editor',
  table: 'table',
  temperament: 'temperament',
  section: 'section',
  instrument: 'instrument',
  manual: 'manual',
  shape: 'shape',
};

/** The name that would be written anew. @throws CannotRename where there is none, or it is not the file's own */
export function prepareRename(project: Project, position: Position): { range: Range; placeholder: string } {
  const name = renamed(project, position);
  return { range: rangeOfOffsets(project.tree, name.start, name.end), placeholder: name.name };
}

function renamed(project: Project, position: Position): NameAt {
  const name = nameHere(project, position);
  if (name === undefined) throw new CannotRename('There is no name here.');
  if (name.space === 'shape') throw new CannotRename(`“${name.name}” is the catalogue's name of a sign.`);
  if (!namesakes(project, name).some(({ given }) => given)) {
    throw new CannotRename(`“${name.name}” is given neither in this file nor in one that it includes.`);
  }
  return name;
}

/**
 * The edits that write a name anew wherever it stands.
 * @param others open projects that may share the name
 * @throws CannotRename where the name at the place cannot be another, or the new one cannot stand
 */
export function rename(
  project: Project,
  position: Position,
  newName: string,
  others: readonly Project[],
  versionOf: (file: string) => number | null,
): WorkspaceEdit {
  const name = renamed(project, position);
  check(project, name, newName);
  const edits = new Map<string, TextEdit[]>();
  for (const { one, home } of sharedNamesakes(project, name, others)) {
    const tree = home.included.find(({ file }) => file === one.file)?.tree ?? home.tree;
    const edit = { range: rangeOfOffsets(tree, one.start, one.end), newText: newName };
    edits.set(one.file, [...(edits.get(one.file) ?? []), edit]);
  }
  return {
    documentChanges: [...edits].map(([uri, all]) => ({ textDocument: { uri, version: versionOf(uri) }, edits: all })),
  };
}

function check(project: Project, name: NameAt, newName: string): void {
  const isLayer = name.name.includes('.');
  const role = isLayer ? 'layer' : roles[name.space];
  if (!isName(newName, role)) {
    throw new CannotRename(
      isLayer
        ? `A layer is named by its source and a number, such as K.2; “${newName}” is not.`
        : `“${newName}” is no name: a name is a letter, then letters, digits and _, without accents.`,
    );
  }
  if (isReserved(newName, role) || (role === 'stave' && readsAsNoteOrClef(newName))) {
    throw new CannotRename(`“${newName}” has a meaning of its own there.`);
  }
  const isTaken =
    newName !== name.name && namesakes(project, { space: name.space, name: newName }).some(({ given }) => given);
  if (isTaken) throw new CannotRename(`There is a ${name.space} “${newName}” already.`);
}
