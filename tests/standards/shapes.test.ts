/** The catalogue of sign shapes and the tables' names for them, against SMuFL, MusicXML 4.0 and the treatises. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { markOf, spellingOf } from '../../grammar/lanes/forms';
import { typableName } from '../../grammar/vocabulary/names';
import { type Shape, shapeByName, shapes } from '../../grammar/vocabulary/shapes';
import { namesOf, rowsWithInherited, signTableByName, signTables, tableNames } from '../../server/signs/tables';
import { testWithSchema } from '../helpers/schemas';

/** The shapes that a table's name means: `drawn('couperin-1713', 'pince')`. */
const drawn = (table: string, name: string): readonly string[] | undefined =>
  namesOf(name).find((use) => use.table === table)?.shapes;

describe('the glyphs, against SMuFL (W3C, metadata/glyphnames.json)', () => {
  const list = 'smufl/glyphnames.json';
  const published = (path: string): Record<string, { codepoint: string } | undefined> =>
    JSON.parse(readFileSync(path, 'utf8'));

  testWithSchema(list, 'every glyph has the code point that the standard gives it', (path) => {
    const glyphs = published(path);
    const ours = shapes.filter((shape) => shape.glyph !== undefined);
    expect(ours.length).toBeGreaterThan(0);
    for (const { name, glyph = '', codepoint = 0 } of ours) {
      const hex = `U+${codepoint.toString(16).toUpperCase().padStart(4, '0')}`;
      expect({ name, glyph, codepoint: hex }).toEqual({ name, glyph, codepoint: glyphs[glyph]?.codepoint });
    }
  });

  testWithSchema(list, 'every stand-in is a glyph of the standard', (path) => {
    const glyphs = published(path);
    const standIns = shapes.flatMap((shape) => shape.nearest ?? []);
    expect(standIns.filter((glyph) => glyphs[glyph] === undefined)).toEqual([]);
  });

  test('a glyph comes with its code point, a stand-in only where there is no glyph', () => {
    const odd = shapes.filter(
      ({ glyph, codepoint, nearest }) =>
        (glyph === undefined) !== (codepoint === undefined) || (glyph !== undefined && nearest !== undefined),
    );
    expect(odd).toEqual([]);
  });
});

