/**
 * Statements and changes read by the vocabulary.
 *
 * Parts, clauses and rows are taken as the tables say; a keyword has no code of its own. What does not fit is a problem
 * at its place, and reading goes on at the next word that fits.
 */
import { type Fix, type Problem, problemOf } from '../findings/finding';
import { replacing } from '../findings/fixes';
import { nearest } from '../nearest';
import type { Argument, Change, ChangeWord, Clause, Row, Span, Statement, StatementTree } from '../tree';
import { looksLikeClef } from '../vocabulary/clefs';
import { meterSigns } from '../vocabulary/meters';
import type { ClauseEntry, Clauses, EitherPart, FreePart, Part, RowEntry, WordsPart } from '../vocabulary/parts';
import { changes, lookUp, statements } from '../vocabulary/statements';
import { lex, type Token } from './lexer';
import { changeMeant, meantClause } from './meant';
import { hasUsualLength, otherSpellings, type Report, readers } from './readers';
import { readRecipe } from './recipe';

/** Hears the path of every part of the vocabulary that a text uses (see `vocabularyPaths`). */
export type OnTaken = (path: string) => void;

/** What could stand where a text breaks off. */
export type Expected =
  | { readonly kind: 'part'; readonly part: Part; readonly before: readonly Argument[] }
  /** The word or sign before a part. */
  | { readonly kind: 'word'; readonly word: string; readonly describe: string }
  | { readonly kind: 'clauses'; readonly clauses: Clauses }
  | { readonly kind: 'row'; readonly row: RowEntry }
  | { readonly kind: 'recipe' };

/** Hears what is expected where the text ends. */
class Expectations {
  readonly all: Expected[] = [];
  /** Something must stand here first. */
  private isSettled = false;

  constructor(
    /** Line of the place where the text breaks off. */
    readonly line: number,
  ) {}

  /** @param within the line to which what is read is bound; undefined: any */
  hear(expected: Expected, within: number | undefined, isRequired = false): void {
    if (this.isSettled || (within !== undefined && within !== this.line)) return;
    this.all.push(expected);
    this.isSettled = isRequired;
  }
}

/** Where reading stands in the vocabulary. */
interface Scope {
  /** Names the statement, clause or change in findings. */
  readonly label: string;
  readonly path: string;
  /** Clauses whose beginnings end whatever stands before them. */
  readonly clauses: Clauses;
  readonly rows?: RowEntry | undefined;
  /** It ends with a recipe after `:`. */
  readonly recipe?: boolean | undefined;
}

const listed = (all: readonly string[]): string =>
  all.length < 2 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} or ${all.at(-1)}`;
const inCode = (all: Iterable<string>): string => listed([...all].map((word) => `\`${word}\``));
const bareBeginnings = { ':': '`:`', clef: 'a clef', staveAndClef: "a stave's name with its clef" } as const;
/** How a clause begins, in words. */
const beginning = ([name, clause]: [string, ClauseEntry]): string =>
  clause.opens === undefined ? `\`${name}\`` : bareBeginnings[clause.opens];
/** Signs that some put between a keyword and what it says, or between members of a row. */
const needless: ReadonlySet<Token['kind']> = new Set(['=', ':', ',']);
const isSign = (text: string): boolean => !/^[a-z]/.test(text);

/** For each token the index after the last one of its line. */
function lineEnds(tokens: readonly Token[]): number[] {
  const ends: number[] = [];
  for (let i = tokens.length - 1; i >= 0; i--) {
    ends[i] = tokens[i]?.line === tokens[i + 1]?.line ? (ends[i + 1] ?? i + 1) : i + 1;
  }
  return ends;
}

class StatementReader {
  readonly problems: Problem[];
  private readonly tokens: readonly Token[];
  private readonly ends: readonly number[];
  private index = 0;
  /** Reading stops before the token of this index: the end of a line, or of the text. */
  private limit: number;
  /** What is read now counts as no use of the vocabulary. */
  private silent = false;
  /** So many lines bind what is read now. */
  private bound = 0;

