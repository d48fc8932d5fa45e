/** MEI held against the schema of the Music Encoding Initiative, and read back by an independent reader. */
import { readFileSync } from 'node:fs';
import { DOMParser, type Document, XMLSerializer, type Element as XmlElement } from '@xmldom/xmldom';
import { validateXML } from 'xmllint-wasm';
import { toNumber } from '../../grammar/time';
import { cannotDraw } from '../../server/engraving/engraver';
import { exportTimeline } from '../../server/export/timeline';
import { perform } from '../../server/readings/perform';
import type { Score } from '../../server/score/score';
import { engraver } from './engraver';
import { heard, timeOf } from './musicxml';
import { missingSchema, schemaPath } from './schemas';

/** The schema with all modules. */
export const MEI_SCHEMA = 'mei-5.1/mei-all-5.1.rng';

/** Common music notation alone, as programs that know no mensural notation read it. */
export const CMN_SCHEMA = 'mei-5.1/mei-CMN-5.1.rng';

/** What the schema objects to in documents, each by its name; nothing if all are valid. For tests that have the schema. */
export async function validateMei(
  documents: Readonly<Record<string, string>>,
  schema: string = MEI_SCHEMA,
): Promise<string[]> {
  const path = schemaPath(schema);
  if (path === undefined) throw new Error(missingSchema(schema));
  const result = await validateXML({
    xml: Object.entries(documents).map(([fileName, contents]) => ({ fileName, contents })),
    schema: [{ fileName: 'mei.rng', contents: readFileSync(path, 'utf8') }],
    extension: 'relaxng',
    initialMemoryPages: 1024,
    maxMemoryPages: 16384,
  });
  return result.errors.map(({ message, loc }) => `${loc?.fileName ?? ''} ${loc?.lineNumber ?? '?'}: ${message}`);
}

export const parsed = (text: string): Document => new DOMParser().parseFromString(text, 'text/xml');

/** The elements of a name in a document or in another element, in their order. */
export const elementsIn = (within: Document | XmlElement, name: string): XmlElement[] => [
  ...within.getElementsByTagName(name),
];

const attribute = (element: XmlElement, name: string): string => element.getAttribute(name) ?? '';

/** Attributes of MEI that point to other elements. */
const POINTING = ['startid', 'endid', 'plist', 'corresp', 'class', 'hand', 'source', 'resp', 'facs'];

/** What points to nothing, and ids that stand twice. */
export function looseEnds(text: string): string[] {
  const all = elementsIn(parsed(text), '*');
  const ids = all.map((element) => attribute(element, 'xml:id')).filter((id) => id !== '');
  const known = new Set(ids);
  const seen = new Set<string>();
  const twice = ids.filter((id) => seen.has(id) || !seen.add(id)).map((id) => `${id} stands twice`);
  const dangling = all.flatMap((element) =>
    POINTING.flatMap((name) => attribute(element, name).split(' '))
      .filter((reference) => reference.startsWith('#') && !known.has(reference.slice(1)))
      .map((reference) => `${element.tagName} points to ${reference}`),
  );
  return [...twice, ...dangling];
}

// ─── the independent reader ──────────────────────────────────────────────────────────────────────────────────────

const remove = (elements: readonly XmlElement[]): void => {
  for (const element of elements) element.parentNode?.removeChild(element);
};

/** The movement `index` of a document as its main text has it, without what the reader plays by its own lights. */
function mainText(text: string, index: number): Document {
  const document = parsed(text);
  remove(elementsIn(document, 'mdiv').filter((_, i) => i !== index));
  remove(elementsIn(document, 'rdg'));
  remove(elementsIn(document, 'choice').flatMap((choice) => [...elementsOf(choice)].slice(1)));
  remove(['graceGrp', 'arpeg'].flatMap((name) => elementsIn(document, name)));
  return document;
}

const elementsOf = (parent: XmlElement): XmlElement[] =>
  [...parent.childNodes].filter((node): node is XmlElement => node.nodeType === node.ELEMENT_NODE);

const struck = (onset: number, key: number | null): string => `${onset.toFixed(4)} ${key}`;

/**
 * "onset key" of every note that is struck in each movement, as the reader finds it: semibreves from the movement's start
 * and MIDI keys. A note to which a tie leads is not struck; small notes are left out. Sorted.
 */
export async function heardInMei(text: string): Promise<string[][]> {
  const reader = await engraver();
  return elementsIn(parsed(text), 'mdiv').map((_, index) => {
    const document = mainText(text, index);
    // A tie from before a first ending into a second joins no two notes that follow one another in the file.
    const ties = elementsIn(document, 'tie').filter((tie) => attribute(tie, 'startid') !== '');
    const tied = new Set(ties.map((tie) => attribute(tie, 'endid').slice(1)));
    const moments = reader.timemap(new XMLSerializer().serializeToString(document));
    if (cannotDraw(moments)) throw new Error(moments.failure);
    return moments
      .flatMap(({ crotchets, begin }) =>
        reader.keys(begin.filter((id) => !tied.has(id))).map(({ midi }) => struck(crotchets / 4, midi)),
      )
      .sort();
  });
}

/** The same as the timeline of the score has it, its signs left as they stand. */
export const struckInTimeline = (score: Score): string[][] =>
  (
    exportTimeline(perform(score, { ornaments: 'sign', rhythm: 'written' }), { leaveGaps: true }).timeline?.pieces ?? []
  ).map(({ events }) =>
    events
      .filter(({ kind, duration }) => kind === 'note' && duration !== '0')
      .map(({ onset, midi }) => struck(toNumber(timeOf(onset)), midi))
      .sort(),
  );

const STEPS: Readonly<Record<string, number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
const SIGNS: Readonly<Record<string, number>> = { bb: -2, b: -1, '': 0, '#': 1, '##': 2 };

/** The MIDI key of `bb4`: middle C is 60. */
const keyOf = (pitch: string): number => {
  const [, letter = '', sign = '', octave = ''] = /^([a-g])(bb|b|##|#|)(-?\d+)$/.exec(pitch) ?? [];
  return 12 * (Number(octave) + 1) + (STEPS[letter] ?? Number.NaN) + (SIGNS[sign] ?? Number.NaN);
};

/** The same as a reader of MusicXML finds it, the pieces one after another. */
export const struckInMusicXml = (text: string, score: Score): string[] =>
  heard(text, score)
    .map((note) => {
      const [, onset = '', pitch = ''] = /^([\d.]+)\+\S+ (\S+)/.exec(note) ?? [];
      return struck(Number(onset), keyOf(pitch));
    })
    .sort();

/** Movements one after another, each as long as its bars. */
export function inARow(movements: readonly (readonly string[])[], score: Score): string[] {
  let start = 0;
  return movements
    .flatMap((notes, i) => {
      const begins = start;
      for (const { duration } of score.pieces[i]?.bars ?? []) start += toNumber(duration);
      return notes.map((note) => {
        const [onset = '', key = ''] = note.split(' ');
        return struck(begins + Number(onset), Number(key));
      });
    })
    .sort();
}
