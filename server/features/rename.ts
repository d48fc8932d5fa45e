/** Names written anew wherever they stand, in all files that share them. */
import type { Position, Range, TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import { isName, isReserved, type NameRole, readsAsNoteOrClef } from '../../grammar/vocabulary/names';
import { temperamentNames } from '../../grammar/vocabulary/temperaments';
import { builtInTables } from '../signs/tables';
import type { Project } from '../workspace/project';
import { type NameAt, namesakes, type Space, spacesOf } from './names';
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

/** Names that are there without being given. */
const builtIn: Readonly<Partial<Record<Space, readonly string[]>>> = {
  table: builtInTables,
  temperament: temperamentNames,
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
 * @param others projects that may share the name, open or not
 * @throws CannotRename where the name at the place cannot be another, or the new one cannot stand
 */
export function rename(
  project: Project,
  position: Position,
  newName: string,
  others: readonly Project[],
): WorkspaceEdit {
  const name = renamed(project, position);
  const shared = sharedNamesakes(project, name, others);
  check(name, newName, spacesOf(project, name), [...new Set([project, ...shared.map(({ home }) => home)])]);
  const changes: Record<string, TextEdit[]> = {};
  for (const { one, home } of shared) {
    const tree = home.included.find(({ file }) => file === one.file)?.tree ?? home.tree;
    const edits = changes[one.file] ?? [];
    edits.push({ range: rangeOfOffsets(tree, one.start, one.end), newText: newName });
    changes[one.file] = edits;
  }
  return { changes };
}

/**
 * Whether others that are not open may use the name as well: it is given in a file that is included, or that has no music and
 * so is there to be included.
 */
export function mayBeUsedElsewhere(project: Project, position: Position): boolean {
  const name = nameHere(project, position);
  const given = name === undefined ? [] : namesakes(project, name).filter((one) => one.given);
  if (given.length === 0) return false;
  const hasMusic = project.tree.blocks.some(({ kind }) => kind === 'system');
  return given.some(({ file }) => file !== project.file) || !hasMusic;
}

/** @param homes projects that share the name */
function check(name: NameAt, newName: string, spaces: readonly Space[], homes: readonly Project[]): void {
  const isLayer = name.name.includes('.');
  for (const role of isLayer ? (['layer'] as const) : spaces.map((space) => roles[space])) checkWord(newName, role);
  if (newName === name.name) return;
  if (builtIn[name.space]?.includes(newName))
    throw new CannotRename(`“${newName}” is a ${name.space} that is built in.`);
  const isGiven = (space: Space, wished: string): boolean =>
    homes.some((home) => namesakes(home, { space, name: wished }).some(({ given }) => given));
  if (spaces.some((space) => isGiven(space, newName))) {
    throw new CannotRename(`There is a ${called(name.space)} “${newName}” already.`);
  }
  const [source = ''] = newName.split('.');
  if (isLayer && !isGiven('label', source)) throw new CannotRename(`There is no source “${source}”.`);
}

/** Sources and readings share their names. */
const called = (space: Space): string => (space === 'label' ? 'source or reading' : space);

function checkWord(newName: string, role: NameRole): void {
  if (!isName(newName, role)) {
    throw new CannotRename(
      role === 'layer'
        ? `A layer is named by its source and a number, such as K.2; “${newName}” is not.`
        : `“${newName}” is no name: a name is a letter, then letters, digits and _, without accents.`,
    );
  }
  if (isReserved(newName, role) || (role === 'stave' && readsAsNoteOrClef(newName))) {
    throw new CannotRename(`“${newName}” has a meaning of its own there.`);
  }
}