  constructor(
    private readonly text: string,
    private readonly onTaken: OnTaken | undefined,
    private readonly expectations?: Expectations,
  ) {
    const { tokens, problems } = lex(text);
    this.tokens = tokens;
    this.ends = lineEnds(tokens);
    this.problems = problems;
    this.limit = tokens.length;
  }

  // ── tokens ──

  peek(ahead = 0): Token | undefined {
    return this.index + ahead < this.limit ? this.tokens[this.index + ahead] : undefined;
  }

  next(): Token | undefined {
    const token = this.peek();
    if (token !== undefined) this.index++;
    return token;
  }

  get last(): Token | undefined {
    return this.tokens[this.index - 1];
  }

  /** Leaves out what closes a change. */
  dropLast(kind: Token['kind']): boolean {
    if (this.tokens[this.limit - 1]?.kind !== kind) return false;
    this.limit--;
    return true;
  }

  readonly report: Report = (code, at, slots, fixes) => {
    this.problems.push(problemOf(code, at, slots, fixes));
  };

  taken(path: string): void {
    if (!this.silent) this.onTaken?.(path);
  }

  /** Tells what could stand here, if here the text ends. */
  private expect(expected: Expected, isRequired = false): void {
    if (this.expectations === undefined || this.peek() !== undefined || this.limit < this.tokens.length) return;
    this.expectations.hear(expected, this.bound > 0 ? this.last?.line : undefined, isRequired);
  }

  private unheard(read: () => unknown): void {
    const before = this.silent;
    this.silent = true;
    read();
    this.silent = before;
  }

  private isNext(text: string, ahead = 0): boolean {
    const token = this.peek(ahead);
    return token !== undefined && token.kind !== 'string' && token.text === text;
  }

  private spanFrom(first: Span): Span {
    const last = this.last ?? first;
    return { pos: first.pos, len: Math.max(last.pos + last.len - first.pos, 0) };
  }

  /** Does what it is told within the line that is being read. */
  private withinLine<Result>(read: () => Result): Result {
    const outer = this.limit;
    this.limit = Math.min(outer, this.ends[this.index] ?? outer);
    this.bound++;
    const result = read();
    this.bound--;
    this.limit = outer;
    return result;
  }

  // ── what begins here ──

  /** The name of the clause that begins at the next token. */
  private clauseHere(scope: Scope): string | undefined {
    const token = this.peek();
    if (token === undefined || token.kind === 'string') return undefined;
    const named = lookUp(scope.clauses, token.text);
    if (token.kind === 'word' && named !== undefined && named.opens === undefined) return token.text;
    for (const [name, clause] of Object.entries(scope.clauses)) if (this.opens(clause, token)) return name;
    return undefined;
  }

  private opens(clause: ClauseEntry, token: Token): boolean {
    if (clause.opens === undefined) return false;
    if (clause.opens === ':') return token.kind === ':';
    if (token.kind !== 'word') return false;
    if (looksLikeClef(token.text)) return true;
    if (clause.opens === 'clef') return false;
    const clef = this.peek(1);
    return (
      clef?.kind === 'word' && clef.line === token.line && looksLikeClef(clef.text) && /^[A-Za-z]/.test(token.text)
    );
  }

  private rowHere(scope: Scope): boolean {
    const token = this.peek();
    if (scope.rows === undefined || token === undefined) return false;
    if (scope.rows.word !== undefined) return token.kind === 'word' && token.text === scope.rows.word;
    return token.line !== this.last?.line && token.line > 0;
  }

  private endsHere(scope: Scope): boolean {
    return this.peek() === undefined || this.clauseHere(scope) !== undefined || this.rowHere(scope);
  }

  // ── parts ──

  parts(parts: readonly Part[], scope: Scope, path: string): Argument[] {
    const args: Argument[] = [];
    parts.forEach((part, i) => {
      for (const arg of this.part(part, parts.slice(i + 1), scope, path, args)) args.push(arg);
    });
    return args;
  }