describe('the elements, against the schema of MusicXML 4.0 (W3C, musicxml.xsd)', () => {
  const schema = 'musicxml-4.0/musicxml.xsd';
  /** Elements that hold a sign, by their type in the schema; the last holds the others. */
  const holders = ['ornaments', 'articulations', 'notations'];

  function elementsIn(xsd: string, type: string): Set<string> {
    const start = xsd.indexOf(`<xs:complexType name="${type}">`);
    const body = start < 0 ? '' : xsd.slice(start, xsd.indexOf('</xs:complexType>', start));
    return new Set([...body.matchAll(/<xs:element name="([^"]+)"/g)].map((match) => match[1] ?? ''));
  }

  const holderOf = (xsd: string, element: string): string | undefined =>
    holders.find((holder) => !holders.includes(element) && elementsIn(xsd, holder).has(element));

  function elementOf({ musicxml, musicxmlAttributes, glyph }: Shape): string {
    const attributes = {
      ...(musicxml === 'wavy-line' ? { type: 'start' } : {}),
      ...(musicxml.startsWith('other-') && glyph !== undefined ? { smufl: glyph } : {}),
      ...musicxmlAttributes,
    };
    const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${value}"`);
    return `<${musicxml}${written.join('')}/>`;
  }

  const held = (holder: string | undefined, element: string): string =>
    holder === 'notations' ? element : `<${holder}>${element}</${holder}>`;

  const scoreOf = (notations: readonly string[]): string =>
    `<score-partwise version="4.0"><part-list><score-part id="P1"><part-name/></score-part></part-list>` +
    `<part id="P1"><measure number="1">${notations
      .map(
        (notation) =>
          `<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration>` +
          `<notations>${notation}</notations></note>`,
      )
      .join('\n')}</measure></part></score-partwise>`;

  testWithSchema(schema, 'every shape has an element that a note can bear', (path) => {
    const xsd = readFileSync(path, 'utf8');
    const homeless = shapes.filter((shape) => holderOf(xsd, shape.musicxml) === undefined);
    expect(homeless.map((shape) => `${shape.name}: ${shape.musicxml}`)).toEqual([]);
  });

  testWithSchema(schema, 'one note for each shape, with its element and attributes, is valid', async (path) => {
    const xsd = readFileSync(path, 'utf8');
    const beside = (fileName: string) => ({
      fileName,
      contents: readFileSync(join(dirname(path), fileName), 'utf8'),
    });
    const score = (each: readonly Shape[]): string =>
      scoreOf(each.map((shape) => held(holderOf(xsd, shape.musicxml), elementOf(shape))));
    const validate = (contents: string) =>
      validateXML({
        xml: [{ fileName: 'shapes.musicxml', contents }],
        schema: [{ fileName: 'musicxml.xsd', contents: xsd }],
        preload: [beside('xlink.xsd'), beside('xml.xsd')],
      });
    expect((await validate(score(shapes))).errors).toEqual([]);
    // The check can fail: a mordent has no slash.
    const wrong = shapes.slice(0, 1).map((shape) => ({ ...shape, musicxmlAttributes: { slash: 'yes' } }));
    expect((await validate(score(wrong))).valid).toBe(false);
  });
});

describe('names', () => {
  const shapeNames = shapes.flatMap((shape) => [shape.name, shape.short]);
  const allNames = [...shapeNames, ...tableNames];

  test('no two shapes share a name or short name', () => {
    expect(shapeNames.filter((name, index) => shapeNames.indexOf(name) !== index)).toEqual([]);
  });

  test('every name and short name finds its shape, and another word finds none', () => {
    for (const shape of shapes) {
      expect(shapeByName(shape.name)).toBe(shape);
      expect(shapeByName(shape.short)).toBe(shape);
    }
    expect(shapeByName('zigzagged')).toBeUndefined();
    expect(shapeByName('constructor')).toBeUndefined();
  });

  test('every name is of small letters without accents, digits and `_`', () => {
    expect(allNames.filter((name) => typableName(name) !== name)).toEqual([]);
  });

  test('no name is a word that is reserved after an apostrophe', () => {
    const reserved = 'u . # ## b bb n 1 2 3 4 5 line through fermata dot stroke renvoi fin fig text w2 w14'.split(' ');
    expect(allNames.filter((name) => reserved.includes(name))).toEqual([]);
    expect(allNames.filter((name) => markOf(`'${name}`)?.type !== 'sign')).toEqual([]);
  });

  test('no name but `cb`, the comma before, could be a note', () => {
    expect(allNames.filter((name) => spellingOf(name) !== undefined)).toEqual(['cb']);
  });

  test("a table's name is no other shape's name", () => {
    const clashes = signTables.flatMap((table) =>
      table.rows.filter(({ names, shapes: meant }) => {
        const shape = names.map(shapeByName).find((one) => one !== undefined);
        return shape !== undefined && !(meant.length === 1 && meant[0] === shape.short);
      }),
    );
    expect(clashes).toEqual([]);
  });
});

describe('the built-in tables', () => {
  test('all seventeen are there', () => {
    expect(signTables.map((table) => table.table).sort()).toEqual(
      [
        ...['anglebert-1689', 'chambonnieres-1670', 'clementi-1801', 'correa-1626', 'couperin-1713', 'dandrieu-1724'],
        ...['diruta-1593', 'english-strokes', 'le-roux-1705', 'marpurg-1755', 'muffat-1690', 'muffat-1739'],
        ...['purcell-1696', 'quantz-1752', 'rameau-1724', 'santa-maria-1565', 'turk-1789'],
      ].sort(),
    );
  });

  test.each(signTables.map((table) => [table.table, table] as const))(
    '%s cites known shapes, each name once',
    (_, table) => {
      const rows = rowsWithInherited(table);
      expect(rows.length).toBeGreaterThan(0);
      expect(rows.flatMap((row) => row.shapes).filter((short) => shapeByName(short)?.short !== short)).toEqual([]);
      expect(rows.filter((row) => row.shapes.length === 0 || new Set(row.shapes).size < row.shapes.length)).toEqual([]);
      const names = rows.flatMap((row) => row.names);
      expect(new Set(names).size).toBe(names.length);
      if (table.from !== undefined) expect(signTableByName(table.from)).toBeDefined();
    },
  );

  test('a name that several tables have is found in all of them, and an unknown one in none', () => {
    expect(namesOf('pince').map((use) => use.table)).toEqual([
      'anglebert-1689',
      'le-roux-1705',
      'couperin-1713',
      'rameau-1724',
    ]);
    expect(namesOf('sneeze')).toEqual([]);
    expect(namesOf('constructor')).toEqual([]);
  });
});

describe('what the treatises draw', () => {
  test('d\'Anglebert 1689, "Marques des agréments": the pincé is a comma after the note, the cheute one before it', () => {
    expect(drawn('anglebert-1689', 'pince')).toEqual(['ca']);
    expect(shapeByName('ca')?.place).toBe('after');
    expect(drawn('anglebert-1689', 'cheute')).toEqual(['cb']);
    expect(shapeByName('cb')?.place).toBe('before');
    expect(drawn('anglebert-1689', 'cheute_et_pince')).toEqual(['cb', 'ca']);
  });

  test('d\'Anglebert 1689: the coulé on a third is a curve before it when it rises, after it when it falls (Grove, "Ornaments")', () => {
    expect(drawn('anglebert-1689', 'coule_sur_une_tierce')).toEqual(['tcb']);
    expect(drawn('anglebert-1689', 'coule_sur_une_tierce_autre')).toEqual(['tca']);
    expect(shapeByName('tcb')).toMatchObject({ place: 'before', drawnFor: 'chord' });
    expect(shapeByName('tca')).toMatchObject({ place: 'after', drawnFor: 'chord' });
  });

  test("SMuFL names d'Anglebert for the hooked zigzags of his two cadences", () => {
    expect(shapeByName(drawn('anglebert-1689', 'cadence')?.[0] ?? '')?.codepoint).toBe(0xe5b5);
    expect(shapeByName(drawn('anglebert-1689', 'cadence_autre')?.[0] ?? '')?.codepoint).toBe(0xe5b4);
  });

  test('Couperin 1713, "Explication des agrémens": the pincé is a zigzag with a stroke (from memory)', () => {
    expect(drawn('couperin-1713', 'pince')).toEqual(['zs']);
    expect(drawn('couperin-1713', 'pince_simple')).toEqual(['zs']);
    expect(shapeByName('zs')?.glyph).toBe('ornamentMordent');
  });

  test('one name, two drawings: the pincé of 1713 is not that of 1689 and 1724', () => {
    expect(drawn('rameau-1724', 'pince')).toEqual(drawn('anglebert-1689', 'pince'));
    expect(drawn('couperin-1713', 'pince')).not.toEqual(drawn('anglebert-1689', 'pince'));
  });

  test("one drawing, two names: the zigzag is Purcell's beat of 1696 and d'Anglebert's trill of 1689 (from memory)", () => {
    expect(drawn('purcell-1696', 'beat')).toEqual(drawn('anglebert-1689', 'tremblement_simple'));
  });

  test('Purcell 1696: the shake is two strokes; fore-fall and back-fall are one, rising or falling to the note (from memory)', () => {
    expect(drawn('purcell-1696', 'shake')).toEqual(['ss']);
    expect(drawn('purcell-1696', 'fore_fall')).toEqual(['sbu']);
    expect(drawn('purcell-1696', 'back_fall')).toEqual(['sbd']);
    expect(drawn('purcell-1696', 'plain_note_and_shake')).toEqual(['sbd', 'ss']);
  });

  test('Rameau 1724: the double cadence is a zigzag ending in a hook, the doublé a reclining s (Grove, "Ornaments")', () => {
    expect(drawn('rameau-1724', 'double_cadence')).toEqual(['zr']);
    expect(drawn('rameau-1724', 'double')).toEqual(['turn']);
  });

  test('Chambonnières 1670: his double cadence is a reclining s, his port de voix a small cross (from memory)', () => {
    expect(drawn('chambonnieres-1670', 'double_cadence')).toEqual(['turn']);
    expect(drawn('chambonnieres-1670', 'port_de_voix')).toEqual(['plus']);
  });

  test('D. Hunter 1996 on the English virginalists: strokes are single or double, through the stem', () => {
    expect(drawn('english-strokes', 'single_stroke')).toEqual(['s']);
    expect(drawn('english-strokes', 'double_stroke')).toEqual(['ss']);
    expect(shapeByName('s')?.place).toBe('stem');
    expect(shapeByName('ss')?.place).toBe('stem');
  });

  test('Le Roux 1705 takes over d\'Anglebert\'s signs (Grove, "Ornaments")', () => {
    expect(drawn('le-roux-1705', 'tremblement_appuye')).toEqual(drawn('anglebert-1689', 'tremblement_appuye'));
  });

  test('a wavy line at a chord and the curves of a third are drawn for the chord, a zigzag for its note (common practice)', () => {
    for (const short of ['arp', 'arpu', 'arpd', 'tcb', 'tca', 'stu', 'std']) {
      expect(shapeByName(short)?.drawnFor).toBe('chord');
    }
    expect(shapeByName('zz')?.drawnFor).toBe('note');
  });
});
