/** MusicXML held against the schema of the W3C, and read back by an independent reader. */
import { readFileSync } from 'node:fs';
import { type NoteEntry, parse, type Score as ReadScore, validate as readerValidate } from 'musicxml-io';
import { validateXML } from 'xmllint-wasm';
import { parseTime, type Time, toNumber, ZERO } from '../../grammar/time';
import { exportTimeline } from '../../server/export/timeline';
import { perform } from '../../server/readings/perform';
import type { Score } from '../../server/score/score';
import { missingSchema, schemaPath } from './schemas';

function published(name: string): { fileName: string; contents: string } {
  const relative = `musicxml-4.0/${name}`;
  const path = schemaPath(relative);
  if (path === undefined) throw new Error(missingSchema(relative));
  return { fileName: name, contents: readFileSync(path, 'utf8') };
}

async function validate(documents: Readonly<Record<string, string>>, schema: string): Promise<string[]> {
  const result = await validateXML({
    xml: Object.entries(documents).map(([fileName, contents]) => ({ fileName, contents })),
    schema: [published(schema)],
    preload: [published('xlink.xsd'), published('xml.xsd')],
    initialMemoryPages: 1024,
    maxMemoryPages: 16384,
  });
  const name = (file = ''): string => (Object.keys(documents).length === 1 ? '' : `${file} `);
  return result.errors.map(({ message, loc }) => `${name(loc?.fileName)}${loc?.lineNumber ?? '?'}: ${message}`);
}

/** What the schema of MusicXML 4.0 objects to; nothing if the text is valid. For tests that have the schema. */
export const validateMusicXml = (text: string): Promise<string[]> => validate({ 'document.xml': text }, 'musicxml.xsd');

/** The same for several documents, each by its name. */
export const validateAllMusicXml = (documents: Readonly<Record<string, string>>): Promise<string[]> =>
  validate(documents, 'musicxml.xsd');

/** The same for the `META-INF/container.xml` of a packed file. */
export const validateContainer = (text: string): Promise<string[]> =>
  validate({ 'document.xml': text }, 'container.xsd');

/**
 * What the reader objects to in the structure of a document. It takes the beams of grace notes for those of the notes
 * around them, so beams are judged with the grace notes left out.
 */
export function objections(text: string): string[] {
  const isOfBeams = (code: string): boolean => code.startsWith('BEAM');
  const found = readerValidate(parse(text)).errors.filter(({ code }) => !isOfBeams(code));
  const withoutGrace = text.replace(/<note>\s*<grace[\s\S]*?<\/note>\s*/g, '');
  const ofBeams = readerValidate(parse(withoutGrace)).errors.filter(({ code }) => isOfBeams(code));
  return [...found, ...ofBeams].map(({ code, location }) => `measure ${location.measureNumber}: ${code}`);
}

/** A note as the reader found it: times in semibreves. */
export interface ReadNote {
  readonly measure: string;
  /** Place of its measure in the file, from 0: measures of several pieces may bear one number. */
  readonly index: number;
  readonly voice: string;
  readonly staff: number;
  /** From the start of its measure. */
  readonly onset: number;
  readonly duration: number;
  /** `c4`, `bb4`; `r` for a rest. */
  readonly pitch: string;
  readonly entry: NoteEntry;
}

const ALTERS: Readonly<Record<string, string>> = { '-2': 'bb', '-1': 'b', '0': '', '1': '#', '2': '##' };

/** All notes that the reader finds in a part, in the order of the file. */
export function readNotes(text: string, part = 0): ReadNote[] {
  const score: ReadScore = parse(text);
  const notes: ReadNote[] = [];
  let divisions = 1;
  for (const [index, measure] of (score.parts[part]?.measures ?? []).entries()) {
    let now = 0;
    let begun = 0;
    divisions = measure.attributes?.divisions ?? divisions;
    for (const entry of measure.entries) {
      if (entry.type === 'backup') now -= entry.duration;
      if (entry.type === 'forward') now += entry.duration;
      if (entry.type !== 'note') continue;
      if (entry.chord !== true) begun = now;
      const { pitch } = entry;
      const alter = ALTERS[`${pitch?.alter ?? 0}`] ?? '?';
      notes.push({
        measure: measure.number,
        index,
        voice: entry.voice ?? '',
        staff: entry.staff ?? 1,
        onset: begun / divisions / 4,
        duration: entry.grace === undefined ? entry.duration / divisions / 4 : 0,
        pitch: pitch === undefined ? 'r' : `${pitch.step.toLowerCase()}${alter}${pitch.octave}`,
        entry,
      });
      if (entry.chord !== true && entry.grace === undefined) now += entry.duration;
    }
  }
  return notes;
}

const sounding = (onset: number, duration: number, pitch: string | null, voice: string): string =>
  `${onset.toFixed(6)}+${duration.toFixed(6)} ${pitch} ${voice}`;

const tiesOf = ({ entry }: ReadNote): string[] => {
  const { tie, ties: several } = entry as { tie?: { type: string }; ties?: { type: string }[] };
  return [...(tie === undefined ? [] : [tie.type]), ...(several ?? []).map((one) => one.type)];
};

/**
 * "onset+duration pitch voice" of every sounding note as the reader finds it, small notes left out: measures one after
 * another, each as long as its bar, tied notes joined. Sorted.
 */
export function heard(text: string, score: Score, part = 0): string[] {
  const starts: number[] = [];
  let end = 0;
  for (const bar of score.pieces.flatMap((piece) => piece.bars)) {
    starts.push(end);
    end += toNumber(bar.duration);
  }
  const open = new Map<string, { onset: number; duration: number; note: ReadNote }>();
  const found: { onset: number; duration: number; note: ReadNote }[] = [];
  for (const note of readNotes(text, part)) {
    if (note.pitch === 'r' || note.entry.grace !== undefined) continue;
    const key = `${note.voice} ${note.pitch}`;
    const types = tiesOf(note);
    const onset = (starts[note.index] ?? 0) + note.onset;
    const before = types.includes('stop') ? open.get(key) : undefined;
    const whole = before ?? { onset, duration: 0, note };
    whole.duration += note.duration;
    if (before === undefined) found.push(whole);
    if (types.includes('start')) open.set(key, whole);
    else open.delete(key);
  }
  return found.map(({ onset, duration, note }) => sounding(onset, duration, note.pitch, note.voice)).sort();
}

export const timeOf = (text: string): Time => parseTime(text) ?? ZERO;

/** The same as the timeline of the score has it, its pieces one after another. */
export function played(score: Score): string[] {
  const voices = new Map(score.environment.voices.map(({ name }, index) => [name, `${index + 1}`]));
  const pieces =
    exportTimeline(perform(score, { ornaments: 'sign', rhythm: 'written' }), { leaveGaps: true }).timeline?.pieces ??
    [];
  let start = 0;
  return pieces
    .flatMap(({ events, bars }) => {
      const begins = start;
      for (const { duration } of bars) start += toNumber(timeOf(duration));
      return events
        .filter(({ kind, duration }) => kind === 'note' && duration !== '0')
        .map(({ onset, duration, pitch, voice }) =>
          sounding(begins + toNumber(timeOf(onset)), toNumber(timeOf(duration)), pitch, voices.get(voice) ?? ''),
        );
    })
    .sort();
}