  private part(
    part: Part,
    later: readonly Part[],
    scope: Scope,
    path: string,
    before: readonly Argument[],
  ): Argument[] {
    const lead: Argument[] = [];
    if (part.after !== undefined) {
      this.expect({ kind: 'word', word: part.after, describe: part.what }, !part.optional);
      const found = this.lead(part, part.after, scope);
      if (found === undefined) return [];
      if (part.optional && !isSign(part.after)) lead.push({ kind: 'word', text: part.after, ...found });
    }
    const wanted = !part.optional || part.after !== undefined;
    this.expect({ kind: 'part', part, before }, wanted);
    if (wanted) this.passNeedless(part, scope);
    if (!this.accepts(part, scope)) {
      if (this.misspelt(part, later, scope)) return [];
      if (wanted) this.wanting(part, later, scope);
      return lead;
    }
    const args = [...lead];
    do {
      for (const arg of this.takePart(part, scope, path)) args.push(arg);
      if (part.repeat) this.passNeedless(part, scope);
    } while (part.repeat && this.accepts(part, scope));
    if (part.repeat) this.expect({ kind: 'part', part, before });
    return args;
  }

  /** The word or sign before a part; undefined where the part is left out. */
  private lead(part: Part, after: string, scope: Scope): Span | undefined {
    const token = this.peek();
    if (token !== undefined && this.isNext(after)) {
      this.index++;
      return { pos: token.pos, len: token.len };
    }
    if (part.optional) return undefined;
    const here = token ?? this.last ?? { pos: 0, len: 0 };
    if (this.accepts(part, scope)) {
      const fix = { title: `put \`${after}\` before it`, edits: [{ pos: here.pos, len: 0, text: `${after} ` }] };
      this.report('missing-word', here, { word: after, before: token?.text ?? '' }, [fix]);
      return { pos: here.pos, len: 0 };
    }
    if (token !== undefined && !this.endsHere(scope) && this.acceptsAfterNext(part, scope)) {
      this.report('unknown-word', token, { word: token.text, expected: `\`${after}\`` }, [replacing(token, after)]);
      this.index++;
      return { pos: token.pos, len: token.len };
    }
    this.missing(scope, `\`${after}\` and ${part.what}`);
    return undefined;
  }

  /** A sign between a keyword and what it says, or between the members of what is repeated. */
  private passNeedless(part: Part, scope: Scope): void {
    const sign = this.peek();
    if (sign === undefined || !needless.has(sign.kind)) return;
    // `: on beat, 0` wants the sign of which it is the recipe; its `:` is not too much.
    if (scope.recipe && sign.kind === ':') return;
    if (this.endsHere(scope) || !this.acceptsAfterNext(part, scope)) return;
    this.index++;
    this.report('too-much', sign, { word: sign.text, where: scope.label }, [this.away(sign)]);
  }

  /** Takes a sign away; one space at most is left in its place, and what stands on the line above, perhaps a comment, stays there. */
  private away({ text, pos, len }: Token): Fix {
    const [before, after] = [/\s/.test(this.text[pos - 1] ?? ''), /\s/.test(this.text[pos + len] ?? ' ')];
    const at = after && /[ \t]/.test(this.text[pos - 1] ?? '') ? { pos: pos - 1, len: len + 1 } : { pos, len };
    return replacing(at, before || after ? '' : ' ', `take ${text} away`);
  }

  private acceptsAfterNext(part: Part, scope: Scope): boolean {
    this.index++;
    const accepted = this.accepts(part, scope);
    this.index--;
    return accepted;
  }

  /** Whether the next token is meant for this part, well written or not. */
  private accepts(part: Part, scope: Scope): boolean {
    const token = this.peek();
    if (token === undefined || this.endsHere(scope)) return false;
    if (part.kind === 'free') return readers[part.take].accepts(token, part);
    if (part.kind === 'words') return this.matching(part) !== undefined;
    return this.formHere(part, scope) !== undefined;
  }

  private formHere(part: EitherPart, scope: Scope): readonly Part[] | undefined {
    return part.forms.find(([first]) => first !== undefined && this.accepts(first, scope));
  }

