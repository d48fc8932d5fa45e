/** From statements to the environment: what is declared, and what the declarations say of one another. */
import type { Fix, Problem } from '../../grammar/findings/finding';
import { nameInstead, nearest } from '../../grammar/nearest';
import { allOf, clauseOf, clausesOf, firstOf } from '../../grammar/statements/read';
import type { Argument, Clause, FileTree, NamePart, Span, Statement } from '../../grammar/tree';
import { typableName } from '../../grammar/vocabulary/names';
import { semitonesOf } from '../../grammar/vocabulary/pitches';
import { shapes as allShapes, shapeByName } from '../../grammar/vocabulary/shapes';
import { lookUp, statements as vocabulary } from '../../grammar/vocabulary/statements';
import { builtInTables } from '../signs/tables';
import type { AccidentalPractice } from './choice';
import {
  allChoices,
  type Declared,
  type Environment,
  MOST_CHOICES,
  type NoteDeclaration,
  type ReadingDeclaration,
  type SourceDeclaration,
  type StaveDeclaration,
  type TableDeclaration,
  type VoiceDeclaration,
} from './environment';
import type { FileSource, PlacedProblem, Tempo } from './score';
import { circlesOf } from './ways';

/** A statement and where it stands. */
interface Found {
  readonly statement: Statement;
  readonly declared: Declared;
  /** It stands in the head: before the first system. */
  readonly head: boolean;
}

/** What an include brings: tables, people and sources. */
export const brought: ReadonlySet<string> = new Set(['source', 'hand', 'editor', 'table', 'temperament']);

/** MIDI key of the c of octave 0. */
const KEY_OF_C0 = 12;
const USUAL_LINES = 5;

const shapeNames = allShapes.flatMap(({ name, short }) => [short, name]);

/** Words that a reading can take besides sources, layers and readings. */
const corrections = ['sic', 'corr'];

function statementsOf(tree: FileTree, file: string | undefined): Found[] {
  const found: Found[] = [];
  for (const [block, { kind, statements }] of tree.blocks.entries()) {
    if (kind === 'system') continue;
    for (const [
      index,
      {
        tree: { statement },
      },
    ] of statements.entries()) {
      const { pos, len } = statement;
      found.push({ statement, declared: { file, block, statement: index, pos, len }, head: kind === 'head' });
    }
  }
  return found;
}

type NameLike = Span & { readonly text: string };

/** What is being gathered, and the means to say what is wrong with it. */
class Declarations {
  readonly problems: PlacedProblem[] = [];
  /** By name space, then by name. */
  private readonly names = new Map<string, Map<string, { found: Found; at: NameLike }>>();

  constructor(
    readonly all: readonly Found[],
    private readonly includes: readonly Found[],
  ) {}

  of(keyword: string): Found[] {
    const found: Found[] = [];
    for (const one of this.all) if (one.statement.keyword === keyword) found.push(one);
    return found;
  }

  first(keyword: string): Found | undefined {
    for (const one of this.all) if (one.statement.keyword === keyword && one.declared.file === undefined) return one;
    return undefined;
  }

  /** Reports what is wrong in the file itself; included files are proofed by themselves. */
  report(
    found: Found,
    at: Span,
    code: Problem['code'],
    slots: Problem['slots'],
    more: { readonly fixes?: readonly Fix[]; readonly related?: PlacedProblem['related'] } = {},
  ): void {
    const { file, block, statement } = found.declared;
    if (file !== undefined) return;
    const fixes = more.fixes ?? [];
    this.problems.push({
      problem: { code, slots, pos: at.pos, len: at.len, ...(fixes.length === 0 ? {} : { fixes }) },
      block,
      lane: undefined,
      statement,
      ...(more.related === undefined ? {} : { related: more.related }),
    });
  }

