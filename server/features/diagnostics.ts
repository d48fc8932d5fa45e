/** Findings as an editor shows them. */
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver-types';
import type { FindingCode } from '../../grammar/findings/catalogue';
import type { Finding, Level } from '../../grammar/findings/finding';
import { editorRange } from './place';

const severities: Readonly<Record<Level, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** What nothing uses or what says nothing new is dimmed. */
const dimmed: ReadonlySet<FindingCode> = new Set(['unused-declaration', 'restated-value', 'clef-restated']);

/** @param helpAddress opens a help page; `{code}` stands for the finding's code */
export const diagnosticsOf = (findings: readonly Finding[], helpAddress?: string): Diagnostic[] =>
  findings.map((finding) => diagnosticOf(finding, helpAddress));

function diagnosticOf(finding: Finding, helpAddress: string | undefined): Diagnostic {
  const { code, message, level } = finding;
  const related = finding.related.map((place) => ({
    message: place.message,
    location: { uri: place.file, range: editorRange(place.range) },
  }));
  return {
    range: editorRange(finding.range),
    message,
    code,
    source: 'bentside',
    severity: severities[level],
    ...(helpAddress === undefined ? {} : { codeDescription: { href: helpAddress.replace('{code}', code) } }),
    ...(dimmed.has(code) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(related.length === 0 ? {} : { relatedInformation: related }),
  };
}