  /** The word of a list that stands here and how many tokens it is. */
  private matching(part: WordsPart): { word: string; count: number } | undefined {
    const token = this.peek();
    if (token?.kind !== 'word') return undefined;
    if (Object.hasOwn(part.words, token.text)) return { word: token.text, count: 1 };
    for (const word of Object.keys(part.words)) {
      const pieces = word.split(' ');
      if (pieces.length > 1 && pieces.every((piece, i) => this.isNext(piece, i))) return { word, count: pieces.length };
    }
    return undefined;
  }

  private takePart(part: Part, scope: Scope, path: string): Argument[] {
    if (part.kind === 'free') return this.takeFree(part, scope, path);
    if (part.kind === 'words') return this.takeWord(part, scope, path);
    return this.parts(this.formHere(part, scope) ?? [], scope, path);
  }

  private takeWord(part: WordsPart, scope: Scope, path: string): Argument[] {
    const first = this.peek();
    const match = this.matching(part);
    if (first === undefined || match === undefined) return [];
    this.index += match.count;
    const wordPath = `${path}/${match.word}`;
    this.taken(wordPath);
    const arg: Argument = { kind: 'word', text: match.word, ...this.spanFrom(first) };
    const inner = { ...scope, label: `${scope.label} ${match.word}` };
    return [arg, ...this.parts(part.words[match.word]?.follow ?? [], inner, wordPath)];
  }

  private takeFree(part: FreePart, scope: Scope, path: string): Argument[] {
    const tokens = this.listed(part, scope);
    const read = tokens.map((token) => readers[part.take].read(token, part, this.report));
    this.taken(`${path}/${part.id}`);
    const args = read.filter((arg) => arg !== undefined);
    const [first] = args;
    if (args.length < 2 || first?.kind !== 'names') return args;
    const names = args.flatMap((arg) => (arg.kind === 'names' ? arg.names : []));
    return [{ kind: 'names', names, role: first.role, ...this.spanFrom(first) }];
  }

  /** The token of a part; of a list that was typed with spaces, all its members. */
  private listed(part: FreePart, scope: Scope): Token[] {
    const first = this.next();
    if (first === undefined) return [];
    if (part.take === 'string' && first.kind === 'word') return [this.wordsAsString(first, scope)];
    if ((part.take !== 'names' && part.take !== 'region') || !this.isNext(',')) return [first];
    const members = [first];
    while (this.isNext(',')) {
      this.index++;
      if (this.peek()?.kind === 'word') members.push(this.next() ?? first);
    }
    const joined: Token = { ...first, text: members.map((m) => m.text).join(','), ...this.spanFrom(first) };
    this.report('space-in-list', joined, {}, [replacing(joined, joined.text)]);
    return part.take === 'region' ? [joined] : members;
  }

  /** Words that should be a string are taken together to the next clause or line. */
  private wordsAsString(first: Token, scope: Scope): Token {
    for (let token = this.peek(); token !== undefined && token.line === first.line; token = this.peek()) {
      if (token.kind === 'string' || this.endsHere(scope)) break;
      this.index++;
    }
    const { pos, len } = this.spanFrom(first);
    return { ...first, text: this.text.slice(pos, pos + len), len };
  }

  // ── what is missing or strange ──

  private missing(scope: Scope, expected: string): void {
    this.report('missing-argument', this.last ?? { pos: 0, len: 0 }, { where: scope.label, expected });
  }

  private isMeantFor(parts: readonly Part[], scope: Scope): boolean {
    return parts.some((part) => (part.after === undefined ? this.accepts(part, scope) : this.isNext(part.after)));
  }

  /** Takes a word that is nearly one of a list, unless it is meant for a later part. */
  private misspelt(part: Part, later: readonly Part[], scope: Scope): boolean {
    const token = this.peek();
    if (part.kind !== 'words' || token?.kind !== 'word' || this.endsHere(scope)) return false;
    if (this.isMeantFor(later, scope)) return false;
    const meant = nearest(token.text, Object.keys(part.words));
    if (meant === undefined) return false;
    this.report('unknown-word', token, { word: token.text, expected: `\`${meant}\`` }, [replacing(token, meant)]);
    this.index++;
    // What would follow the word meant is read too, lest it be reported in its turn.
    this.unheard(() => this.parts(part.words[meant]?.follow ?? [], scope, ''));
    return true;
  }

