/** MusicXML held against the schema of the W3C, and read back by an independent reader. */
import { readFileSync } from 'node:fs';
import { type NoteEntry, parse, type Score } from 'musicxml-io';
import { validateXML } from 'xmllint-wasm';
import { missingSchema, schemaPath } from './schemas';

function published(name: string): { fileName: string; contents: string } {
  const relative = `musicxml-4.0/${name}`;
  const path = schemaPath(relative);
  if (path === undefined) throw new Error(missingSchema(relative));
  return { fileName: name, contents: readFileSync(path, 'utf8') };
}

async function validate(contents: string, schema: string): Promise<string[]> {
  const result = await validateXML({
    xml: [{ fileName: 'document.xml', contents }],
    schema: [published(schema)],
    preload: [published('xlink.xsd'), published('xml.xsd')],
  });
  return result.errors.map(({ message, loc }) => `${loc?.lineNumber ?? '?'}: ${message}`);
}

/** What the schema of MusicXML 4.0 objects to; nothing if the text is valid. For tests that have the schema. */
export const validateMusicXml = (text: string): Promise<string[]> => validate(text, 'musicxml.xsd');

/** The same for the `META-INF/container.xml` of a packed file. */
export const validateContainer = (text: string): Promise<string[]> => validate(text, 'container.xsd');

/** A note as the reader found it: times in semibreves. */
export interface ReadNote {
  readonly measure: string;
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

/** All notes that the reader finds, in the order of the file. */
export function readNotes(text: string): ReadNote[] {
  const score: Score = parse(text);
  const notes: ReadNote[] = [];
  let divisions = 1;
  for (const measure of score.parts[0]?.measures ?? []) {
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