  /** Gives a name in its name space; false, and a finding, where it is taken. */
  give(space: string, found: Found, at: NameLike): boolean {
    const given = this.names.get(space) ?? new Map<string, { found: Found; at: NameLike }>();
    this.names.set(space, given);
    const before = given.get(at.text);
    if (before === undefined) {
      given.set(at.text, { found, at });
      return true;
    }
    const source = this.sourceOf(before.found, before.at);
    const related = source === undefined ? [] : [{ message: `“${at.text}” is given here first`, source }];
    if (found.declared.file === undefined) this.report(found, at, 'name-used-twice', { name: at.text }, { related });
    else this.clash(found.declared.file, before.found, at.text);
    return false;
  }

  /** Two includes give one name: told at the include that came second. */
  private clash(file: string, before: Found, name: string): void {
    const include = this.includeOf(file);
    if (include === undefined || before.declared.file === file) return;
    this.report(include, include.statement, 'name-used-twice', { name });
  }

  /** The `include` that brings a file; for a file brought by another include the first one. */
  includeOf(file: string): Found | undefined {
    const brings = ({ statement }: Found): boolean => {
      const path = firstOf(statement.args, 'string')?.text.replace(/^(?:\.\/)+/, '');
      return path !== undefined && path !== '' && file.endsWith(path);
    };
    return this.includes.find(brings) ?? this.includes[0];
  }

  private sourceOf(found: Found, at: Span): FileSource | undefined {
    const { file, block, statement } = found.declared;
    if (file === undefined) return { block, lane: -1, statement, pos: at.pos, len: at.len };
    const include = this.includeOf(file);
    return include === undefined ? undefined : this.sourceOf(include, include.statement);
  }

  /** Reports a name that nothing bears; the nearest known one mends it. */
  unknown(found: Found, at: NameLike, code: Problem['code'], known: Iterable<string>): string | undefined {
    const meant = nearest(at.text, known);
    this.report(found, at, code, { name: at.text }, { fixes: nameInstead(at.text, at, known) });
    return meant;
  }
}

const nameIn = (args: readonly Argument[]): NameLike | undefined => firstOf(args, 'name');
const stringIn = (args: readonly Argument[]): string | undefined => firstOf(args, 'string')?.text;
const wordIn = (args: readonly Argument[]): string | undefined => firstOf(args, 'word')?.text;
const practiceIn = (args: readonly Argument[] | undefined): AccidentalPractice | undefined =>
  args && (wordIn(args) as AccidentalPractice | undefined);

// ─── staves and voices ───────────────────────────────────────────────────────────────────────────────────────────

const linesOf = (statement: Statement): number | undefined =>
  firstOf(clauseOf(statement, 'lines')?.args ?? [], 'number')?.value;

interface Layout {
  readonly staves: StaveDeclaration[];
  readonly voices: VoiceDeclaration[];
}

function layoutOf(declarations: Declarations): Layout {
  const named = new Set(declarations.of('stave').map(({ statement }) => nameIn(statement.args)?.text));
  const staves: StaveDeclaration[] = [];
  const waiting: { found: Found; name: NameLike }[] = [];
  for (const found of declarations.all) {
    const { statement, declared } = found;
    const name = nameIn(statement.args);
    if (name === undefined) continue;
    if (statement.keyword === 'stave' && declarations.give('stave', found, name)) {
      staves.push({ ...declared, name: name.text, lines: linesOf(statement) ?? USUAL_LINES });
    }
    if (statement.keyword !== 'voice' || !declarations.give('voice', found, name)) continue;
    waiting.push({ found, name });
    const own = statement.args.length === 1 && !named.has(name.text);
    if (own) staves.push({ ...declared, name: name.text, lines: linesOf(statement) ?? USUAL_LINES });
  }
  const voices = waiting.map(({ found, name }): VoiceDeclaration => {
    const stems = wordIn(clauseOf(found.statement, 'stems')?.args ?? []);
    return {
      ...found.declared,
      name: name.text,
      stave: staveOf(declarations, found, name, staves),
      stems: stems === 'up' || stems === 'down' ? stems : undefined,
    };
  });
  return { staves, voices };
}