  /** Reports a part that must stand here: missing, or something else in its place. */
  private wanting(part: Part, later: readonly Part[], scope: Scope): void {
    const token = this.peek();
    const elsewhere = this.isMeantFor(later, scope);
    const expected = part.kind === 'words' ? `${part.what}: ${inCode(Object.keys(part.words))}` : part.what;
    if (token === undefined || elsewhere || this.endsHere(scope) || token.kind === ':') this.missing(scope, expected);
    else {
      this.index++;
      const code = part.kind === 'words' ? 'unknown-word' : 'wrong-argument';
      const fixes = part.kind === 'free' ? otherSpellings(token, part) : [];
      this.report(code, token, { word: token.text, expected }, fixes);
    }
  }

  /** Passes over what belongs to nothing, as one finding, to the next clause, row or line. */
  private strange(scope: Scope, stops: (token: Token) => boolean = () => false): void {
    const first = this.next();
    if (first === undefined) return;
    const sign = needless.has(first.kind) ? first : this.signBeforeClef();
    const last = (): Token | undefined => {
      const token = this.peek();
      return token !== undefined && token.line === first.line && !this.endsHere(scope) && !stops(token)
        ? this.next()
        : undefined;
    };
    while (last() !== undefined);
    const clauses = Object.entries(scope.clauses);
    const row = scope.rows?.word;
    const meant = sign === undefined ? meantClause(first, clauses, row) : undefined;
    const all = [...clauses.map(beginning), ...(row === undefined ? [] : [`\`${row}\``])];
    const expected = meant === undefined ? listed(all) : `\`${meant.name}\``;
    const slots = { word: first.text, where: scope.label, expected };
    if (clauses.length === 0) this.report('too-much', this.spanFrom(first), slots);
    else this.report('unknown-clause', first, slots, sign === undefined ? meant && [meant.fix] : [this.away(sign)]);
  }

  /** `upper: G2`: takes the sign with its clef, since no stave is known to bear that. */
  private signBeforeClef(): Token | undefined {
    const [sign, clef] = [this.peek(), this.peek(1)];
    if (sign === undefined || clef === undefined || !needless.has(sign.kind) || !looksLikeClef(clef.text))
      return undefined;
    this.index += 2;
    return sign;
  }

  // ── clauses and rows ──

  private clause(name: string, entry: ClauseEntry, scope: Scope, seen: Set<string>): Clause {
    const first = this.peek() ?? this.last ?? { pos: 0, len: 0 };
    if (!entry.repeats && seen.has(name)) {
      this.report('repeated-clause', first, { word: name, where: scope.label });
    }
    seen.add(name);
    const path = `${scope.path}/${name}`;
    this.taken(path);
    if (entry.opens === undefined || entry.opens === ':') this.index++;
    // What begins a clause without a keyword is itself its first part.
    const inner: Scope =
      entry.opens === undefined
        ? { ...scope, label: `${scope.label} … ${name}` }
        : { label: scope.label, path, clauses: {} };
    const args = this.withinLine(() => this.parts(entry.parts, inner, path));
    this.checkMeter(name, args);
    return { name, args, ...this.spanFrom(first) };
  }

  private checkMeter(name: string, args: readonly Argument[]): void {
    const [sign, length] = args;
    if (name !== 'meter' || sign?.kind !== 'word' || length !== undefined || hasUsualLength(sign.text)) return;
    const meant = Object.keys(meterSigns).find((known) => known.toLowerCase() === sign.text.toLowerCase());
    this.report('unknown-meter', sign, { word: sign.text }, meant === undefined ? [] : [replacing(sign, meant)]);
  }

