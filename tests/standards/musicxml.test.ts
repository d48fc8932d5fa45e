import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { time } from '../../grammar/time';
import { shapes } from '../../grammar/vocabulary/shapes';
import { exportMusicXml, exportMxl } from '../../server/export/musicxml';
import { ACCIDENTALS, BARLINES } from '../../server/export/musicxml/tables';
import { fifthsOf } from '../../server/export/staves';
import { decompose, divisionsFor, flags, noteValue } from '../../server/export/values';
import { printXml, xml } from '../../server/export/xml';
import { readNotes, validateContainer, validateMusicXml } from '../helpers/musicxml';
import { testWithSchema } from '../helpers/schemas';
import { scoreOf } from '../helpers/scores';

const SCHEMA = 'musicxml-4.0/musicxml.xsd';
const OPTIONS = { clefs: 'source', leaveGaps: false } as const;

/** The words that the schema allows for a simple type. */
function wordsOf(path: string, type: string): string[] {
  const schema = readFileSync(path, 'utf8');
  const body = schema.match(new RegExp(`<xs:simpleType name="${type}">[\\s\\S]*?</xs:simpleType>`))?.[0] ?? '';
  return [...body.matchAll(/<xs:enumeration value="([^"]+)"/g)].map((match) => match[1] ?? '');
}

/** The W3C schema of MusicXML 4.0 lists every word that a document may use. */
describe('the words of MusicXML 4.0', () => {
  testWithSchema(SCHEMA, 'name every value from the maxima to the hundred and twenty-eighth', (path) => {
    const words = wordsOf(path, 'note-type-value');
    const bases = [8, 4, 2, 1].map((n) => time(n)).concat([2, 4, 8, 16, 32, 64, 128].map((d) => time(1, d)));
    const ours = bases.map((base) => noteValue(base, 0)?.type ?? '');
    expect(ours).toEqual([...words].reverse().slice(0, 11));
  });

  testWithSchema(SCHEMA, 'name every accidental', (path) => {
    expect(wordsOf(path, 'accidental-value')).toEqual(expect.arrayContaining(Object.values(ACCIDENTALS)));
  });

  testWithSchema(SCHEMA, 'name every barline', (path) => {
    const styles = Object.values(BARLINES).flatMap(({ left, right }) => [left, right].filter((s) => s !== undefined));
    expect(wordsOf(path, 'bar-style')).toEqual(expect.arrayContaining(styles));
  });

  testWithSchema(SCHEMA, 'draw every sign of the catalogue in a valid document', async () => {
    const notes = shapes.map(({ short }) => `1 c5-e-g'${short}'#`).join(' | ');
    const text = `bentside 1\nstave upper\nvoice dessus upper\nsystem upper G2 meter C\n  dessus | ${notes} |\n`;
    const { text: document } = exportMusicXml(scoreOf(text), OPTIONS);
    expect(await validateMusicXml(document)).toEqual([]);
    expect(document.match(/<measure /g)).toHaveLength(shapes.length);
  });
});

// "Hello World", the first example of the MusicXML 4.0 tutorial (W3C Music Notation Community Group): a semibreve on
// middle C in 4/4. The element values are remembered (from memory).
describe("the tutorial's first example", () => {
  const text = 'bentside 1\nstave upper\nvoice dessus upper\nsystem upper G2 meter 4/4\n  dessus | 1 c4 |\n';
  const document = exportMusicXml(scoreOf(text), OPTIONS).text;

  it.each([
    '<divisions>1</divisions>',
    '<fifths>0</fifths>',
    '<beats>4</beats>',
    '<beat-type>4</beat-type>',
    '<sign>G</sign>',
    '<line>2</line>',
    '<step>C</step>',
    '<octave>4</octave>',
    '<duration>4</duration>',
    '<type>whole</type>',
  ])('has %s', (element) => {
    expect(document).toContain(element);
  });

  it('is one part of one measure with one note', () => {
    expect(readNotes(document).map(({ measure, pitch }) => `${measure} ${pitch}`)).toEqual(['1 c4']);
  });

  testWithSchema(SCHEMA, 'is valid', async () => expect(await validateMusicXml(document)).toEqual([]));
});

