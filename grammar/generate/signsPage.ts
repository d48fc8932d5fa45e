/**
 * The page of all signs: every shape as our font draws it, and every table with its rows, each played on a sample note.
 *
 * Pure functions from data, and whoever draws, to files. The pictures stand in `grammar/signs/`.
 */
import type { Engraver } from '../../server/engraving/engraver';
import { codeOfShape } from '../../server/engraving/font/codepoints';
import { exportSvg, onWhite } from '../../server/pages/svg';
import { recipeOf } from '../../server/signs/recipes';
import { recipeInWords } from '../../server/signs/recipeWords';
import { signTables } from '../../server/signs/tables';
import {
  type Condition,
  certainties,
  citedBeside,
  rulesOf,
  type SignRow,
  type SignTable,
} from '../../server/signs/tables/table';
import { noFiles } from '../../server/workspace/host';
import { projectOf } from '../../server/workspace/project';
import { type Shape, shapeByName, shapes } from '../vocabulary/shapes';

export interface MadeFile {
  /** From the root. */
  readonly path: string;
  readonly text: string;
}

const FOLDER = 'grammar/signs';

/** The page and its pictures. */
export function signsPage(engraver: Engraver): MadeFile[] {
  const glyphs = shapes.flatMap((shape) => glyphFile(shape, engraver));
  const tables = signTables.filter(({ rows }) => rows.length > 0).map((table) => tableFile(table, engraver));
  const drawn = new Set([...glyphs, ...tables].map(({ path }) => path));
  return [...glyphs, ...tables, { path: 'grammar/SIGNS.md', text: page(drawn) }];
}

// ─── pictures ────────────────────────────────────────────────────────────────────────────────────────────────────

const shapePath = ({ short }: Shape): string => `${FOLDER}/${short}.svg`;
const tablePath = ({ table }: SignTable): string => `${FOLDER}/${table}.svg`;

/** Of the font's units for one of the screen: 250 units are a stave space. */
const UNITS = 16;
/** Around a glyph, in the font's units. */
const MARGIN = 60;

/** A shape by itself on white; nothing of a line from note to note, which has no glyph. */
function glyphFile(shape: Shape, engraver: Engraver): MadeFile[] {
  const glyph = engraver.outline(codeOfShape(shape) ?? 0);
  if (glyph === undefined) return [];
  const { left, bottom, right, top } = glyph.box;
  const [x, y] = [left - MARGIN, -top - MARGIN].map(Math.round);
  const [width, height] = [right - left + 2 * MARGIN, top - bottom + 2 * MARGIN].map(Math.round);
  const size = `width="${Math.round((width ?? 0) / UNITS)}" height="${Math.round((height ?? 0) / UNITS)}"`;
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${x} ${y} ${width} ${height}" ${size}>`,
    `<title>${shape.description}</title>`,
    `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="white"/>`,
    `<path transform="scale(1,-1)" d="${glyph.path}"/>`,
    '</svg>\n',
  ];
  return [{ path: shapePath(shape), text: svg.join('\n') }];
}

/** All rows of a table, a bar each: the sign, and above it what it means. */
function tableFile(table: SignTable, engraver: Engraver): MadeFile {
  const score = projectOf(noFiles, table.table, tableText(table)).analysis.score('written');
  const options = { clefs: 'source', leaveGaps: false, ornaments: 'above' } as const;
  const drawn = score && exportSvg(score, options, engraver).content;
  if (!Array.isArray(drawn) || drawn.length !== 1) throw new Error(`${table.table} cannot be drawn on one page`);
  return { path: tablePath(table), text: lighter(onWhite(drawn.join(''))) };
}

const BARS_OF_A_LINE = 4;

/** A score whose bars are the rows of a table. */
export function tableText({ table, rows }: SignTable): string {
  const lines = rows.reduce<string[][]>((all, row, index) => {
    const bar = barOf(row, index + 1);
    if (index % BARS_OF_A_LINE === 0) all.push([bar]);
    else all.at(-1)?.push(bar);
    return all;
  }, []);
  const systems = lines.map((bars, index) => {
    const head = index === 0 ? 'system stave G2 meter C' : 'system';
    return `${head}\n  voice | ${bars.join(' | ')} ${index === lines.length - 1 ? '|||' : '|'}\n`;
  });
  return `bentside 1\nsigns ${table}\ntempo 4 at 60\nstave stave\nvoice voice stave\n${systems.join('')}`;
}

/** Where a row fits, with what stands around the note that bears its sign; without a condition the note before is lower. */
const PLACES: Readonly<Record<Condition, (note: string) => string>> = {
  rising: (note) => `2 c5 ${note}`,
  falling: (note) => `2 e5 ${note}`,
  dotted: (note) => `4 c5 2. ${note}`,
  short: (note) => `2. c5 8 ${note} c`,
  'before rest': (note) => `4 c5 2 ${note} 4 r`,
  'before higher': (note) => `2 ${note} e`,
  'before lower': (note) => `2 ${note} c`,
  'before rising third': (note) => `2 ${note} f`,
  'before falling third': (note) => `2 ${note} b4`,
  'slurred from above': (note) => `2 e5'u ${note}'.`,
};