  /** All clauses and rows to the end of what is read; `stops` ends them earlier. */
  body(scope: Scope, stops: (token: Token) => boolean = () => false): { clauses: Clause[]; rows: Row[] } {
    const clauses: Clause[] = [];
    const rows: Row[] = [];
    const seen = new Set<string>();
    for (let token = this.peek(); token !== undefined && !stops(token); token = this.peek()) {
      const name = this.clauseHere(scope);
      const entry = name === undefined ? undefined : lookUp(scope.clauses, name);
      if (name !== undefined && entry !== undefined) clauses.push(this.clause(name, entry, scope, seen));
      else if (scope.rows !== undefined && this.rowHere(scope)) rows.push(this.row(scope.rows, scope));
      else this.strange(scope, stops);
    }
    this.expectMore(scope, seen, rows.length > 0);
    return { clauses, rows };
  }

  /** A row ends with its line, and so does what stands before the first. */
  private expectMore({ clauses, rows }: Scope, seen: ReadonlySet<string>, afterRow: boolean): void {
    const isNextLine = this.expectations !== undefined && this.expectations.line !== this.last?.line;
    const left = Object.entries(clauses).filter(([name, { repeats }]) => repeats || !seen.has(name));
    if (left.length > 0 && (isNextLine || !afterRow)) {
      this.expect({ kind: 'clauses', clauses: Object.fromEntries(left) });
    }
    if (rows !== undefined && isNextLine) this.expect({ kind: 'row', row: rows });
  }

  private row(entry: RowEntry, outer: Scope): Row {
    return this.withinLine(() => {
      const first = this.peek() ?? { pos: 0, len: 0 };
      const path = `${outer.path}/${entry.kind}`;
      this.taken(path);
      if (entry.word !== undefined) this.index++;
      const scope: Scope = {
        label: entry.word ?? `${outer.label} row`,
        path,
        clauses: entry.clauses,
        recipe: entry.recipe,
      };
      const args = this.parts(entry.parts, scope, path);
      const stops = (token: Token): boolean => entry.recipe === true && token.kind === ':';
      const { clauses } = this.body(scope, stops);
      const recipe = entry.recipe ? this.recipe(scope) : undefined;
      return {
        kind: entry.kind,
        args,
        clauses,
        ...(recipe === undefined ? {} : { recipe }),
        ...this.spanFrom(first),
      };
    });
  }

  private recipe(scope: Scope): Row['recipe'] {
    this.expect({ kind: 'word', word: ':', describe: 'a recipe' });
    const colon = this.next();
    if (colon === undefined) {
      this.missing(scope, '`:` and a recipe');
      return undefined;
    }
    const tokens = this.tokens.slice(this.index, this.limit);
    this.index = this.limit;
    this.expect({ kind: 'recipe' }, true);
    return readRecipe(tokens, colon, this.report, (form) => this.taken(`${scope.path}/recipe/${form}`));
  }

  /** A whole entry after its keyword. */
  entry(scope: Scope, parts: readonly Part[]): { args: Argument[]; clauses: Clause[]; rows: Row[] } {
    this.taken(scope.path);
    // Further lines of a statement with rows are rows, never arguments of the first line.
    const args =
      scope.rows === undefined
        ? this.parts(parts, scope, scope.path)
        : this.withinKeywordLine(() => this.parts(parts, scope, scope.path));
    return { args, ...this.body(scope) };
  }

  private withinKeywordLine<Result>(read: () => Result): Result {
    const onLine = this.peek()?.line === this.last?.line;
    const outer = this.limit;
    if (!onLine) this.limit = this.index;
    const result = onLine ? this.withinLine(read) : read();
    this.limit = outer;
    return result;
  }
}

const byPlace = (a: Span, b: Span): number => a.pos - b.pos;

/**
 * The tree of a statement.
 * @param text its lines without indentation, joined by line feeds; the first begins with the keyword
 * @param joints offset in `text` of each line
 * @param onTaken hears which parts of the vocabulary the statement uses
 */
export function parseStatement(text: string, joints: readonly number[], onTaken?: OnTaken): StatementTree {
  return readStatement(new StatementReader(text, onTaken), text, joints);
}

