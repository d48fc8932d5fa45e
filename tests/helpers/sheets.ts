/** Teaching sheets as the command line makes them. */
import type { Finding } from '../../grammar/findings/finding';
import type { ExportOptions } from '../../server/export/formats';
import { make } from '../../server/export/making';
import { everyFormat, isDrawn } from '../../server/pages/formats';
import { noFiles } from '../../server/workspace/host';
import { type Project, projectOf } from '../../server/workspace/project';
import { engraver } from './engraver';

export interface MadeSheet {
  /** "" where the score is refused. */
  readonly page: string;
  readonly findings: readonly Finding[];
}

export async function sheetOf(
  project: Project,
  options: Partial<ExportOptions> = {},
  reading?: string,
): Promise<MadeSheet> {
  const format = everyFormat.find(({ name }) => name === 'html');
  if (format === undefined || !isDrawn(format)) throw new Error('no such format');
  const whole = { clefs: 'source', leaveGaps: false, ...options } as const;
  const made = make(project, { format: format.drawnBy(await engraver()), reading, options: whole });
  if (made.kind === 'faulty') return { page: '', findings: made.errors };
  if (made.kind !== 'made') throw new Error(made.kind);
  const [sheet, ...others] = made.readings;
  if (sheet === undefined || others.length > 0) throw new Error('a sheet is one file');
  return { page: `${sheet.files[0]?.content ?? ''}`, findings: sheet.findings };
}

export const sheetOfText = (text: string, options: Partial<ExportOptions> = {}): Promise<MadeSheet> =>
  sheetOf(projectOf(noFiles, 'sheet.bent', text), options);
