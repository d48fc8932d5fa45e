/** The offers of the sign at a place as code actions. */
import { type CodeAction, CodeActionKind, type Position, type Range } from 'vscode-languageserver-types';
import type { Project } from '../../workspace/project';
import { hereAt, isInside, pathTo } from '../nodes';
import { offsetOfPosition } from '../place';
import { editsOf, listedAt } from './list';

/** What could not be played is mended; what is played can be accepted, or said otherwise. */
export function signActions(project: Project, { start }: Range): CodeAction[] {
  // To realise the score at each step of the caret would cost time, and most places are no sign.
  if (!isAtSign(project, start)) return [];
  const found = listedAt(project, start);
  const isTold = found !== undefined && found.item.findings.length > 0;
  return (found?.offers() ?? []).map(({ kind, title, detail, reason, changes }) => ({
    title: detail === '' ? title : `${title}: ${detail}`,
    kind: isTold && kind !== 'accept' ? CodeActionKind.QuickFix : CodeActionKind.RefactorRewrite,
    edit: { changes: { [project.file]: editsOf(project, changes(reason)) } },
  }));
}

function isAtSign({ tree }: Project, position: Position): boolean {
  const offset = offsetOfPosition(tree, position);
  const here = hereAt(tree, offset);
  if (here === undefined || !isInside(here, offset)) return false;
  return pathTo(here).some((node) => node.what === 'mark' && node.mark.form.type === 'sign');
}