const lineOfEnd = (text: string): number => text.split('\n').length - 1;

/** What could stand where the text of a statement breaks off; of an unknown statement nothing is expected. */
export function expectedInStatement(text: string): readonly Expected[] {
  const expectations = new Expectations(lineOfEnd(text));
  readStatement(new StatementReader(text, undefined, expectations), text, []);
  return expectations.all;
}

function readStatement(reader: StatementReader, text: string, joints: readonly number[]): StatementTree {
  const keyword = reader.next();
  const entry = keyword?.kind === 'word' ? lookUp(statements, keyword.text) : undefined;
  if (keyword !== undefined && entry === undefined) {
    const meant = nearest(keyword.text, Object.keys(statements));
    const expected = meant === undefined ? 'a keyword such as `stave`, `voice` or `system`' : `\`${meant}\``;
    const fixes = meant === undefined ? [] : [replacing(keyword, meant)];
    reader.report('unknown-statement', keyword, { word: keyword.text, expected }, fixes);
  }
  // As typed: a word in quotes is no keyword.
  const word = keyword === undefined ? '' : text.slice(keyword.pos, keyword.pos + keyword.len);
  const read =
    entry === undefined
      ? { args: [], clauses: [], rows: [] }
      : reader.entry({ label: word, path: word, clauses: entry.clauses, rows: entry.rows }, entry.parts);
  const statement: Statement = { kind: 'statement', keyword: word, ...read, pos: 0, len: text.length };
  return { text, joints, statement, problems: reader.problems.sort(byPlace) };
}

export interface ParsedChange {
  /** Undefined where the first word is no change. */
  readonly change: Change | undefined;
  /** Places count from the opening bracket. */
  readonly problems: readonly Problem[];
}

/** What could stand where a change breaks off, its opening bracket and first word included. */
export function expectedInChange(text: string): readonly Expected[] {
  const expectations = new Expectations(lineOfEnd(text));
  readChange(new StatementReader(text, undefined, expectations), text);
  return expectations.all;
}

function readChange(reader: StatementReader, text: string): ParsedChange {
  if (reader.peek()?.kind === '(') reader.next();
  reader.dropLast(')');
  const first = reader.next();
  const entry = first?.kind === 'word' ? lookUp(changes, first.text) : undefined;
  if (first === undefined || entry === undefined) {
    const meant = first === undefined ? undefined : changeMeant(first.text);
    const expected = meant === undefined ? inCode(Object.keys(changes)) : `\`${meant}\``;
    const fixes = first === undefined || meant === undefined ? [] : [replacing(first, meant)];
    reader.report(
      'unknown-change',
      first ?? { pos: 0, len: text.length },
      { word: first?.text ?? '', expected },
      fixes,
    );
    return { change: undefined, problems: reader.problems };
  }
  const scope: Scope = { label: first.text, path: `(${first.text})`, clauses: entry.clauses };
  const { args, clauses } = reader.entry(scope, entry.parts);
  if (first.text === 'now' && clauses.length === 0 && reader.problems.length === 0) {
    reader.report('missing-argument', first, { where: 'now', expected: 'a clef, `key`, `meter` or `tempo`' });
  }
  return {
    change: { text, word: first.text as ChangeWord, clauses, args },
    problems: reader.problems.sort(byPlace),
  };
}

/** Changes kept at most; the oldest goes first. */
const KEPT = 4096;
const kept = new Map<string, ParsedChange>();

/**
 * A whole `( … )` of a lane that is no words of the source. Equal texts give one object.
 * @param onTaken hears which parts of the vocabulary the change uses
 */
export function parseChange(text: string, onTaken?: OnTaken): ParsedChange {
  const known = onTaken === undefined ? kept.get(text) : undefined;
  if (known !== undefined) return known;
  const read = readChange(new StatementReader(text, onTaken), text);
  if (onTaken !== undefined) return read;
  const oldest = kept.size >= KEPT ? kept.keys().next().value : undefined;
  if (oldest !== undefined) kept.delete(oldest);
  kept.set(text, read);
  return read;
}