/** Index of the stave of a voice; where it names none that there is, the one that it nearly names, or one of its own. */
function staveOf(declarations: Declarations, found: Found, voice: NameLike, staves: StaveDeclaration[]): number {
  const [, named] = allOf(found.statement.args, 'name');
  const wanted = named ?? voice;
  const lines = clauseOf(found.statement, 'lines');
  const index = staves.findIndex((stave) => stave.name === wanted.text);
  if (index >= 0) {
    const stave = staves[index];
    const isOwn = stave?.block === found.declared.block && stave.statement === found.declared.statement;
    if (lines !== undefined && !isOwn) {
      declarations.report(found, lines, 'lines-of-another', { stave: wanted.text, voice: voice.text });
    }
    return index;
  }
  const known = staves.map((stave) => stave.name);
  const meant = declarations.unknown(found, wanted, 'unknown-stave', known);
  if (meant !== undefined) return known.indexOf(meant);
  return staves.push({ ...found.declared, name: wanted.text, lines: linesOf(found.statement) ?? USUAL_LINES }) - 1;
}

// ─── sources and readings ────────────────────────────────────────────────────────────────────────────────────────

function sourcesOf(declarations: Declarations): SourceDeclaration[] {
  const sources = new Map<string, SourceDeclaration & { hands: { layer: number; description: string }[] }>();
  for (const found of declarations.of('source')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('label', found, name)) continue;
    const description = stringIn(found.statement.args) ?? '';
    sources.set(name.text, { ...found.declared, name: name.text, description, hands: [] });
  }
  for (const found of declarations.of('hand')) {
    const name = nameIn(found.statement.args);
    const [letter, layer] = name?.text.split('.') ?? [];
    if (name === undefined || letter === undefined || layer === undefined) continue;
    const source = sources.get(letter);
    if (source === undefined) {
      const at = { text: letter, pos: name.pos, len: letter.length };
      declarations.unknown(found, at, 'unknown-source', [...sources.keys()]);
    } else if (declarations.give('label', found, name)) {
      source.hands.push({ layer: Number(layer), description: stringIn(found.statement.args) ?? '' });
    }
  }
  return [...sources.values()];
}

function readingOf(found: Found, name: NameLike): ReadingDeclaration {
  const { statement, declared } = found;
  const first = (clause: string): readonly Argument[] => clauseOf(statement, clause)?.args ?? [];
  const order = allOf(first('order'), 'name').map((section) => section.text);
  const places = clausesOf(statement, 'at').flatMap(({ args }): [string, string][] => {
    const [place, label] = allOf(args, 'name');
    return place === undefined || label === undefined ? [] : [[place.text, label.text]];
  });
  return {
    ...declared,
    name: name.text,
    description: stringIn(statement.args) ?? '',
    from: nameIn(first('from'))?.text,
    takes: firstOf(first('takes'), 'names')?.names.map((label) => label.text) ?? [],
    // Of two words about one place the first counts.
    at: new Map(places.reverse()),
    accidentals: practiceIn(first('accidentals')),
    signs: nameIn(first('signs'))?.text,
    order: order.length === 0 ? undefined : order,
    clauses: statement.clauses,
  };
}

/** The labels that a reading cites, with their places. */
const labelsIn = ({ clauses }: { readonly clauses: readonly Clause[] }): NamePart[] => [
  ...clauses
    .filter((clause) => clause.name === 'takes')
    .flatMap((clause) => allOf(clause.args, 'names').flatMap((list) => list.names)),
  ...clauses.filter((clause) => clause.name === 'at').flatMap((clause) => allOf(clause.args, 'name').slice(1)),
];

