/** A score exported for the editor: what is to be written, and where. */
import type { Finding } from '../../grammar/findings/finding';
import { type CannotDraw, cannotDraw, type Engraver } from '../engraving/engraver';
import type { EditionFormat, ExportFormat } from '../export/formats';
import { areChunks, together } from '../export/inChunks';
import { foundIn, type MadeFile, type MadeReading, make } from '../export/making';
import { outputPath } from '../export/outputPath';
import { everyFormat, isDrawn } from '../pages/formats';
import type { Project } from '../workspace/project';
import type { ExportedFile, ExportParams, ExportResult } from './protocol';

const nothing = (refusals: readonly string[]): ExportResult => ({ files: [], refusals, losses: [] });

/**
 * @param engraver loads what draws, for formats whose pages are drawn
 * @returns null if there is no such format
 */
export async function exporting(
  project: Project,
  params: Omit<ExportParams, 'textDocument'>,
  engraver: () => Promise<Engraver | CannotDraw>,
): Promise<ExportResult | null> {
  const named = everyFormat.find(({ name }) => name === params.format);
  if (named === undefined) return null;
  if (!isDrawn(named)) return made(project, params, named);
  const drawer = await engraver();
  return cannotDraw(drawer) ? nothing([drawer.failure]) : made(project, params, named.drawnBy(drawer));
}

function made(
  project: Project,
  params: Omit<ExportParams, 'textDocument'>,
  format: ExportFormat | EditionFormat,
): ExportResult {
  const options = { clefs: 'source', ...params.form, leaveGaps: params.leaveGaps } as const;
  const making = make(project, { format, reading: params.reading, options });
  if (making.kind === 'unknown reading') return nothing([`There is no reading “${making.wished}”.`]);
  if (making.kind === 'unread') return nothing([told(making.unread)]);
  if (making.kind === 'faulty') return nothing(making.errors.map(told));
  const isMade = ({ files }: MadeReading): boolean => files.length > 0;
  return {
    files: making.readings.flatMap(({ files }) => files.map((file) => fileOf(project.file, format.extension, file))),
    refusals: foundIn(making.readings.filter((reading) => !isMade(reading))).map(told),
    losses: foundIn(making.readings.filter(isMade)).map(told),
  };
}

const told = ({ message, range }: Finding): string => `line ${range.start.line}: ${message}`;

function fileOf(input: string, extension: string, { content, ...which }: MadeFile): ExportedFile {
  return {
    uri: outputPath({ input, extension, ...which }),
    content:
      typeof content === 'string'
        ? { text: content }
        : { base64: base64(areChunks(content) ? together(content) : content) },
  };
}

/** So many bytes can be the arguments of one call. */
const AT_ONCE = 0x8000;

function base64(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += AT_ONCE) {
    letters += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE));
  }
  return btoa(letters);
}
