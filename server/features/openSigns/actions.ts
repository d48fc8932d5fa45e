/** The offers of the sign at a place as code actions. */
import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  type Position,
  type Range,
} from 'vscode-languageserver-types';
import type { FindingCode } from '../../../grammar/findings/catalogue';
import { isOfSign } from '../../document/decided';
import type { Project } from '../../workspace/project';
import { hereAt, isInside, pathTo } from '../nodes';
import { meets, offsetOfPosition, rangeOfOffsets } from '../place';
import { textEdits } from '../quickFixes';
import { listedAt } from './list';

/** What could not be played is mended; what is played can be accepted, or said otherwise. @param diagnostics at the place */
export function signActions(project: Project, { start }: Range, diagnostics: readonly Diagnostic[] = []): CodeAction[] {
  // To realise the score at each step of the caret would cost time, and most places are no sign.
  if (!isAtSign(project, start)) return [];
  const found = listedAt(project, start);
  if (found === undefined) return [];
  const isTold = found.item.findings.length > 0;
  const here = rangeOfOffsets(project.tree, found.start, found.end);
  const mended = diagnostics.filter(({ code, range }) => isOfSign({ code: code as FindingCode }) && meets(range, here));
  return found.offers().map(({ kind, title, detail, reason, changes }) => ({
    title: detail === '' ? title : `${title}: ${detail}`,
    ...(isTold && kind !== 'accept'
      ? { kind: CodeActionKind.QuickFix, diagnostics: mended }
      : { kind: CodeActionKind.RefactorRewrite }),
    edit: { changes: { [project.file]: textEdits(project, changes(reason)) } },
  }));
}

function isAtSign({ tree }: Project, position: Position): boolean {
  const offset = offsetOfPosition(tree, position);
  const here = hereAt(tree, offset);
  if (here === undefined || !isInside(here, offset)) return false;
  return pathTo(here).some((node) => node.what === 'mark' && node.mark.form.type === 'sign');
}