/** A reading says of each place once what it takes there. */
function checkPlaces(declarations: Declarations, found: Found): void {
  const said = new Set<string>();
  for (const clause of clausesOf(found.statement, 'at')) {
    const place = nameIn(clause.args)?.text;
    if (place === undefined) continue;
    if (said.has(place))
      declarations.report(found, clause, 'repeated-clause', { word: `at ${place}`, where: 'reading' });
    said.add(place);
  }
}

function readingsOf(declarations: Declarations, sources: readonly SourceDeclaration[]): ReadingDeclaration[] {
  const founds: { found: Found; reading: ReadingDeclaration }[] = [];
  for (const found of declarations.of('reading')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('label', found, name)) continue;
    founds.push({ found, reading: readingOf(found, name) });
  }
  for (const { found } of founds) checkPlaces(declarations, found);
  const readings = founds.map(({ reading }) => reading);
  const names = readings.map((reading) => reading.name);
  const layers = sources.flatMap(({ name, hands }) => hands.map(({ layer }) => `${name}.${layer}`));
  const labels = new Set([...sources.map((source) => source.name), ...layers, ...names, ...corrections]);
  for (const { found } of founds) {
    for (const label of labelsIn(found.statement)) {
      if (!labels.has(label.text)) declarations.unknown(found, label, 'unknown-label', labels);
    }
  }
  checkWays(
    declarations,
    founds.map(({ found, reading }) => ({ found, name: reading.name })),
    { known: names, unknown: 'unknown-reading', circle: 'reading-circle' },
  );
  return readings;
}

/** Too many to be chosen: told where the first stands that cannot be. */
function checkChoices(declarations: Declarations, choices: readonly string[]): void {
  const name = choices[MOST_CHOICES];
  if (name === undefined) return;
  const isIt = ({ statement }: Found): boolean => nameIn(statement.args)?.text === name;
  const found = ['reading', 'source', 'hand'].flatMap((keyword) => declarations.of(keyword)).find(isIt);
  if (found === undefined) return;
  const { file } = found.declared;
  const at = file === undefined ? found : declarations.includeOf(file);
  if (at !== undefined) declarations.report(at, at.statement, 'too-many-choices', { name, most: MOST_CHOICES });
}

// ─── what comes from another ─────────────────────────────────────────────────────────────────────────────────────

interface Derived {
  readonly found: Found;
  readonly name: string;
}

interface Ways {
  readonly known: readonly string[];
  readonly unknown: Problem['code'];
  readonly circle: Problem['code'];
}

const fromIn = (found: Found): NameLike | undefined => nameIn(clauseOf(found.statement, 'from')?.args ?? []);

/** Follows every `from`: it must lead to something known and come to an end. */
function checkWays(declarations: Declarations, derived: readonly Derived[], ways: Ways): void {
  const circles = circlesOf(new Map(derived.map(({ found, name }) => [name, fromIn(found)?.text])));
  const known = new Set(ways.known);
  for (const { found, name } of derived) {
    const from = fromIn(found);
    if (from === undefined) continue;
    if (!known.has(from.text)) declarations.unknown(found, from, ways.unknown, ways.known);
    const way = circles.get(name);
    if (way !== undefined) declarations.report(found, from, ways.circle, { name, way });
  }
}

// ─── tables ──────────────────────────────────────────────────────────────────────────────────────────────────────

function tablesOf(declarations: Declarations): TableDeclaration[] {
  const founds: { found: Found; name: string }[] = [];
  const tables: TableDeclaration[] = [];
  for (const found of declarations.of('table')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('table', found, name)) continue;
    founds.push({ found, name: name.text });
    tables.push({
      ...found.declared,
      name: name.text,
      from: fromIn(found)?.text,
      rows: rowsOf(declarations, found),
    });
  }
  const known = [...builtInTables, ...tables.map((table) => table.name)];
  checkWays(declarations, founds, { known, unknown: 'unknown-table', circle: 'table-circle' });
  checkTables(declarations, new Set(known));
  return tables;
}