function barOf({ shapes: [first = '', ...others], names: [name], when = [] }: SignRow, number: number): string {
  const sign = [`'${first}(${name})`, ...others.map((shape) => `'${shape}`)].join('');
  const words = `(below "${number}")`;
  const isForChord = [first, ...others].some((shape) => shapeByName(shape)?.drawnFor === 'chord');
  if (isForChord) return `${words} 1 ${isThird(first) ? 'd5-f' : 'd4-f-a'}${sign}`;
  return `${words} ${PLACES[when[0] ?? 'rising'](`d5${sign}`)}`;
}

/** A shape that stands between the two notes of a third. */
const isThird = (short: string): boolean => shapeByName(short)?.place === 'between';

/** The same picture in less text: what leads back to a score, and spaces between elements, are left out. */
const lighter = (svg: string): string =>
  `${svg
    .replace(/^<\?xml[^>]*>\s*/, '')
    .replace(/ data-[\w-]+="[^"]*"/g, '')
    .replace(/>\s*\n\s*</g, '><')
    .trimEnd()}\n`;

// ─── the page ────────────────────────────────────────────────────────────────────────────────────────────────────

function page(drawn: ReadonlySet<string>): string {
  return `${[
    '# Signs and what they mean',
    '*Generated by `npm run generate` from `grammar/vocabulary/shapes.ts` and `server/signs/tables/`.*',
    'Every shape that can be typed, and every table that is built in. How signs are typed, and how a table of your own is written, stands in the [reference](REFERENCE.md#signs).',
    '## Shapes',
    [
      '| drawn | typed | what is seen | stands | in the tables |',
      '| --- | --- | --- | --- | --- |',
      ...shapes.map((shape) => shapeLine(shape, drawn)),
    ].join('\n'),
    '## Tables',
    'In the pictures each bar is a row, with its number below: the sign as it is drawn, and above it what is played for it on this note, at 60 crotchets a minute, in values that can be printed. Of a row whose playing is not settled only the sign is drawn. How sure a row is stands with it: a remembered row is to be held against a facsimile before anybody relies on it.',
    ...signTables.map((table) => tableSection(table)),
  ].join('\n\n')}\n`;
}

const relative = (path: string): string => path.replace(/^grammar\//, '');

function shapeLine(shape: Shape, drawn: ReadonlySet<string>): string {
  const path = shapePath(shape);
  const picture = drawn.has(path) ? `![${shape.description}](${relative(path)})` : 'a line';
  const tables = signTables.filter(({ rows }) => rows.some((row) => row.shapes.includes(shape.short)));
  const links = tables.map(({ table }) => `[${table}](#${table})`).join(', ');
  const stands = `${shape.place}${shape.drawnFor === 'chord' ? ', for the chord' : ''}`;
  return `| ${[picture, `\`'${shape.short}\`, \`'${shape.name}\``, shape.description, stands, links].join(' | ')} |`;
}

function tableSection(table: SignTable): string {
  const { title, from, rows, missing } = table;
  const rules = rulesOf(table).map(({ says, citation }) => `- ${says} *${citation}*`);
  return [
    `### ${table.table}`,
    `${title}.${from === undefined ? '' : ` It takes over the rows of [${from}](#${from}).`}`,
    ...(rows.length === 0 ? [] : [`![The rows of ${table.table}, one a bar](${relative(tablePath(table))})`]),
    ...(rows.length === 0 ? [] : [rows.map((row, index) => rowLines(row, index + 1)).join('\n')]),
    ...(rules.length === 0 ? [] : [rules.join('\n')]),
    ...(missing === undefined ? [] : [missing]),
  ].join('\n\n');
}

function rowLines(row: SignRow, number: number): string {
  const { label, names, when, recipe, played, drawn, citation, note, rivals = [] } = row;
  const typed = row.shapes.map((shape) => `'${shape}`).join('');
  const where = when === undefined ? '' : `, when ${when.join(' and ')}`;
  const parsed = recipeOf(recipe).recipe;
  const said = parsed.unresolved === undefined ? 'played so' : 'what is known of it';
  const sure = `Drawn so: ${certainties[drawn]}; ${said}: ${certainties[played]}.`;
  return [
    `${number}. \`${typed}\` **${label}** (\`'${names[0]}\`)${where}: ${recipeInWords(parsed)}. ${sure} *${citedBeside(played, citation)}*${note === undefined ? '' : ` ${note}`}`,
    ...rivals.map(
      (rival) => `   - or \`(${rival.name})\`: ${recipeInWords(recipeOf(rival.recipe).recipe)}. ${rival.advocates}`,
    ),
  ].join('\n');
}
