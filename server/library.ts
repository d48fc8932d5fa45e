/**
 * Bentside as a library: annotated early-keyboard scores from plain text.
 *
 * ```ts
 * import { proof, score, timeline } from 'bentside';
 *
 * for (const finding of proof(text).findings) console.log(finding.range.start.line, finding.message);
 * const { text: json } = timeline(score(text, { reading: 'french' }));
 * ```
 *
 * Nothing here reads files, looks at a clock or rolls dice: the same text gives the same result. A text is never too broken to
 * be read; what is wrong with it is a finding with a place. Times are exact fractions of a semibreve. Lines and columns
 * count from 1, offsets from 0; columns and offsets count UTF-16 units, as JavaScript strings do, behind a byte order mark.
 *
 * Options may always be left out. A function that takes a text or a score and is given something else, or an option of another
 * type, throws a TypeError that names the function and the argument; what is asynchronous is rejected with it.
 */
import { catalogue, type FindingCode } from '../grammar/findings/catalogue';
import type { Finding, Level } from '../grammar/findings/finding';
import { asking, checkArguments, givingTexts } from './asked';
import { findingOfScore } from './document/absolute';
import type { Analysis } from './document/analysis';
import { type Proof as Proofs, proofOf } from './document/decided';
import { edited as changed, type TextChange, together } from './document/edits';
import type { Levels } from './document/levels';
import { sarifLog as logged, type Proofed } from './document/sarif';
import { signUseIn } from './document/signUse';
import type { Engraver } from './engraving/engraver';
import { type AloneExport, exportAlone as writeAlone } from './export/alone';
import type { ExportOptions } from './export/formats';
import type { BarsChosen } from './export/measures';
import { exportMei as writeMei } from './export/mei';
import { exportMidi as writeMidi } from './export/midi';
import { exportMusicXml as writeMusicXml, exportMxl as writeMxl } from './export/musicxml';
import { withOrnaments as inOrnaments, type Ornamented, type OrnamentOptions } from './export/ornaments';
import { exportTimeline, type Timeline, type TimelineOptions } from './export/timeline';
import { exportWav as writeWav } from './export/wav';
import type { ExportedFiles, FilesWish, ReportForm } from './pages/files';
import { type Comparison, compareScores } from './readings/compare';
import { type PerformOptions, perform as performed } from './readings/perform';
import * as tunings from './readings/tunings';
import type { Performance } from './score/performance';
import type { PlacedProblem, Score } from './score/score';
import type { PlacedEvent } from './score/walk';
import * as walk from './score/walk';
import { together as addedUp, type Uses } from './signs/use';
import { type TuningSheet, sheetOf as tuningSheet } from './tuning/sheet';
import { frequencyOf as frequency } from './tuning/tuning';
import { aligned } from './workspace/aligned';
import { markOf } from './workspace/encoding';
import { type Host, noFiles } from './workspace/host';
import { type Project, projectOf } from './workspace/project';

/** Where a text comes from. */
export interface TextOptions {
  /** Its name in findings and exports; includes count from its folder. As a rule `score.bent`. */
  readonly file?: string;
  /** Gives the files that the text includes. Without one every include is a finding. */
  readonly host?: Host;
  /** Levels other than the catalogue's, by code; `ignore` hides a finding. */
  readonly levels?: Levels;
  /** Whether the music itself is judged, too: voice leading, accidentals that may be missing. As a rule it is. */
  readonly counsel?: boolean;
}

/** Findings are not more than 200 a lane and 2,000 a file; "and N more" stands for the others. */
export interface Proof extends Proofs {
  /** What {@link score} can be asked for: `written`, then the readings and witnesses declared. */
  readonly readings: readonly string[];
}

const project = (
  text: string,
  { file = 'score.bent', host = noFiles, levels = {}, counsel = true }: TextOptions,
): Project => projectOf(givingTexts(host), file, text, { levels, counsel });

/**
 * What is wrong, doubtful or missing in a text, in all its readings, and which signs cannot be played as they stand. Never fails.
 * @param options.decisions whether what each reading decides at its signs is listed, too, and what practices of rhythm leave to
 * taste is told
 */