/** Rows of a table with the names that it gives them; several rows of one name and shape are one. */
function rowsOf(declarations: Declarations, found: Found): TableDeclaration['rows'] {
  const rows = new Map<string, { name: string; shapes: string[] }>();
  for (const { args, recipe } of found.statement.rows) {
    const typed = firstOf(args, 'names')?.names ?? [];
    for (const shape of typed) {
      if (shapeByName(shape.text) === undefined) declarations.unknown(found, shape, 'unknown-shape', shapeNames);
    }
    for (const shape of recipe?.extends?.split('+') ?? []) {
      if (shapeByName(shape) === undefined)
        declarations.report(found, recipe ?? found.statement, 'unknown-shape', { name: shape });
    }
    const shapes = typed.map(({ text }) => shapeByName(text)?.short ?? text);
    const name = typableName(stringIn(args) ?? '');
    if (name !== undefined && shapes.length > 0) rows.set(`${name} ${shapes.join('+')}`, { name, shapes });
  }
  return [...rows.values()];
}

/** Every table that the file or a reading chooses must be known. */
function checkTables(declarations: Declarations, known: ReadonlySet<string>): void {
  const chosen = [
    ...declarations.of('signs').map((found) => ({ found, args: found.statement.args })),
    ...declarations
      .of('reading')
      .flatMap((found) => clausesOf(found.statement, 'signs').map(({ args }) => ({ found, args }))),
  ];
  for (const { found, args } of chosen) {
    const name = nameIn(args);
    if (name !== undefined && !known.has(name.text)) declarations.unknown(found, name, 'unknown-table', known);
  }
}

// ─── people and annotations ──────────────────────────────────────────────────────────────────────────────────────

function editorsOf(declarations: Declarations): Map<string, Declared & { name: string }> {
  const editors = new Map<string, Declared & { name: string }>();
  for (const found of declarations.of('editor')) {
    const name = nameIn(found.statement.args);
    if (name === undefined || !declarations.give('editor', found, name)) continue;
    editors.set(name.text, { ...found.declared, name: stringIn(found.statement.args) ?? '' });
  }
  return editors;
}

function notesOf(declarations: Declarations, editors: ReadonlyMap<string, unknown>): Map<string, NoteDeclaration> {
  const notes = new Map<string, NoteDeclaration>();
  for (const found of declarations.of('note')) {
    const { statement, declared } = found;
    const name = nameIn(statement.args);
    if (name === undefined || !declarations.give('note', found, name)) continue;
    const args = (clause: string): readonly Argument[] => clauseOf(statement, clause)?.args ?? [];
    const by = nameIn(args('by'));
    if (by !== undefined && !editors.has(by.text)) {
      declarations.unknown(found, by, 'unknown-editor', [...editors.keys()]);
    }
    notes.set(name.text, {
      ...declared,
      text: stringIn(args('text')),
      about: wordIn(args('kind')),
      by: by?.text,
      certainty: wordIn(args('certainty')),
      evidence: stringIn(args('evidence')),
    });
  }
  return notes;
}

// ─── what the file states once ───────────────────────────────────────────────────────────────────────────────────

/** Statements that stand once in a file: a second one is passed over. */
function checkOnce(declarations: Declarations): void {
  const first = new Map<string, Found>();
  for (const found of declarations.all) {
    const { keyword } = found.statement;
    const entry = lookUp(vocabulary, keyword);
    if (entry === undefined || entry.repeats || found.declared.file !== undefined) continue;
    const before = first.get(keyword);
    if (before === undefined) {
      first.set(keyword, found);
      continue;
    }
    const { block, statement, pos } = before.declared;
    const source: FileSource = { block, lane: -1, statement, pos, len: keyword.length };
    const related = [{ message: `\`${keyword}\` is stated here first`, source }];
    const at = { pos: found.statement.pos, len: keyword.length };
    declarations.report(found, at, 'stated-twice', { name: keyword }, { related });
  }
}