describe('signatures', () => {
  const key = (text: string) =>
    text.split(' ').map((sign) => ({
      letter: sign[0] as 'a',
      accidental: sign.slice(1) as '#',
      octave: undefined,
    }));

  // The order of sharps and flats, and their number as fifths from C: MusicXML 4.0, `fifths` ("the number of flats or
  // sharps in a traditional key signature; negative numbers are used for flats"); the order is common practice.
  it.each([
    ['f#', 1],
    ['f# c# g# d# a# e# b#', 7],
    ['bb eb ab', -3],
    ['eb bb', -2],
  ])('%s is %i fifths', (text, fifths) => expect(fifthsOf(key(text))).toBe(fifths));

  it.each(['eb', 'f# g#', 'f# bb', 'bb bb'])('%s is none of the usual', (text) => {
    expect(fifthsOf(key(text))).toBeUndefined();
  });
});

describe('time', () => {
  // "If the number of divisions is 2, a duration of 1 is an eighth note" (MusicXML 4.0, `divisions`, from memory):
  // divisions count parts of a crotchet.
  it('is counted in whole parts of a crotchet', () => {
    expect(divisionsFor([time(1), time(1, 8)])).toBe(2n);
    expect(divisionsFor([time(1, 12), time(1, 16)])).toBe(12n);
    expect(divisionsFor([time(1, 28), time(3, 20)])).toBe(35n);
  });

  it('that no single value fills is filled by tied ones, the longest first', () => {
    const values = decompose(time(9, 16))?.map(({ type, dots }) => type + '.'.repeat(dots));
    expect(values).toEqual(['half', '16th']);
    expect(decompose(time(1, 3))).toBeUndefined();
  });

  // A quaver has one flag or beam, a semiquaver two, and so on (common practice).
  it('gives each value its flags', () => {
    const flagsOf = (d: number): number => flags(noteValue(time(1, d), 0));
    expect([1, 2, 4, 8, 16, 32, 64, 128].map(flagsOf)).toEqual([0, 0, 0, 1, 2, 3, 4, 5]);
  });
});

// XML 1.0, fifth edition: section 2.2 (characters), 2.4 (escapes), 3.3.3 (white space in attributes).
describe('XML', () => {
  it('keeps what it reserves behind escapes', () => {
    expect(printXml(xml('a', { b: '"<\n' }, 'x & <y>')).text).toContain('<a b="&quot;&lt;&#10;">x &amp; &lt;y&gt;</a>');
  });

  it('has no control characters and no halves of surrogate pairs', () => {
    const { text, replaced } = printXml(xml('a', {}, 'x\u0007\ud800\uffff𝄞'));
    expect(text).toContain('<a>x\ufffd\ufffd\ufffd𝄞</a>');
    expect(replaced).toBe(3);
  });
});

// MusicXML 4.0, "Compressed .mxl files": the first file of the archive is `mimetype`, not packed, with no extra field,
// so that the media type stands at a fixed place; `META-INF/container.xml` names the document. The places of the ZIP
// header are those of PKWARE's APPNOTE, section 4.3.7.
describe('the packed file', () => {
  const text = 'bentside 1\nstave upper\nvoice dessus upper\nsystem upper G2 meter C\n  dessus | 1 c4 |\n';
  const { bytes } = exportMxl(scoreOf(text), OPTIONS);
  const latin = (from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
  const word = (at: number): number => (bytes[at] ?? 0) + 256 * (bytes[at + 1] ?? 0);

  it('begins with its media type in plain letters', () => {
    expect(latin(30, 38)).toBe('mimetype');
    expect(word(8)).toBe(0);
    expect(word(28)).toBe(0);
    expect(latin(38, 38 + 34)).toBe('application/vnd.recordare.musicxml');
  });

  testWithSchema('musicxml-4.0/container.xsd', 'has a valid list of contents', async () => {
    const list = new TextDecoder().decode(unzipSync(bytes)['META-INF/container.xml']);
    expect(await validateContainer(list)).toEqual([]);
    expect(list).toContain('full-path="score.musicxml"');
  });
});
