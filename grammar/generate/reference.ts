/**
 * The generated lists of the reference: what the vocabulary, the catalogue of shapes, the sign tables, the meters, the
 * clefs and the catalogue of findings say, as Markdown.
 *
 * Pure functions from data to text. Each list stands in `grammar/REFERENCE.md` between `<!-- name:begin -->` and
 * `<!-- name:end -->`; what stands between is replaced, all else is left as it is.
 */
import { namesOf, signTables, tableNames } from '../../server/signs/tables';
import { certainties, citedBeside, type SignRow, type SignTable } from '../../server/signs/tables/table';
import { catalogue } from '../findings/catalogue';
import { clefLetters, clefNames } from '../vocabulary/clefs';
import { instrumentTypes } from '../vocabulary/instruments';
import { meterSigns } from '../vocabulary/meters';
import { type NameRole, reservedNames } from '../vocabulary/names';
import type { ClauseEntry, FreePart, Part, RowEntry, StatementEntry, WordsPart } from '../vocabulary/parts';
import { type Shape, shapes } from '../vocabulary/shapes';
import { changes, recipeForms, statements } from '../vocabulary/statements';
import { schemeInWords, temperaments } from '../vocabulary/temperaments';

// ─── Markdown ────────────────────────────────────────────────────────────────────────────────────────────────────

const code = (text: string): string => `\`${text}\``;
const cell = (text: string): string => text.replaceAll('|', '\\|');

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)];
}

const bullet = (depth: number, text: string): string => `${'  '.repeat(depth)}- ${text}`;

// ─── statements and changes ──────────────────────────────────────────────────────────────────────────────────────

const range = ({ range: limits }: FreePart): string =>
  limits === undefined ? '' : ` (${limits.low} to ${limits.high})`;

/** What comes before and after the thing itself: "perhaps `in`", "one or more". */
function placed(part: Part, what: string): string {
  const lead = part.after === undefined ? '' : `${code(part.after)} `;
  const again = part.repeat ? ', one or more' : '';
  return `${part.optional ? '*perhaps* ' : ''}${lead}${what}${again}`;
}

function wordLines(part: WordsPart, depth: number): string[] {
  return Object.entries(part.words).flatMap(([word, entry]) => [
    bullet(depth, `${code(word)}: ${entry.describe}`),
    ...partLines(entry.follow ?? [], depth + 1),
  ]);
}

function partLines(parts: readonly Part[], depth: number): string[] {
  return parts.flatMap((part) => {
    if (part.kind === 'free') return [bullet(depth, placed(part, `${part.what}${range(part)}`))];
    if (part.kind === 'words')
      return [bullet(depth, `${placed(part, part.what)}, one of`), ...wordLines(part, depth + 1)];
    return [
      bullet(depth, `${placed(part, part.what)}, in one of these forms`),
      ...part.forms.flatMap(([first, ...rest]) =>
        first === undefined ? [] : [...partLines([first], depth + 1), ...partLines(rest, depth + 2)],
      ),
    ];
  });
}

const opening: Readonly<Record<NonNullable<ClauseEntry['opens']>, string>> = {
  ':': `a colon ${code(':')}`,
  clef: 'a clef',
  staveAndClef: "a stave's name and a clef",
};

/** A clause that begins with a sign, a clef or a stave's name has that for its first part, so it is not said twice. */
const saysItself = (clause: ClauseEntry): boolean => clause.opens === 'clef' || clause.opens === 'staveAndClef';

function clauseLines(clauses: StatementEntry['clauses'], depth: number): string[] {
  return Object.entries(clauses).flatMap(([name, clause]) => {
    const head = clause.opens === undefined ? code(name) : opening[clause.opens];
    const times = clause.repeats ? ' Several may stand.' : '';
    return [
      bullet(depth, `clause ${head}: ${clause.describe}${times}`),
      ...(saysItself(clause) ? [] : partLines(clause.parts, depth + 1)),
    ];
  });
}

function rowLines(row: RowEntry, depth: number): string[] {
  const head = row.word === undefined ? 'rows, each on a line of its own' : `rows that begin with ${code(row.word)}`;
  return [
    bullet(depth, `${head}: ${row.describe}`),
    ...partLines(row.parts, depth + 1),
    ...clauseLines(row.clauses, depth + 1),
    ...(row.recipe ? [bullet(depth + 1, `a colon ${code(':')} and a recipe`)] : []),
  ];
}

