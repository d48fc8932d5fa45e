/**
 * Makes the font from one that follows SMuFL and whose licence (OFL) allows it: a zip file in the engraving library's form,
 * with boxes and stems of all glyphs in one file and the outline of each in its own.
 *
 * Units are those of SMuFL fonts: 1000 to the em, 250 to a stave space.
 */
import { strToU8, zipSync } from 'fflate';
import opentype from 'opentype.js';
import type { Borrowed, Drawn, Part, Stroke } from './composed';
import { FONT_NAME, type GlyphRecipe, glyphs } from './glyphs';

const EM = 1000;
const SPACE = EM / 4;

/** The part of SMuFL's font metadata that is needed: points of a glyph, by SMuFL's name, in stave spaces. */
export interface FontMetadata {
  readonly glyphsWithAnchors: Readonly<Record<string, Readonly<Record<string, readonly [x: number, y: number]>>>>;
}

/** Names in the metadata of the glyphs that bear stems. */
const STEMMED: ReadonlyMap<number, string> = new Map([
  [0xe0a2, 'noteheadWhole'],
  [0xe0a3, 'noteheadHalf'],
  [0xe0a4, 'noteheadBlack'],
]);

/** The font as a zip file. Equal outlines give equal bytes. */
export function makeFont(openType: ArrayBuffer, metadata: FontMetadata): Uint8Array {
  const source = opentype.parse(openType);
  const made = glyphs.map((recipe) => glyphOf(recipe, source, metadata));
  const boxes = `<bounding-boxes font-family="${FONT_NAME}" units-per-em="${EM}">\n${made.map(({ box }) => box).join('\n')}\n</bounding-boxes>\n`;
  const files = {
    [`${FONT_NAME}.css`]: '',
    [`${FONT_NAME}.xml`]: `<?xml version="1.0" encoding="UTF-8"?>\n${boxes}`,
    ...Object.fromEntries(made.map(({ code, outline }) => [`${FONT_NAME}/${code}.xml`, outline])),
  };
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])), {
    // Zip files count years from 1980; a steady date makes steady bytes.
    mtime: '1980-01-01T00:00:00',
  });
}

interface MadeGlyph {
  /** As the library names the file: four hexadecimal digits. */
  readonly code: string;
  readonly box: string;
  readonly outline: string;
}

function glyphOf(recipe: GlyphRecipe, source: opentype.Font, metadata: FontMetadata): MadeGlyph {
  const code = recipe.code.toString(16).toUpperCase();
  const path = new opentype.Path();
  for (const part of recipe.parts) {
    const commands = commandsOf(part, source);
    path.commands.push(...(recipe.apart === undefined ? commands : besideAll(path, commands, recipe.apart)));
  }
  if (recipe.centred === true) centre(path);
  // The reader of outlines writes no number for the nearly nothing that sums of fractions leave.
  path.commands = path.commands.map((command) => mapped(command, Math.round, Math.round));
  const { x1, y1, x2, y2 } = path.commands.length === 0 ? EMPTY : path.getBoundingBox();
  const width = recipe.width === undefined ? x2 : recipe.width * SPACE;
  const [x, y, w, h, advance] = [x1, y1, Math.max(x2 - x1, width - x1), y2 - y1, width].map(Math.round);
  return {
    code,
    box: `<g c="${code}" n="uni${code}" x="${x}" y="${y}" w="${w}" h="${h}" h-a-x="${advance}">${anchors(recipe, metadata)}</g>`,
    outline: `<g id="${code}"><path transform="scale(1,-1)" d="${path.toPathData(0)}"/></g>`,
  };
}

const EMPTY = { x1: 0, y1: 0, x2: 0, y2: 0 };

function anchors({ stemsOf }: GlyphRecipe, { glyphsWithAnchors }: FontMetadata): string {
  const name = stemsOf === undefined ? undefined : STEMMED.get(stemsOf);
  const points = name === undefined ? {} : (glyphsWithAnchors[name] ?? {});
  return Object.entries(points)
    .map(([point, [x, y]]) => `<a n="${point}" x="${x}" y="${y}"/>`)
    .join('');
}

// ─── outlines ────────────────────────────────────────────────────────────────────────────────────────────────────────

type Command = opentype.PathCommand;

function commandsOf(part: Part, source: opentype.Font): readonly Command[] {
  if ('from' in part) return borrowed(part, source);
  return 'stroke' in part ? stroke(part) : drawn(part);
}

/** The outline of a glyph in the font's own units, y up. */
function borrowed({ from, x = 0, y = 0, scale = 1 }: Borrowed, source: opentype.Font): readonly Command[] {
  const glyph = source.charToGlyph(String.fromCodePoint(from));
  if (glyph.index === 0) throw new RangeError(`the font has no glyph ${from.toString(16)}`);
  const { commands } = glyph.getPath(0, 0, EM);
  return commands.map((command) =>
    mapped(
      command,
      (a) => a * scale + x * SPACE,
      // The library that reads the font counts y downwards.
      (b) => -b * scale + y * SPACE,
    ),
  );
}

function mapped(command: Command, across: (x: number) => number, up: (y: number) => number): Command {
  return Object.fromEntries(
    Object.entries(command).map(([key, value]) => {
      if (typeof value !== 'number') return [key, value];
      return [key, key.startsWith('x') ? across(value) : up(value)];
    }),
  ) as unknown as Command;
}

/** A stroke as the four corners around it. */
function stroke({ stroke: [x1, y1, x2, y2], width }: Stroke): readonly Command[] {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [dx, dy] = [(-(y2 - y1) / length) * (width / 2), ((x2 - x1) / length) * (width / 2)];
  const corners = [
    [x1 + dx, y1 + dy],
    [x2 + dx, y2 + dy],
    [x2 - dx, y2 - dy],
    [x1 - dx, y1 - dy],
  ].map(([x = 0, y = 0], i): Command => ({ type: i === 0 ? 'M' : 'L', x: x * SPACE, y: y * SPACE }));
  return [...corners, { type: 'Z' }];
}

function drawn({ outline }: Drawn): readonly Command[] {
  return [...outline.matchAll(/([MLCZ])([^MLCZ]*)/g)].map(([, type, numbers]): Command => {
    const points = (numbers ?? '')
      .trim()
      .split(/\s+/)
      .map((text) => Number(text) * SPACE);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = points;
    if (type === 'C') return { type, x1: a, y1: b, x2: c, y2: d, x: e, y: f };
    return type === 'Z' ? { type } : { type: type === 'M' ? 'M' : 'L', x: a, y: b };
  });
}

/** Commands moved to the right of a path, at a distance in stave spaces. */
function besideAll(path: opentype.Path, commands: readonly Command[], apart: number): readonly Command[] {
  if (path.commands.length === 0) return commands;
  const added = new opentype.Path();
  added.commands.push(...commands);
  const by = path.getBoundingBox().x2 + apart * SPACE - added.getBoundingBox().x1;
  return commands.map((command) =>
    mapped(
      command,
      (x) => x + by,
      (y) => y,
    ),
  );
}

function centre(path: opentype.Path): void {
  const { y1, y2 } = path.getBoundingBox();
  const middle = (y1 + y2) / 2;
  path.commands = path.commands.map((command) =>
    mapped(
      command,
      (x) => x,
      (y) => y - middle,
    ),
  );
}