export function proof(text: string, options: TextOptions & { readonly decisions?: boolean } = {}): Proof {
  checkArguments('proof', { text, options });
  const { analysis } = project(text, options);
  return { ...proofOf(analysis, options.decisions ?? false), readings: analysis.choices };
}

/** What was found in files, each with its name, as a log of the open format SARIF 2.1.0. */
export const sarifLog = asking('sarifLog', ['proofed'], (proofed: readonly Proofed[]) => logged(proofed));

/** The signs of a text: where its main text has them and how often, beside all notes. */
export function signUse(text: string, options: TextOptions = {}): Uses {
  checkArguments('signUse', { text, options });
  return signUseIn(project(text, options).analysis);
}

/** The signs of several texts together, as of a book. */
export const signUseTogether = asking('signUseTogether', ['uses'], (uses: readonly Uses[]) => addedUp(uses));

/**
 * The score of one reading: voices, bars and events in exact written time and sounding pitch. Bars that are wrong are in it,
 * marked as broken.
 * @param options.reading a reading or witness that the text declares; as a rule `written`, which realises nothing
 * @throws RangeError if the text declares no such reading
 */
export function score(text: string, options: TextOptions & { readonly reading?: string } = {}): Score {
  checkArguments('score', { text, options });
  const { analysis } = project(text, options);
  const { reading = 'written' } = options;
  return scoreIn(analysis, reading);
}

function scoreIn({ score: scoreOf, choices }: Analysis, reading: string): Score {
  const built = scoreOf(reading);
  if (built === undefined) throw new RangeError(`no reading “${reading}”, but ${choices.join(', ')}`);
  return built;
}

/**
 * The performed events of a score as data and as JSON text (`bentside.timeline/1`). Both are empty if a bar's time is
 * wrong and no gaps may be left, or if there are no such bars; the problems say so.
 */
export function timeline(
  of: Score,
  options: Partial<TimelineOptions> = {},
): { readonly timeline: Timeline | undefined; readonly text: string; readonly problems: readonly PlacedProblem[] } {
  checkArguments('timeline', { of, options });
  return exportTimeline(performed(of), { ...options, leaveGaps: options.leaveGaps ?? false });
}

/** As it is played, its signs too. */
export function perform(of: Score, options: PerformOptions = {}): Performance {
  checkArguments('perform', { of, options });
  return performed(of, options);
}

/** A score with its signs as small notes, or written out. */
export function withOrnaments(of: Score, options: OrnamentOptions & BarsChosen = {}): Ornamented {
  checkArguments('withOrnaments', { of, options });
  return inOrnaments(of, options);
}

/** A witness or reading alone as a text of the notation. */
export function exportAlone(of: Score): AloneExport {
  checkArguments('exportAlone', { of });
  return writeAlone(of);
}

/** An export of which every option may be left out: then it has the source's clefs and is refused where a bar is broken. */
const exporting =
  <Options extends Pick<ExportOptions, 'clefs' | 'leaveGaps'>, Made>(
    name: string,
    write: (of: Score, options: Options) => Made,
  ) =>
  (of: Score, options: Partial<Options> = {}): Made => {
    checkArguments(name, { of, options });
    const { clefs = 'source', leaveGaps = false } = options;
    return write(of, { ...options, clefs, leaveGaps } as Options);
  };

export const exportMusicXml = exporting('exportMusicXml', writeMusicXml);
/** The same compressed (`.mxl`). */
export const exportMxl = exporting('exportMxl', writeMxl);
export const exportMei = exporting('exportMei', writeMei);
export const exportMidi = exporting('exportMidi', writeMidi);
export const exportWav = exporting('exportWav', writeWav);

/**
 * Two or more sources or readings of a text beside one another, bar by bar, and who agrees with whom
 * (`bentside.comparison/1`).
 * @throws RangeError if the text declares no such source or reading
 */
export function compare(text: string, names: readonly string[], options: TextOptions = {}): Comparison {
  checkArguments('compare', { text, names, options });
  const { analysis } = project(text, options);
  return compareScores(names.map((name) => scoreIn(analysis, name)));
}

/**
 * The files that `bentside export` would write, in any of its formats. What draws and what makes pages is loaded when it is
 * first asked for.
 * @throws RangeError if there is no such format or reading, or a format is drawn and there is no engraver
 */