function statementLines(): string[] {
  return Object.entries(statements).flatMap(([keyword, entry]) => {
    const lines = [
      ...partLines(entry.parts, 0),
      ...clauseLines(entry.clauses, 0),
      ...(entry.rows === undefined ? [] : rowLines(entry.rows, 0)),
    ];
    return [
      `#### ${code(keyword)}`,
      '',
      `${entry.describe} ${entry.repeats ? 'May stand several times.' : 'Stands once in a file.'}`,
      '',
      ...lines,
      '',
    ];
  });
}

function changeLines(): string[] {
  return Object.entries(changes).flatMap(([word, entry]) => {
    const more = entry.parts.length + Object.keys(entry.clauses).length > 0 ? ' …' : '';
    return [
      bullet(0, `${code(`(${word}${more})`)}: ${entry.describe}`),
      ...partLines(entry.parts, 1),
      ...clauseLines(entry.clauses, 1),
    ];
  });
}

// ─── signs ───────────────────────────────────────────────────────────────────────────────────────────────────────

const glyphOf = ({ glyph, nearest }: Shape): string =>
  glyph !== undefined ? code(glyph) : nearest !== undefined ? `none; nearest ${code(nearest)}` : 'none';

const shapeLines = (): string[] =>
  table(
    ['typed', 'lasting name', 'what is seen', 'stands as a rule', 'drawn for', 'glyph of SMuFL'],
    shapes.map((shape) => [
      code(`'${shape.short}`),
      code(shape.name),
      shape.description,
      shape.place === 'stem' ? 'at the stem' : shape.place,
      `the ${shape.drawnFor}`,
      glyphOf(shape),
    ]),
  );

const marks = (names: readonly string[]): string => code(names.map((name) => `'${name}`).join(''));

/** The recipe as a table in a score would have it, with the notes where it fits, and names that choose other readings. */
function playedAs({ when = [], recipe, rivals = [] }: SignRow): string {
  const where = when.length === 0 ? '' : `, when ${when.join(' and ')}`;
  const others = rivals.map((rival) => `${code(`(${rival.name})`)} ${code(rival.recipe)}`);
  return `${code(recipe)}${where}${others.length === 0 ? '' : `; or ${others.join(', ')}`}`;
}

const signRows = ({ rows }: SignTable): string[][] =>
  rows.map((row) => [
    row.names.map((name) => code(`'${name}`)).join(', '),
    marks(row.shapes),
    row.note === undefined ? row.label : `${row.label}. ${row.note}`,
    playedAs(row),
    `${certainties[row.drawn]}; ${certainties[row.played]}`,
    citedBeside(row.played, row.citation),
  ]);

const signHeads = ['typed', 'shape', 'name in the table', 'played', 'how sure of sign; of notes', 'from'];

const signNameLines = (): string[] =>
  signTables.flatMap((each) => [
    `#### ${code(each.table)}`,
    '',
    [
      `${each.title}.`,
      ...(each.from === undefined ? [] : [`Takes over the rows of ${code(each.from)}.`]),
      ...(each.missing === undefined ? [] : [each.missing]),
    ].join(' '),
    '',
    ...(each.rows.length === 0 ? [] : [...table(signHeads, signRows(each)), '']),
  ]);

/** Names that built-in tables give to different shapes. */
function ambiguousLines(): string[] {
  const rows = [...tableNames].sort().flatMap((name) => {
    const uses = namesOf(name);
    const drawn = [...new Set(uses.map((use) => marks(use.shapes)))];
    if (drawn.length < 2) return [];
    const said = drawn.map((sign) => {
      const by = uses.filter((use) => marks(use.shapes) === sign).map((use) => code(use.table));
      return `${sign} in ${by.join(', ')}`;
    });
    return [[code(`'${name}`), said.join('; ')]];
  });
  return table(['name', 'its shapes'], rows);
}

// ─── meters, clefs, names, findings ──────────────────────────────────────────────────────────────────────────────

