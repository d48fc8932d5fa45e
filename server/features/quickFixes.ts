/** Fixes of findings as quick fixes, one by one or all at once. */
import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  type Range,
  type TextEdit,
} from 'vscode-languageserver-types';
import type { AbsoluteFix, Finding } from '../../grammar/findings/finding';
import { together } from '../document/edits';
import type { Project } from '../workspace/project';
import { editorRange, meets, rangeOfOffsets } from './place';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.bentside`;

/** What a fix does to a file. */
const editsOf = ({ tree }: Project, fixes: readonly AbsoluteFix[]): TextEdit[] =>
  fixes
    .flatMap(({ edits }) => edits)
    .map(({ offset, length, text }) => ({ range: rangeOfOffsets(tree, offset, offset + length), newText: text }));

const mends = (finding: Finding, diagnostic: Diagnostic): boolean =>
  diagnostic.code === finding.code && meets(diagnostic.range, editorRange(finding.range));

/** The fixes of the findings that a range touches, each tied to what it mends; the first of a finding is the one meant. */
export function quickFixes(project: Project, range: Range, diagnostics: readonly Diagnostic[]): CodeAction[] {
  const here = project.analysis
    .findings()
    .filter((finding) => finding.fixes.length > 0 && meets(editorRange(finding.range), range));
  return here.flatMap((finding) =>
    finding.fixes.map((fix, index): CodeAction => {
      const mended = diagnostics.filter((diagnostic) => mends(finding, diagnostic));
      return {
        title: capital(fix.title),
        kind: CodeActionKind.QuickFix,
        ...(mended.length === 0 ? {} : { diagnostics: mended }),
        ...(index === 0 ? { isPreferred: true } : {}),
        edit: { changes: { [project.file]: editsOf(project, [fix]) } },
      };
    }),
  );
}

/** The first fix of every error and warning, as far as they can be made at once. */
export function fixAll(project: Project): CodeAction[] {
  const grave = project.analysis.findings().filter(({ level }) => level === 'error' || level === 'warning');
  const fixes = together(grave.flatMap(({ fixes: [first] }) => first ?? []));
  if (fixes.length === 0) return [];
  return [
    {
      title: 'Mend all that can be mended',
      kind: FIX_ALL,
      edit: { changes: { [project.file]: editsOf(project, fixes) } },
    },
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
