/** Findings as a log of the open format SARIF 2.1.0 (OASIS standard, 27 March 2020; errata 01 of 2023). */
import { catalogue, type FindingCode } from '../../grammar/findings/catalogue';
import type { Finding, Level, Range } from '../../grammar/findings/finding';
import { version } from '../../package.json';

/** SARIF has no level below "note". */
const LEVEL_NAMES: Readonly<Record<Level, 'error' | 'warning' | 'note'>> = {
  error: 'error',
  warning: 'warning',
  info: 'note',
  hint: 'note',
};

/** What was found in one file, or why it could not be looked at. */
export type Proofed =
  | { readonly file: string; readonly findings: readonly Finding[] }
  | { readonly file: string; readonly failure: string };

export function sarifLog(proofed: readonly Proofed[]): object {
  const findings = proofed.flatMap((one) => ('failure' in one ? [] : one.findings));
  const codes = [...new Set(findings.map(({ code }) => code))].sort();
  const unread = proofed.flatMap((one) => ('failure' in one ? [one] : []));
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'bentside', version, rules: codes.map(rule) } },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: unread.length === 0,
            toolExecutionNotifications: unread.map(({ file, failure }) => ({
              level: 'error',
              message: { text: `${file}: ${failure}` },
            })),
          },
        ],
        results: findings.map((finding) => result(finding, codes)),
      },
    ],
  };
}

const rule = (code: FindingCode): object => ({
  id: code,
  shortDescription: { text: catalogue[code].sentence },
  help: { text: catalogue[code].help, markdown: catalogue[code].help },
  defaultConfiguration: { level: LEVEL_NAMES[catalogue[code].level] },
});

const result = (finding: Finding, codes: readonly FindingCode[]): object => ({
  ruleId: finding.code,
  ruleIndex: codes.indexOf(finding.code),
  level: LEVEL_NAMES[finding.level],
  message: { text: finding.message },
  locations: [location(finding)],
  ...(finding.related.length === 0
    ? {}
    : { relatedLocations: finding.related.map((one) => ({ ...location(one), message: { text: one.message } })) }),
});

const location = ({ file, range }: { readonly file: string; readonly range: Range }): object => ({
  physicalLocation: {
    artifactLocation: { uri: uriOf(file) },
    region: {
      startLine: range.start.line,
      startColumn: range.start.column,
      endLine: range.end.line,
      endColumn: range.end.column,
    },
  },
});

/** The URI of a file that has its full name (RFC 8089), which may begin with a drive; of another a reference that counts from here. */
function uriOf(file: string): string {
  const drive = /^[a-z]:(?=\/)/i.exec(file)?.[0] ?? '';
  const reference = file.slice(drive.length).split('/').map(encodeURIComponent).join('/');
  if (drive !== '') return `file:///${drive}${reference}`;
  return file.startsWith('/') ? `file://${reference}` : reference;
}