const meterLines = (): string[] =>
  table(
    ['sign', 'a bar is', 'in words'],
    Object.entries(meterSigns).map(([sign, { beats, beatValue, describe }]) => [
      code(sign),
      `${beats}/${beatValue}`,
      describe,
    ]),
  );

function clefLines(): string[] {
  const usual = Object.entries(clefNames).map(([clef, name]) => {
    const letter = clef.charAt(0) as keyof typeof clefLetters;
    return [code(clef), name, `line ${clef.charAt(1)} is ${clefLetters[letter].describe.replace(/^.*: /, '')}`];
  });
  return table(['typed', "the trade's name", 'what it says'], usual);
}

const roleNames: Partial<Record<NameRole, string>> = {
  voice: 'a voice',
  stave: 'a stave',
  witness: 'a source',
  reading: 'a reading',
  place: 'a place',
};

const reservedLines = (): string[] =>
  table(
    ['what is named', 'cannot be called'],
    Object.entries(roleNames).map(([role, what]) => [
      what,
      reservedNames(role as NameRole)
        .map(code)
        .join(' '),
    ]),
  );

const recipeLines = (): string[] =>
  table(
    ['in a recipe', 'meaning'],
    Object.entries(recipeForms).map(([form, describe]) => [code(form), describe]),
  );

const temperamentLines = (): string[] =>
  table(
    ['temperament', 'its fifths; those not named are pure'],
    temperaments.map((entry) => [code(entry.name), schemeInWords(entry)]),
  );

const instrumentLines = (): string[] =>
  table(
    ['instrument', 'what it is', 'sounds', 'source'],
    instrumentTypes.map(({ name, title, compass, shortOctave, lacks, source }) => [
      code(name),
      title,
      [
        compass,
        ...(shortOctave === undefined ? [] : [`short octave ${shortOctave}`]),
        ...(lacks ?? []).map((note) => `no ${note}`),
      ].join(', '),
      source,
    ]),
  );

const findingLines = (): string[] =>
  table(
    ['code', 'level', 'sentence'],
    Object.entries(catalogue)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, { level, counsel, sentence }]) => [code(name), counsel ? `${level}, counsel` : level, sentence]),
  );

// ─── the page ────────────────────────────────────────────────────────────────────────────────────────────────────

interface List {
  /** The file of which it is made. */
  readonly from: string;
  readonly lines: () => readonly string[];
}

/** Every generated list by the name in its markers. */
export const lists: Readonly<Record<string, List>> = {
  statements: { from: 'grammar/vocabulary/statements.ts', lines: statementLines },
  changes: { from: 'grammar/vocabulary/statements.ts', lines: changeLines },
  recipes: { from: 'grammar/vocabulary/statements.ts', lines: recipeLines },
  shapes: { from: 'grammar/vocabulary/shapes.ts', lines: shapeLines },
  'sign-names': { from: 'server/signs/tables/', lines: signNameLines },
  'ambiguous-names': { from: 'server/signs/tables/', lines: ambiguousLines },
  meters: { from: 'grammar/vocabulary/meters.ts', lines: meterLines },
  clefs: { from: 'grammar/vocabulary/clefs.ts', lines: clefLines },
  temperaments: { from: 'grammar/vocabulary/temperaments.ts', lines: temperamentLines },
  instruments: { from: 'grammar/vocabulary/instruments.ts', lines: instrumentLines },
  reserved: { from: 'grammar/vocabulary/names.ts', lines: reservedLines },
  findings: { from: 'grammar/findings/catalogue.ts', lines: findingLines },
};

const listText = ({ from, lines }: List): string =>
  ['', `*Generated by \`npm run generate\` from \`${from}\`.*`, '', ...lines()].join('\n').trimEnd();

/**
 * The reference with all its lists made anew.
 * @throws Error if a list has no place in the text
 */
export function withLists(reference: string): string {
  return Object.entries(lists).reduce((text, [name, list]) => {
    const [begin, end] = [`<!-- ${name}:begin -->`, `<!-- ${name}:end -->`];
    const from = text.indexOf(begin);
    const to = text.indexOf(end, from);
    if (from < 0 || to < 0) throw new Error(`the reference has no place for the list “${name}”`);
    return `${text.slice(0, from + begin.length)}${listText(list)}\n\n${text.slice(to)}`;
  }, reference);
}