export async function exportFiles(text: string, options: TextOptions & FilesWish): Promise<ExportedFiles> {
  checkArguments('exportFiles', { text, options });
  const { filesOf } = await import('./pages/files');
  const { file, host, levels, counsel, ...wish } = options;
  return filesOf(project(text, options), wish);
}

/** The critical report, as Markdown or, with `as: 'html'`, as a page to print. */
export async function report(text: string, options: TextOptions & { readonly as?: ReportForm } = {}): Promise<string> {
  checkArguments('report', { text, options });
  const { reportIn } = await import('./pages/files');
  return reportIn(project(text, options), options.as ?? 'md');
}

/**
 * Who draws `svg` and `html`. It takes a second to load, and draws as many scores as are wanted.
 * @param font the bytes of `bentside/font`, which the package brings along
 * @throws Error where it cannot be loaded, as without WebAssembly
 */
export async function loadEngraver(font: Uint8Array): Promise<Engraver> {
  checkArguments('loadEngraver', { font });
  const library = await import('./engraving/library');
  const engraver = await library.loadEngraver(font);
  if ('failure' in engraver) throw new Error(engraver.failure);
  return engraver;
}

/** The text laid out so that what sounds together stands together. What cannot be laid out comes back unchanged, with findings. */
export function align(
  text: string,
  options: Pick<TextOptions, 'file'> = {},
): { readonly text: string; readonly findings: readonly Finding[] } {
  checkArguments('align', { text, options });
  return aligned(options.file ?? 'score.bent', text);
}

/**
 * The text with its findings mended: the first fix of each that has one and is among those wished for, as long as fixes lead
 * on. What no fix touches, comments and layout included, stays as it is.
 * @param options.only whether a finding is to be mended; as a rule every one of level error or warning that can be mended in one
 * way alone: which of several is right, only who sees the source can tell
 */
export function mend(
  text: string,
  options: TextOptions & { readonly only?: (finding: Finding) => boolean } = {},
): { readonly text: string; readonly mended: readonly Finding[] } {
  checkArguments('mend', { text, options });
  const { only = ({ level, fixes }) => (level === 'error' || level === 'warning') && fixes.length === 1 } = options;
  const mended: Finding[] = [];
  let now = text;
  // A fix may uncover what it hid; a text that comes back has no end.
  const seen = new Set<string>();
  while (!seen.has(now)) {
    seen.add(now);
    const wished = proof(now, options).findings.filter((finding) => finding.fixes.length > 0 && only(finding));
    const firsts = new Map(wished.flatMap((finding) => finding.fixes.slice(0, 1).map((fix) => [fix, finding])));
    const fixes = together([...firsts.keys()]);
    now = changedBehindMark(
      now,
      fixes.flatMap(({ edits }) => edits),
    );
    mended.push(...fixes.flatMap((fix) => firsts.get(fix) ?? []));
  }
  return { text: now, mended };
}

/**
 * The text of a score with some of its events typed otherwise; all else, comments and layout included, stays as it is.
 * @param change gives what is to be typed instead of an event, or undefined to leave it; it sees each event that the score's
 * reading has, with what is typed for it
 */
export function rewrite(of: Score, change: (placed: PlacedEvent, typed: string) => string | undefined): string {
  checkArguments('rewrite', { of, change });
  const { text } = of.tree;
  const changes = of.pieces.flatMap((piece) =>
    [...walk.eventsOf(piece)].flatMap((placed) => {
      const { event } = placed;
      // Where a witness omits something nothing is typed for the time that passes.
      if (event.kind === 'gap' && !event.wholeBar && event.value === undefined) return [];
      const { source } = event;
      const offset = walk.offsetOf(of.tree, placed.system, source);
      const by = change(placed, text.slice(offset, offset + source.len));
      return by === undefined ? [] : [{ offset, length: source.len, text: by }];
    }),
  );
  return changed(text, changes);
}

/** A problem of a score or an export as a finding, with its place in the file. */
export function findingOf(of: Score, problem: PlacedProblem): Finding {
  checkArguments('findingOf', { of, problem });
  return findingOfScore(of, problem);
}

/**
 * The text after changes that leave the rest as it is.
 * @throws RangeError if two of them overlap or one leaves the text
 */
