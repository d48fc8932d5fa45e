import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { meterSigns } from '../../grammar/vocabulary/meters';
import { shapes } from '../../grammar/vocabulary/shapes';
import { exportMei } from '../../server/export/mei';
import { addressOfId, barId, eventId, Ids, pageId, partId, systemId } from '../../server/export/mei/ids';
import { ACCIDENTALS, BARLINES, DURATIONS, METER_GLYPHS, SOUNDING } from '../../server/export/mei/tables';
import { looseEnds, MEI_SCHEMA, validateMei } from '../helpers/mei';
import { analysed } from '../helpers/music';
import { examplesOf, referenceText } from '../helpers/reference';
import { testWithSchema } from '../helpers/schemas';
import { scoreOf } from '../helpers/scores';

const OPTIONS = { clefs: 'source', leaveGaps: false } as const;

/** The words that the schema allows for a data type. */
function wordsOf(path: string, type: string): string[] {
  const schema = readFileSync(path, 'utf8');
  const body = schema.match(new RegExp(`<define name="mei_data.${type}">[\\s\\S]*?</define>`))?.[0] ?? '';
  return [...body.matchAll(/<value>([^<]+)<\/value>/g)].map((match) => match[1] ?? '');
}

// The schema of MEI 5.1 (Music Encoding Initiative, 2024) lists every word that a document may use.
describe('the words of MEI 5.1', () => {
  testWithSchema(MEI_SCHEMA, 'name every value from the maxima to the hundred and twenty-eighth', (path) => {
    const words = [...wordsOf(path, 'DURATION.cmn'), ...wordsOf(path, 'DURATION.mensural')];
    expect(words).toEqual(expect.arrayContaining(Object.values(DURATIONS)));
    expect(Object.keys(DURATIONS)).toHaveLength(11);
  });

  testWithSchema(MEI_SCHEMA, 'name every accidental, drawn and sounding', (path) => {
    expect(wordsOf(path, 'ACCIDENTAL.WRITTEN.basic')).toEqual(expect.arrayContaining(Object.values(ACCIDENTALS)));
    expect(wordsOf(path, 'ACCIDENTAL.GESTURAL.basic')).toEqual(expect.arrayContaining(Object.values(SOUNDING)));
  });

  testWithSchema(MEI_SCHEMA, 'name every barline', (path) => {
    const words = Object.values(BARLINES).flatMap(({ left, right }) =>
      [left, right].filter((one) => one !== undefined),
    );
    expect(wordsOf(path, 'BARRENDITION')).toEqual(expect.arrayContaining(words));
  });

  testWithSchema(MEI_SCHEMA, 'draw every sign of the catalogue in a valid document', async () => {
    const notes = shapes.map(({ short }) => `1 c5-e-g'${short}'#`).join(' | ');
    const text = `bentside 1\nvoice dessus\nsystem dessus G2 meter C\n  dessus | ${notes} |\n`;
    const { text: document } = exportMei(scoreOf(text), OPTIONS);
    expect(await validateMei({ 'signs.xml': document })).toEqual([]);
    expect(document.match(/<measure /g)).toHaveLength(shapes.length + 1);
    for (const { codepoint } of shapes)
      if (codepoint !== undefined) expect(document).toContain(`glyph.num="U+${codepoint.toString(16).toUpperCase()}"`);
  });

  testWithSchema(MEI_SCHEMA, 'say every example of the reference as written and as a leaf has it', async () => {
    const documents = examplesOf(referenceText())
      .filter(({ wrong, kind }) => wrong === undefined && kind !== 'frame' && kind !== 'timeline')
      .flatMap(({ line, file }) => {
        const analysis = analysed(file);
        return ['written', 'plain'].flatMap((choice) => {
          const score = analysis.score(choice);
          const text = score === undefined ? '' : exportMei(score, OPTIONS).text;
          return text === '' ? [] : [[`line${line}-${choice}.xml`, text] as const];
        });
      });
    expect(documents.length).toBeGreaterThan(80);
    expect(documents.flatMap(([name, text]) => looseEnds(text).map((end) => `${name}: ${end}`))).toEqual([]);
    expect(await validateMei(Object.fromEntries(documents))).toEqual([]);
  });
});

// SMuFL (W3C, metadata/glyphnames.json).
describe('the signs of measure that are no letters', () => {
  testWithSchema('smufl/glyphnames.json', 'have the code points of the standard', (path) => {
    const glyphs: Record<string, { codepoint: string }> = JSON.parse(readFileSync(path, 'utf8'));
    for (const { name, number } of Object.values(METER_GLYPHS)) expect(glyphs[name]?.codepoint).toBe(number);
  });

  it('are all in the table of meters but those that a text names itself', () => {
    expect(Object.keys(meterSigns)).toContain('O');
    expect(Object.keys(METER_GLYPHS)).toContain('O');
  });
});

describe('ids', () => {
  const system = { page: '3v', ordinal: 2 };

  it('say where an element comes from', () => {
    const id = eventId(system, { laneName: 'dessus.L', address: '4.3.K.2.1' });
    expect(id).toBe('e-3v-2-dessus.L-4.3.K.2.1');
    expect(addressOfId(id)).toEqual({ page: '3v', system: 2, lane: 'dessus.L', event: '4.3.K.2.1', member: undefined });
    expect(addressOfId(partId(partId(id, 'n', 3), 'm', 1))).toMatchObject({ event: '4.3.K.2.1', member: 3 });
  });

  it('name a bar alike whatever option or witness it begins with', () => {
    expect(barId(system, 'basse', '4.1.L.2')).toBe(barId(system, 'basse', '4.1.K.1'));
    expect(addressOfId(barId(system, 'basse', '4.1'))).toMatchObject({ lane: 'basse', event: '4.1' });
  });

  // XML 1.0 (fifth edition), production `NCName` of Namespaces in XML: no white space, no strokes, no brackets.
  it('hold any name of a page', () => {
    const odd = { page: 'f. 3 v/ü𝄞', ordinal: 1 };
    expect(systemId(odd)).toMatch(/^[A-Za-z][\w.-]*$/);
    expect(pageId(odd.page)).toMatch(/^[A-Za-z][\w.-]*$/);
    expect(addressOfId(systemId(odd))).toMatchObject({ page: odd.page, system: 1 });
  });

  it('are given once', () => {
    const ids = new Ids();
    expect([1, 2, 3].map(() => ids.take('e-1-1-canto-1.1'))).toEqual([
      'e-1-1-canto-1.1',
      'e-1-1-canto-1.1-x2',
      'e-1-1-canto-1.1-x3',
    ]);
  });

  it('of what no text has are nobody’s', () => {
    expect(['source-K', 'note-n7', 'p-3v', ''].map(addressOfId)).toEqual([undefined, undefined, undefined, undefined]);
  });
});
