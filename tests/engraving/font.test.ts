/** The font: what it takes over stands where SMuFL has it; what it adds is where SMuFL leaves room for it. */
import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { shapes } from '../../grammar/vocabulary/shapes';
import {
  BLACK_BREVE,
  BLANK,
  clefPairs,
  codeOfEnclosed,
  codeOfShape,
  ENCLOSABLE,
  ENCLOSING,
  WIDE_BLANK,
} from '../../server/engraving/font/codepoints';
import { FONT_NAME, glyphs } from '../../server/engraving/font/glyphs';
import { fontZip, publishedBoxes, reservedName } from '../helpers/engraver';
import { testWithSchema } from '../helpers/schemas';

let files: Record<string, string> = {};

interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

const hex = (code: number): string => code.toString(16).toUpperCase();

const outline = (code: number): string => / d="([^"]*)"/.exec(files[`${FONT_NAME}/${hex(code)}.xml`] ?? '')?.[1] ?? '';

/** In stave spaces, from the corners of an outline's path; curves reach no further in these fonts than a hundredth. */
function boxOf(code: number): Box {
  const row = new RegExp(`<g c="${hex(code)}" [^>]*?x="(\\S+)" y="(\\S+)" w="(\\S+)" h="(\\S+)"`).exec(
    files[`${FONT_NAME}.xml`] ?? '',
  );
  const [x = Number.NaN, y = Number.NaN, w = Number.NaN, h = Number.NaN] = (row ?? []).slice(1).map(Number);
  return { left: x / 250, bottom: y / 250, right: (x + w) / 250, top: (y + h) / 250 };
}

const enclosedCodes = (): readonly number[] =>
  Object.keys(ENCLOSING).flatMap((around) =>
    Object.keys(ENCLOSABLE).flatMap((accidental) => codeOfEnclosed(accidental, around) ?? []),
  );

/** From where to where an outline reaches across in one piece, from the left, in stave spaces. */
function piecesAcross(code: number): readonly (readonly [left: number, right: number])[] {
  const parts = outline(code)
    .split('M')
    .map((part) => [...part.matchAll(/(-?\d+)[ ,]?(-?\d+)/g)].map(([, x]) => Number(x) / 250))
    .filter((xs) => xs.length > 0)
    .map((xs): [number, number] => [Math.min(...xs), Math.max(...xs)])
    .sort(([a], [b]) => a - b);
  const pieces: [number, number][] = [];
  for (const [left, right] of parts) {
    const last = pieces.at(-1);
    if (last !== undefined && left <= last[1]) last[1] = Math.max(last[1], right);
    else pieces.push([left, right]);
  }
  return pieces;
}

beforeAll(async () => {
  files = Object.fromEntries(
    Object.entries(unzipSync(await fontZip())).map(([name, bytes]) => [name, strFromU8(bytes)]),
  );
});

describe('the font', () => {
  it('has a box and an outline for every glyph, each code point once', () => {
    const codes = glyphs.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes.filter((code) => Number.isNaN(boxOf(code).left))).toEqual([]);
    const drawn = glyphs.filter(({ parts }) => parts.length > 0).map(({ code }) => code);
    expect(drawn.filter((code) => !/^[MLCQZ\d\s-]+$/.test(outline(code)))).toEqual([]);
  });

  it('does not bear the name that its source reserves', () => {
    expect(Object.keys(files).filter((name) => !name.startsWith(FONT_NAME))).toEqual([]);
    expect(FONT_NAME.toLowerCase()).not.toContain(reservedName().toLowerCase());
    expect(files[`${FONT_NAME}.xml`]).toMatch(/font-family="Thornmere" units-per-em="1000"/);
  });

  it('draws every shape of the catalogue, but for the line that joins two staves', () => {
    const without = shapes.filter((shape) => codeOfShape(shape) === undefined).map(({ name }) => name);
    expect(without).toEqual(['staves_link']);
    const codes = shapes.flatMap((shape) => codeOfShape(shape) ?? []);
    expect(codes.filter((code) => outline(code) === '')).toEqual([]);
  });

  // SMuFL 1.4, glyphnames.json (W3C), gives names their code points; the boxes are those that the font's makers publish.
  testWithSchema('smufl/glyphnames.json', 'has the outlines of SMuFL at the code points of SMuFL', (path) => {
    const names = JSON.parse(readFileSync(path, 'utf8')) as Record<string, { codepoint: string }>;
    const published = publishedBoxes();
    const compared = Object.entries(names).flatMap(([name, { codepoint }]) => {
      const code = Number.parseInt(codepoint.slice(2), 16);
      const box = published[name];
      return box !== undefined && glyphs.some((glyph) => glyph.code === code) ? [{ name, code, box }] : [];
    });
    expect(compared.length).toBeGreaterThan(150);
    for (const { name, code, box } of compared) {
      const { left, bottom, right, top } = boxOf(code);
      const [[x2, y2], [x1, y1]] = [box.bBoxNE, box.bBoxSW];
      const distances = [left - x1, bottom - y1, right - x2, top - y2].map(Math.abs);
      expect(Math.max(...distances), `${name} at ${hex(code)}`).toBeLessThan(0.02);
    }
  });

  it('keeps its own glyphs in the range that SMuFL leaves to fonts', () => {
    // SMuFL 1.4, "Recommended and optional glyphs": U+F400 to U+F8FF.
    const own = [
      ...Object.values(clefPairs).map(({ code }) => code),
      ...enclosedCodes(),
      BLACK_BREVE,
      BLANK,
      WIDE_BLANK,
    ];
    expect(own.filter((code) => code < 0xf400 || code > 0xf8ff)).toEqual([]);
  });

  it('draws two clefs together two lines apart, or four', () => {
    for (const [letters, { code, linesApart }] of Object.entries(clefPairs)) {
      // A G clef reaches 4.4 stave spaces over its line, a C clef 2, drawn here at 82 parts in a hundred.
      const reach = letters.endsWith('G') ? 4.392 : 2.024;
      expect(boxOf(code).top, letters).toBeCloseTo(linesApart + reach * 0.82, 1);
    }
  });

  it('draws an F clef and the C clef above it clear of one another, dots and all', () => {
    const [f, c] = ['fClef', 'cClef'].map((name) => publishedBoxes()[name]?.bBoxNE[0] ?? Number.NaN);
    const { right } = boxOf(clefPairs.FC?.code ?? 0);
    expect(right).toBeGreaterThan(((f ?? 0) + (c ?? 0)) * 0.82 + 0.1);
  });

  it('keeps brackets and parentheses clear of the accidental between them', () => {
    expect(enclosedCodes()).toHaveLength(10);
    for (const code of enclosedCodes()) {
      const pieces = piecesAcross(code);
      const gaps = pieces.slice(1).map(([left], i) => left - (pieces[i]?.[1] ?? left));
      expect(gaps.length, hex(code)).toBeGreaterThanOrEqual(2);
      for (const gap of [gaps[0], gaps.at(-1)]) expect(gap, hex(code)).toBeGreaterThan(0.15);
    }
  });

  it('centres what stands beside a head on the line or space of that head', () => {
    const comma = shapes.find(({ short }) => short === 'ca');
    const { bottom, top } = boxOf((comma && codeOfShape(comma)) ?? 0);
    expect(top + bottom).toBeCloseTo(0, 1);
  });
});
