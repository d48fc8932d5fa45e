/** Fixes of findings as quick fixes, one by one or all at once. */
import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  type Range,
  type TextEdit,
} from 'vscode-languageserver-types';
import { catalogue } from '../../grammar/findings/catalogue';
import type { AbsoluteFix, Finding } from '../../grammar/findings/finding';
import { parseFile } from '../../grammar/parse';
import type { Analysis, AnalysisOptions } from '../document/analysis';
import { Document } from '../document/document';
import { type TextChange, together } from '../document/edits';
import type { Project } from '../workspace/project';
import { Composed } from './composed';
import { editorRange, meets, rangeOfOffsets } from './place';

export const FIX_ALL = `${CodeActionKind.SourceFixAll}.bentside`;

/** Changes of a file as the protocol says them. */
export const textEdits = ({ tree }: Project, changes: readonly TextChange[]): TextEdit[] =>
  changes.map(({ offset, length, text }) => ({ range: rangeOfOffsets(tree, offset, offset + length), newText: text }));

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
        edit: { changes: { [project.file]: textEdits(project, fix.edits) } },
      };
    }),
  );
}

/** So often the fixes are looked for again: a mended sign may show that the next one needs mending, too. */
const MOST_PASSES = 8;

/**
 * The fixes of slips of typing, made again and again until none is left. What the source shows is decided by whoever looks at
 * it, never here. @param options as the project was read
 */
export function fixAll(project: Project, options: AnalysisOptions): CodeAction[] {
  const mended = new Composed(project.tree.text);
  const seen = new Set([mended.text]);
  let { analysis } = project;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const fixes = typingFixes(analysis);
    mended.make(fixes.flatMap(({ edits }) => edits));
    const { text } = mended;
    if (fixes.length === 0 || seen.has(text)) break;
    seen.add(text);
    analysis = new Document(project.file).read(parseFile(text), { ...options, included: project.included });
  }
  const changes = mended.changes;
  if (changes.length === 0) return [];
  return [
    {
      title: 'Mend all slips of typing',
      kind: FIX_ALL,
      edit: { changes: { [project.file]: textEdits(project, changes) } },
    },
  ];
}

/** As far as they can be made at once. */
function typingFixes(analysis: Analysis): readonly AbsoluteFix[] {
  const slips = analysis.findings().filter(({ code }) => catalogue[code].ofTyping);
  return together(slips.flatMap(({ fixes: [only] }) => only ?? []));
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
