/** What must hold of every text, however broken. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding, Range } from '../../grammar/findings/finding';
import { printFile } from '../../grammar/print';
import { formats } from '../../server/export/formats';
import { make } from '../../server/export/making';
import { sourceText } from '../../server/workspace/encoding';
import { projectOf } from '../../server/workspace/project';
import { memoryFiles } from '../helpers/memoryFiles';
import { examplesOf, referenceText } from '../helpers/reference';

const SAMPLES = join(import.meta.dirname, '../../samples');

/** What several samples include. */
const shared = memoryFiles({
  'shared/thornmere.bent': readFileSync(join(SAMPLES, 'shared/thornmere.bent'), 'utf8'),
});

/** The texts that are edited: samples and the examples of the reference. */
export const sources = (): string[] => [
  ...readdirSync(SAMPLES)
    .filter((name) => name.endsWith('.bent'))
    .map((name) => readFileSync(join(SAMPLES, name), 'utf8')),
  ...examplesOf(referenceText()).map(({ file }) => file),
];

/** Milliseconds of the processor that a small text may take in all; what else a busy machine has to do does not count. */
const MOST_TIME = 2000;

const lies =
  (length: number) =>
  ({ start, end }: Range): boolean =>
    0 <= start.offset && start.offset <= end.offset && end.offset <= length && start.line >= 1 && start.column >= 1;

/** Whether all that a finding says lies in its file. */
function liesInside({ range, related, fixes, file }: Finding, length: number): boolean {
  const inside = lies(length);
  const edits = fixes.flatMap((fix) => fix.edits);
  return (
    inside(range) &&
    related.filter((one) => one.file === file).every((one) => inside(one.range)) &&
    edits.every((edit) => edit.offset >= 0 && edit.length >= 0 && edit.offset + edit.length <= length)
  );
}

/** Reads and analyses a text in every reading; throws an error that says what did not hold. */
export function check(text: string, mostTime = MOST_TIME): readonly Finding[] {
  const begun = process.cpuUsage();
  const { analysis } = projectOf(shared, 'edited.bent', text);
  const findings = analysis.findings();
  const { user, system } = process.cpuUsage(begun);
  const taken = (user + system) / 1000;
  const outside = findings.find((finding) => !liesInside(finding, text.length));
  if (outside !== undefined) throw new Error(`a finding lies outside the text: ${JSON.stringify(outside)}`);
  // A byte order mark is no part of the text; a finding speaks of it.
  if (printFile(analysis.tree) !== sourceText(text).text)
    throw new Error('the tree is printed otherwise than it was read');
  if (taken > mostTime) throw new Error(`it took ${Math.round(taken)} ms of the processor`);
  return findings;
}

/** Exports what can be of a text, in every reading and format; whatever throws is a fault. */
export function checkExports(text: string): void {
  const project = projectOf(shared, 'edited.bent', text);
  for (const format of formats)
    make(project, { format, reading: 'all', options: { clefs: 'source', leaveGaps: true } });
}
