/** A score exported for the editor: what is to be written, and where. */
import type { Finding } from '../../grammar/findings/finding';
import { formats } from '../export/formats';
import { type MadeFile, type MadeReading, make } from '../export/making';
import { outputPath } from '../export/outputPath';
import type { Project } from '../workspace/project';
import type { ExportedFile, ExportParams, ExportResult } from './protocol';

const nothing = (refusals: readonly string[]): ExportResult => ({ files: [], refusals, losses: [] });

/** @returns null if there is no such format */
export function exporting(project: Project, params: Omit<ExportParams, 'textDocument'>): ExportResult | null {
  const format = formats.find(({ name }) => name === params.format);
  if (format === undefined) return null;
  const options = { clefs: 'source', leaveGaps: params.leaveGaps } as const;
  const made = make(project, { format, reading: params.reading, options });
  if (made.kind === 'unknown reading') return nothing([`There is no reading “${made.wished}”.`]);
  if (made.kind === 'faulty') return nothing(made.errors.map(told));
  const isMade = ({ files }: MadeReading): boolean => files.length > 0;
  const toldOf = (readings: readonly MadeReading[]): string[] => readings.flatMap(({ findings }) => findings.map(told));
  return {
    files: made.readings.flatMap(({ files }) => files.map((made) => fileOf(project.file, format.extension, made))),
    refusals: toldOf(made.readings.filter((reading) => !isMade(reading))),
    losses: toldOf(made.readings.filter(isMade)),
  };
}

const told = ({ message, range }: Finding): string => `line ${range.start.line}: ${message}`;

function fileOf(input: string, extension: string, { content, ...which }: MadeFile): ExportedFile {
  return {
    uri: outputPath({ input, extension, ...which }),
    content: typeof content === 'string' ? { text: content } : { base64: base64(content) },
  };
}

const base64 = (bytes: Uint8Array): string => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
