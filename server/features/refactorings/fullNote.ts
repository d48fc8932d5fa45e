/** A quick annotation made a full one, with a name that other places can cite. */
import { CodeActionKind } from 'vscode-languageserver-types';
import { stretchIn } from '../../../grammar/place';
import type { FileTree } from '../../../grammar/tree';
import { declaredNames } from '../../score/environment';
import { stretchOf } from '../nodes';
import { freeName, innermost, type Offer, put } from './refactoring';

export const fullNote: Offer = ({ project, here, path }) => {
  const annotation = innermost(path, 'annotation')?.annotation;
  if (annotation?.text === undefined) return undefined;
  const name = freeName('n', new Set(declaredNames(project.environment).notes));
  const { start, end } = stretchOf(here, annotation);
  const text = annotation.text.replaceAll('"', '""');
  return {
    title: `Make a full annotation, ${name}`,
    kind: CodeActionKind.RefactorExtract,
    changes: [
      put(afterNotes(project.tree), `note ${name} : "${text}"\n`),
      { offset: start, length: end - start, text: `*${name}` },
    ],
  };
};

/** The line after the last `note` of the head; without one the line on which the first system begins. */
function afterNotes(tree: FileTree): number {
  const [head] = tree.blocks;
  const last = head?.statements.filter(({ tree: { statement } }) => statement.keyword === 'note').at(-1);
  if (head === undefined || last === undefined) {
    return tree.blocks.find(({ kind }) => kind === 'system')?.offset ?? tree.text.length;
  }
  const { end } = stretchIn(head, last, { pos: 0, len: last.tree.text.length });
  return tree.lineStarts.find((start) => start > end) ?? tree.text.length;
}
