/** A score exported to the contents of files by the name of a format, as the command line does: what a script asks for. */
import type { Finding } from '../../grammar/findings/finding';
import type { Engraver } from '../engraving/engraver';
import type { EditionFormat, ExportFormat, ExportOptions } from '../export/formats';
import { areChunks, together } from '../export/inChunks';
import { foundIn, type MadeFile, make } from '../export/making';
import { outputPath } from '../export/outputPath';
import { reportOf } from '../readings/report';
import type { Project } from '../workspace/project';
import { everyFormat, isDrawn } from './formats';
import { reportMarkdown, reportPage } from './report';

export interface FilesWish extends Partial<ExportOptions> {
  /** A format by its name, as after `--as`: `musicxml`, `svg`, `html` … */
  readonly as: string;
  /** A reading or witness, or `all`; as a rule `written`, and all where readings stand together in one file. */
  readonly reading?: string;
  /** Who draws; wanted for `svg` and `html`. */
  readonly engraver?: Engraver;
}

export interface ExportedFile {
  /** As the command line would call it, beside its score. */
  readonly name: string;
  readonly reading: string;
  readonly content: string | Uint8Array;
}

export interface ExportedFiles {
  /** None where the score has errors and no gaps may be left, or the format refuses it. */
  readonly files: readonly ExportedFile[];
  /** Why there are no files, or what they do not say. */
  readonly findings: readonly Finding[];
}

/** @throws RangeError if there is no such format or reading, or nobody to draw */
export function filesOf(project: Project, { as, reading, engraver, ...options }: FilesWish): ExportedFiles {
  const format = formatOf(as, engraver);
  const made = make(project, { format, reading, options: { clefs: 'source', leaveGaps: false, ...options } });
  if (made.kind === 'unknown reading')
    throw new RangeError(`no reading “${made.wished}”, but ${made.choices.join(', ')}`);
  if (made.kind === 'unread') return { files: [], findings: [made.unread] };
  if (made.kind === 'faulty') return { files: [], findings: made.errors };
  const { file: input } = project;
  const named = ({ content, ...which }: MadeFile): ExportedFile => ({
    name: outputPath({ input, extension: format.extension, ...which }),
    reading: which.reading,
    content: areChunks(content) ? together(content) : content,
  });
  return { files: made.readings.flatMap(({ files }) => files.map(named)), findings: foundIn(made.readings) };
}

function formatOf(name: string, engraver: Engraver | undefined): ExportFormat | EditionFormat {
  const format = everyFormat.find((one) => one.name === name);
  if (format === undefined)
    throw new RangeError(`no format “${name}”, but ${everyFormat.map((one) => one.name).join(', ')}`);
  if (!isDrawn(format)) return format;
  if (engraver === undefined) throw new RangeError(`the format ${name} is drawn: give an engraver`);
  return format.drawnBy(engraver);
}

const FORMS = { md: reportMarkdown, html: reportPage } as const;

/** How a critical report is written: Markdown, or a page to print. */
export type ReportForm = keyof typeof FORMS;

/**
 * The critical report of a score.
 * @throws RangeError if there is no such form
 */
export function reportIn({ analysis }: Project, form: ReportForm): string {
  if (!Object.hasOwn(FORMS, form)) throw new RangeError(`no form “${form}”, but ${Object.keys(FORMS).join(', ')}`);
  const main = analysis.score('written');
  if (main === undefined) throw new RangeError('every score can be read as written');
  return FORMS[form](reportOf(main, (name) => analysis.score(name)));
}
