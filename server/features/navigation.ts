/** From a name to where it is given and where it is cited, also in files that are included. */
import {
  type DocumentHighlight,
  DocumentHighlightKind,
  type Location,
  type Position,
} from 'vscode-languageserver-types';
import type { FileTree } from '../../grammar/tree';
import type { Project } from '../workspace/project';
import { type NameAt, nameAt, namesakes } from './names';
import { offsetOfPosition, rangeOfOffsets } from './place';

export const nameHere = (project: Project, position: Position): NameAt | undefined =>
  nameAt(project, offsetOfPosition(project.tree, position));

const treeOf = (project: Project, file: string): FileTree =>
  project.included.find((one) => one.file === file)?.tree ?? project.tree;

const locationOf = (project: Project, { file, start, end }: NameAt): Location => ({
  uri: file,
  range: rangeOfOffsets(treeOf(project, file), start, end),
});

/** Where the name at a place is given; a place that several lanes share is given in each. */
export function definition(project: Project, position: Position): Location[] {
  const name = nameHere(project, position);
  if (name === undefined) return [];
  return namesakes(project, name)
    .filter(({ given }) => given)
    .map((one) => locationOf(project, one));
}

/** The name at a place, wherever it stands in the projects that share it. */
export function references(
  project: Project,
  position: Position,
  others: readonly Project[],
  withDeclaration: boolean,
): Location[] {
  const name = nameHere(project, position);
  if (name === undefined) return [];
  return sharedNamesakes(project, name, others)
    .filter(({ one }) => withDeclaration || !one.given)
    .map(({ one, home }) => locationOf(home, one));
}

/** Names that are the same in this project and in others that have the name from the same file, each once. */
export function sharedNamesakes(
  project: Project,
  name: NameAt,
  others: readonly Project[],
): { readonly one: NameAt; readonly home: Project }[] {
  const homes = new Set(namesakes(project, name).flatMap((one) => (one.given ? [one.file] : [])));
  const sharing = others.filter(
    (other) => other.file !== project.file && [other, ...other.included].some(({ file }) => homes.has(file)),
  );
  const found = new Map<string, { one: NameAt; home: Project }>();
  for (const home of [project, ...sharing]) {
    const own = namesakes(home, name);
    // Another file may give the name anew: then it means something else there.
    if (!own.some((one) => one.given && homes.has(one.file))) continue;
    for (const one of own) found.set(`${one.file} ${one.start} ${one.end}`, { one, home });
  }
  if (homes.size === 0) for (const one of namesakes(project, name)) found.set(`${one.start}`, { one, home: project });
  return [...found.values()];
}

/** The name at a place in its own file. */
export function highlights(project: Project, position: Position): DocumentHighlight[] {
  const name = nameHere(project, position);
  if (name === undefined) return [];
  return namesakes(project, name)
    .filter(({ file }) => file === project.file)
    .map((one) => ({
      range: rangeOfOffsets(project.tree, one.start, one.end),
      kind: one.given ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
}
