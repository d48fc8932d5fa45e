/** A sign in words: what is drawn, what each reading makes of it, and what other tables would. */
import { keeping } from '../../grammar/keeping';
import type { MarkForm, Recipe } from '../../grammar/tree';
import { shapeInWords } from '../../grammar/vocabulary/shapes';
import type { Environment } from '../score/environment';
import { recipeInWords } from '../signs/recipeWords';
import { keyOf, type PlayedRow, tableInForce, tablesNamed } from '../signs/rows';
import { recipeSaid } from '../signs/said';
import { builtInTables } from '../signs/tables';
import { certainties, citedBeside } from '../signs/tables/table';
import type { Project } from '../workspace/project';
import { type EventHere, eventHere } from './events';
import { literally } from './markdown';
import { hereAt } from './nodes';
import { type SignHere, signsNear, type Way } from './openSigns/openSigns';
import { playedBy, shapesDrawn } from './signs';

/** Of each project by block: a hover asks for the same again and again. */
const known = keeping((_: Project) => new Map<number, readonly SignHere[]>());

/** The sign at a place; undefined where no reading plays it. */
export function signAt(project: Project, offset: number): SignHere | undefined {
  const block = hereAt(project.tree, offset)?.blockIndex;
  if (block === undefined) return undefined;
  const near = known(project).get(block) ?? signsNear(project, block);
  known(project).set(block, near);
  return near.find(({ start, end }) => start <= offset && offset <= end);
}

/** Paragraphs of Markdown. */
export function signInWords(
  { analysis: { environment } }: Project,
  form: MarkForm,
  sign: SignHere | undefined,
): string[] {
  const shapes = shapesDrawn(form.name, environment);
  const drawn = shapes.map((shape) => `**'${shape.short}** ${shapeInWords(shape)}`);
  const shorts = shapes.map(({ short }) => short);
  if (sign === undefined) return [...drawn, ...byTables(shorts, environment)];
  return [...drawn, ...sign.ways.map((way) => wayInWords(sign, way))];
}

/** Where no reading plays the sign, what the tables named say of its shape. */
const byTables = (shorts: readonly string[], environment: Environment): string[] =>
  tablesNamed(environment).flatMap((table) => playedBy(table, shorts, environment).map((row) => `${table}: ${row}`));

function wayInWords({ signs }: SignHere, { readings, row, table, notes, settled }: Way): string {
  const who = readings.join(', ');
  if (row === undefined) return `${who}: ${table} says nothing of it here, it is played plain.`;
  const sure = row.played === undefined ? '' : ` (${certainties[row.played]})`;
  const played = notes.length === 0 ? 'It is played plain here.' : `Here: ${inShort(notes)}.`;
  const cited = row.citation === undefined ? '' : `\n\n*${citedBeside(row.played, row.citation)}*`;
  const said = settled ? ' The editor has said how it is played.' : '';
  const how = recipeAsMarkdown(recipeSaid(signs, row));
  return `${who}: **${literally(row.label)}** of ${row.table}${sure}, ${how}. ${played}${said}${cited}`;
}

/** Why it is not known how a sign is played is the file's own text. */
const recipeAsMarkdown = (recipe: Recipe): string =>
  recipe.unresolved === undefined ? recipeInWords(recipe) : literally(recipeInWords(recipe));

/** Longer trills go on as they begin. */
const SHOWN = 12;

const inShort = (notes: readonly string[]): string =>
  notes.length <= SHOWN ? notes.join(' ') : `${notes.slice(0, SHOWN).join(' ')} …, ${notes.length} notes`;

// ─── other tables ────────────────────────────────────────────────────────────────────────────────────────────────

/**
 * The sign at a place under every table that knows it, built in or of the file, as Markdown: those by which a reading plays it
 * first. Undefined where no reading plays it.
 * @param picture draws the bar by a table
 */
export function underTables(
  project: Project,
  offset: number,
  picture: (at: EventHere, table: string) => string | undefined,
): string | undefined {
  const sign = signAt(project, offset);
  const here = hereAt(project.tree, offset);
  const at = sign && here && eventHere(project, here, sign.ways[0]?.readings);
  if (sign === undefined || at === undefined) return undefined;
  const sections = tablesWith(project, sign).map(({ table, rows }) =>
    [`## ${table}`, ...rows.map(rowInWords), picture(at, table) ?? ''].join('\n\n'),
  );
  return [`# ${sign.typed}, bar ${sign.bar.number}`, ...sections].join('\n\n');
}

function tablesWith(
  { environment }: Project,
  { signs, ways }: SignHere,
): { table: string; rows: readonly PlayedRow[] }[] {
  const shapes = keyOf(signs.flatMap((sign) => sign.shapes));
  const names = [...ways.map(({ table }) => table), ...environment.tables.map(({ name }) => name), ...builtInTables];
  return [...new Set(names)].flatMap((table) => {
    const rows = tableInForce(table, environment)?.byShapes.get(shapes) ?? [];
    return rows.length === 0 ? [] : [{ table, rows }];
  });
}

function rowInWords({ label, when, played, recipe, citation }: PlayedRow): string {
  const where = when.length === 0 ? '' : `, when ${when.join(' and ')}`;
  const sure = played === undefined ? '' : ` (${certainties[played]})`;
  const cited = citation === undefined ? '' : ` *${citedBeside(played, citation)}*`;
  return `**${literally(label)}**${where}${sure}: ${recipeAsMarkdown(recipe)}.${cited}`;
}
