/** A score made into the contents of files, as the command line and the editor write them. */
import type { Finding } from '../../grammar/findings/finding';
import { findingOfScore } from '../document/absolute';
import type { Analysis } from '../document/analysis';
import { eachOnce, inSome } from '../document/inReadings';
import { readingsOrSources } from '../readings/choices';
import { declaredNames } from '../score/environment';
import type { Score } from '../score/score';
import { type Project, unreadIn } from '../workspace/project';
import type { Edition, EditionFormat, Exported, ExportFormat, ExportOptions } from './formats';
import { areChunks, type Chunks } from './inChunks';

export interface Wish {
  readonly format: ExportFormat | EditionFormat;
  /** A reading or witness, `all`, or undefined for `written`, or for all where these stand together. */
  readonly reading: string | undefined;
  readonly options: ExportOptions;
}

/** The content of one file. */
export interface MadeFile {
  readonly reading: string;
  /** From 1, where the format has a file a page and the score more pages than one. */
  readonly page?: number;
  readonly content: string | Uint8Array | Chunks;
}

/** One reading; it has no files where the format refuses it, which a finding of level `error` says. */
export interface MadeReading {
  readonly reading: string;
  readonly files: readonly MadeFile[];
  /** What the format cannot say, the bars left empty, or why there is no content. */
  readonly findings: readonly Finding[];
}

export type Made =
  | { readonly kind: 'unknown reading'; readonly wished: string; readonly choices: readonly string[] }
  /** It has not what was wished, for it cannot be read. */
  | { readonly kind: 'unread'; readonly unread: Finding }
  /** Nothing is made, because of these. */
  | { readonly kind: 'faulty'; readonly errors: readonly Finding[] }
  | { readonly kind: 'made'; readonly readings: readonly MadeReading[] };

/** What is found in readings that are made together: each once, with the readings in which it is found if it is not in all. */
export function foundIn(made: readonly MadeReading[]): Finding[] {
  const names = made.map(({ reading }) => reading);
  const all = made.flatMap(({ reading, findings }) =>
    findings.map((finding) => ({ finding, readings: new Set([reading]) })),
  );
  return eachOnce(all).map((one) => inSome(one, names));
}

/** Makes what is wished of a score. One with errors in a reading that is wished for gives nothing, unless gaps may be left. */
export function make(project: Project, { format, reading: wished, options }: Wish): Made {
  const { analysis } = project;
  const { choices } = analysis;
  const isTogether = 'writeEdition' in format;
  const reading = wished ?? (isTogether ? 'all' : 'written');
  const all = isTogether ? readingsTogether(analysis) : choices;
  const readings = reading === 'all' ? all : choices.filter((name) => name === reading);
  if (readings.length === 0) {
    const unread = unreadIn(project);
    return unread === undefined ? { kind: 'unknown reading', wished: reading, choices } : { kind: 'unread', unread };
  }
  const errors = analysis.findings().filter((finding) => finding.level === 'error' && concerns(finding, readings));
  if (errors.length > 0 && !options.leaveGaps) return { kind: 'faulty', errors };
  const scores = readings.flatMap((name) => analysis.score(name) ?? []);
  if (!isTogether)
    return { kind: 'made', readings: scores.map((score) => makeReading(score, format, inItsRhythm(score, options))) };
  const edition = editionOf(analysis, scores);
  return {
    kind: 'made',
    readings:
      edition === undefined ? [] : [makeEdition(edition, format, options, reading === 'all' ? 'written' : reading)],
  };
}

/** The readings or sources of a file; where there are none, the text as written. */
function readingsTogether({ environment, choices }: Analysis): readonly string[] {
  const found = readingsOrSources(environment);
  return found.length > 0 ? found : choices;
}

/** Every file can be read as written. */
function editionOf({ environment, score }: Analysis, readings: readonly Score[]): Edition | undefined {
  const { witnesses, layers } = declaredNames(environment);
  const main = score('written');
  return main && { main, readings, sources: [...witnesses, ...layers].flatMap((name) => score(name) ?? []) };
}

/** @param name after which the file is called */
function makeEdition(edition: Edition, format: EditionFormat, options: ExportOptions, name: string): MadeReading {
  return madeOf(edition.main, name, format.writeEdition(edition, options));
}

/** As a rule a reading is written in the rhythm in which it is played, a source as it stands. */
function inItsRhythm({ environment, choice }: Score, options: ExportOptions): ExportOptions {
  const isReading = environment.readings.some(({ name }) => name === choice.name);
  return { ...options, rhythm: options.rhythm ?? (isReading ? 'played' : 'written') };
}

/** Whether a finding arises in one of these readings. */
const concerns = (finding: Finding, readings: readonly string[]): boolean =>
  finding.readings === undefined || finding.readings.some((reading) => readings.includes(reading));

const makeReading = (score: Score, format: ExportFormat, options: ExportOptions): MadeReading =>
  madeOf(score, score.choice.name, format.write(score, options));

const madeOf = (score: Score, reading: string, { content, problems }: Exported): MadeReading => ({
  reading,
  files: filesOf(reading, content),
  findings: problems.map((problem) => findingOfScore(score, problem)),
});

function filesOf(reading: string, content: Exported['content']): readonly MadeFile[] {
  if (areChunks(content)) return [{ reading, content }];
  if (content.length === 0) return [];
  if (typeof content === 'string' || content instanceof Uint8Array) return [{ reading, content }];
  return content.map((page, i) => ({ reading, content: page, ...(content.length > 1 ? { page: i + 1 } : {}) }));
}