export const edited = asking('edited', ['text', 'changes'], changedBehindMark);

/** Offsets count behind a byte order mark. */
function changedBehindMark(text: string, changes: readonly TextChange[]): string {
  const mark = markOf(text);
  return `${mark}${changed(text.slice(mark.length), changes)}`;
}

/** All events of a piece with their onset and bar: systems in order, in each its voices. */
export const eventsOf = asking('eventsOf', ['piece'], walk.eventsOf);
/** Clefs, signatures and the like of a piece with their onset and bar. */
export const changesOf = asking('changesOf', ['piece'], walk.changesOf);
/** All curves of a piece, by their order of ending. */
export const curvesOf = asking('curvesOf', ['piece'], walk.curvesOf);
/** `PAGE/SYSTEM/VOICE/BAR.EVENT`, exact for one version of the text. */
export const addressOf = asking('addressOf', ['system', 'event'], walk.addressOf);
/** Where what a system has, by its `source`, stands in the file: line and column from 1. */
export const positionOf = asking('positionOf', ['tree', 'system', 'source'], walk.positionOf);

/** The tuning of a reading; equal temperament where nothing is stated. */
export const tuningOf = asking('tuningOf', ['environment', 'reading'], tunings.tuningOf);
/** The tuning that words would state after `tuning`, its a4 at so many hertz; undefined if they state none. */
export const tuningByWords = asking('tuningByWords', ['environment', 'words', 'hertz'], tunings.tuningByWords);
/** All that a tuner wants to know of a tuning, and of the way to it from another, as data (`bentside.tuning/1`). */
export const sheetOf = asking('sheetOf', ['tuning', 'before'], tuningSheet);
/** A tuner's sheet as a page to print (HTML). */
export async function tunersSheet(sheet: TuningSheet): Promise<string> {
  checkArguments('tunersSheet', { sheet });
  const pages = await import('./pages/tunersSheet');
  return pages.tunersSheet(sheet);
}

/** In hertz, of the note that a key gives. */
export const frequencyOf = asking('frequencyOf', ['tuning', 'pitch'], frequency);

/** The level, the sentence (with blanks) and the help page (Markdown) of a finding; undefined if there is no such code. */
export const helpOf = (
  code: string,
): { readonly level: Level; readonly sentence: string; readonly help: string } | undefined =>
  Object.hasOwn(catalogue, code) ? catalogue[code as FindingCode] : undefined;

export type { FindingCode } from '../grammar/findings/catalogue';
export type { AbsoluteFix, Finding, Level, Position, Problem, Range } from '../grammar/findings/finding';
export type { Time } from '../grammar/time';
/** Exact time in semibreves. */
export * as time from '../grammar/time';
export type * from '../grammar/tree';
export type { TextChange } from './document/edits';
export type { Levels } from './document/levels';
export type { Proofed } from './document/sarif';
export type { Engraver } from './engraving/engraver';
export type { AloneExport } from './export/alone';
export type { BarRange } from './export/measures';
export type { MeiExport, MeiOptions } from './export/mei';
export type { MidiExport } from './export/midi';
export type { MusicXmlExport, MusicXmlOptions } from './export/musicxml';
export type { Ornamented, OrnamentForm, OrnamentOptions } from './export/ornaments';
export type {
  Timeline,
  TimelineBar,
  TimelineEvent,
  TimelineMark,
  TimelineOptions,
  TimelinePass,
  TimelinePiece,
} from './export/timeline';
export type { WavExport } from './export/wav';
export type { ExportedFile, ExportedFiles, FilesWish, ReportForm } from './pages/files';
export type { Chosen, ComparedPlace, Comparison } from './readings/compare';
export type { Agreement, DifferenceKind } from './readings/compare/differences';
export type { PerformOptions } from './readings/perform';
export type { Choice } from './score/choice';
export type { Environment } from './score/environment';
export type * from './score/performance';
export type * from './score/score';
export type { PlacedEvent } from './score/walk';
export type { Decision } from './signs/decisions';
export type { Counts, SignUse, Use, Uses } from './signs/use';
export type { TuningSheet } from './tuning/sheet';
export type { Tuning } from './tuning/tuning';
export type { Host } from './workspace/host';