function tempoOf(declarations: Declarations): Tempo | undefined {
  const found = declarations.of('tempo').find(({ head, declared }) => head && declared.file === undefined);
  const value = firstOf(found?.statement.args ?? [], 'value');
  const rate = firstOf(found?.statement.args ?? [], 'number');
  return value === undefined || rate === undefined ? undefined : { value: value.form, perMinute: rate.value };
}

function compassOf(declarations: Declarations): Environment['compass'] {
  const instrument = declarations.first('instrument')?.statement;
  const keys = instrument && firstOf(clauseOf(instrument, 'compass')?.args ?? [], 'pair');
  return keys && { low: semitonesOf(keys.first) + KEY_OF_C0, high: semitonesOf(keys.second) + KEY_OF_C0 };
}

const beamingOf = (declarations: Declarations): Environment['beaming'] =>
  declarations.of('beaming').flatMap(({ statement: { args } }) => {
    const [value, by] = [firstOf(args, 'value'), firstOf(args, 'number')];
    return value === undefined || by === undefined ? [] : [{ value: value.form, by: by.value }];
  });

/** Practices of rhythm can be for one voice: it must be there. */
function checkPractices(declarations: Declarations, voices: readonly VoiceDeclaration[]): void {
  const known = new Set(voices.map((voice) => voice.name));
  const practices = declarations.all.flatMap((found) => [
    ...(found.statement.keyword === 'practice' ? [{ found, args: found.statement.args }] : []),
    ...(found.statement.keyword === 'reading' ? clausesOf(found.statement, 'practice') : []).map(({ args }) => ({
      found,
      args,
    })),
  ]);
  for (const { found, args } of practices) {
    const index = args.findIndex((arg) => arg.kind === 'word' && arg.text === 'voice');
    const voice = index < 0 ? undefined : args[index + 1];
    if (voice?.kind === 'name' && !known.has(voice.text)) {
      declarations.unknown(found, voice, 'unknown-voice', known);
    }
  }
}

// ─── the whole ───────────────────────────────────────────────────────────────────────────────────────────────────

/**
 * The environment of a file.
 * @param file its name, as the host calls it
 * @param included the files that it includes, directly or not, each after those that it includes itself. They bring
 *   tables, people and sources, and nothing else
 */
export function buildEnvironment(
  file: string,
  tree: FileTree,
  included: readonly { readonly file: string; readonly tree: FileTree }[],
): Environment {
  const own = statementsOf(tree, undefined);
  const others = included
    .filter((other) => other.file !== file)
    .flatMap((other) => statementsOf(other.tree, other.file))
    .filter(({ statement }) => brought.has(statement.keyword));
  const includes = own.filter(({ statement }) => statement.keyword === 'include');
  const declarations = new Declarations([...others, ...own], includes);

  const { staves, voices } = layoutOf(declarations);
  const sources = sourcesOf(declarations);
  const readings = readingsOf(declarations, sources);
  checkChoices(declarations, allChoices(readings, sources));
  const tables = tablesOf(declarations);
  const editors = editorsOf(declarations);
  const notes = notesOf(declarations, editors);
  checkOnce(declarations);
  checkPractices(declarations, voices);

  const stated = (keyword: string): readonly Argument[] => declarations.first(keyword)?.statement.args ?? [];
  return {
    title: stringIn(stated('title')),
    staves,
    voices,
    sources,
    readings,
    accidentals: practiceIn(stated('accidentals')) ?? 'note',
    beaming: beamingOf(declarations),
    tempo: tempoOf(declarations),
    pitch: firstOf(stated('pitch'), 'number')?.value,
    compass: compassOf(declarations),
    signs: nameIn(stated('signs'))?.text,
    tables,
    notes,
    editors,
    stated: new Set(own.map(({ statement }) => statement.keyword)),
    statements: declarations.all.map(({ statement, declared }) => ({ statement, declared })),
    problems: declarations.problems,
  };
}
