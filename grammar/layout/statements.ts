/** Statements laid out: what is said of like things stands in columns. */
import type { FindingCode } from '../findings/catalogue';
import { lex, type Token } from '../statements/lexer';
import type { Block, Clause, Placed, StatementTree } from '../tree';
import { lookUp, statements } from '../vocabulary/statements';
import { type Field, inColumns } from './columns';
import { type FileLine, isBlank, type Laid } from './lines';

const INDENT = '  ';
/** Spaces before a clause and before a description. */
const WIDE = 2;

/** Keywords whose statements, one after another, stand in columns; those of one family in the same ones. */
const families: Readonly<Record<string, string>> = {
  title: 'source',
  source: 'source',
  hand: 'source',
  editor: 'source',
  reading: 'reading',
  stave: 'stave',
  voice: 'voice',
  instrument: 'setting',
  pitch: 'setting',
  tuning: 'setting',
  tempo: 'setting',
  accidentals: 'setting',
  beaming: 'setting',
  signs: 'setting',
  practice: 'setting',
  order: 'setting',
};

/** One line of a statement, ready to be set in columns with others. */
interface Line {
  readonly number: number;
  readonly fields: readonly Field[];
  readonly comment: string;
}

/** Lines that share their columns. */
interface Sheet {
  readonly indent: string;
  readonly lines: Line[];
}

/** Strings that are not what they seem: where they end is a guess. */
const unsure: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'unclosed-string',
  'typographic-quotes',
  'needs-quotes',
  'unknown-statement',
]);

const isUnderstood = ({ problems }: StatementTree): boolean => problems.every(({ code }) => !unsure.has(code));

/** Cuts the tokens of lines into fields. */
class Cutter {
  private readonly text: string;
  /** Where clauses begin. */
  private readonly clauses: ReadonlySet<number>;
  /** Where descriptions begin. */
  private readonly descriptions: ReadonlySet<number>;

  constructor(private readonly tree: StatementTree) {
    this.text = tree.text;
    const { args, clauses, rows } = tree.statement;
    const every: readonly Clause[] = [...clauses, ...rows.flatMap((row) => row.clauses)];
    this.clauses = new Set(every.map(({ pos }) => pos));
    this.descriptions = new Set(args.slice(1).flatMap(({ kind, pos }) => (kind === 'string' ? [pos] : [])));
  }

  isClause(token: Token | undefined): boolean {
    return token !== undefined && this.clauses.has(token.pos);
  }

  gapBefore({ pos }: Token): number {
    return this.clauses.has(pos) || this.descriptions.has(pos) ? WIDE : 1;
  }

  /** Tokens as typed: glued, or with the spaces that belong between them. */
  private joined(tokens: readonly Token[]): string {
    let text = '';
    let end = -1;
    for (const token of tokens) {
      const gap = end < 0 ? 0 : token.pos === end ? 0 : this.gapBefore(token);
      text += ' '.repeat(gap) + this.text.slice(token.pos, token.pos + token.len);
      end = token.pos + token.len;
    }
    return text;
  }

  field(tokens: readonly Token[], gap?: number): Field {
    const [first] = tokens;
    return { text: this.joined(tokens), gap: first === undefined ? 0 : (gap ?? this.gapBefore(first)) };
  }

  /** The first line: keyword and name, what else is said, then each clause or all of them. */
  firstLine(tokens: readonly Token[], family: string | undefined): Field[] {
    const lead = tokens.slice(0, family !== 'setting' && this.givesName(tokens[1]) ? 2 : 1);
    const rest = tokens.slice(lead.length);
    if (family === undefined || family === 'setting') return [this.field(lead), this.field(rest)];
    const at = rest.findIndex((token) => this.isClause(token));
    const plain = at < 0 ? rest : rest.slice(0, at);
    return [this.field(lead), this.field(plain), ...this.eachClause(rest.slice(plain.length))];
  }

  private givesName(token: Token | undefined): boolean {
    const { keyword, args } = this.tree.statement;
    const [part] = lookUp(statements, keyword)?.parts ?? [];
    return part?.kind === 'free' && part.declares === true && token !== undefined && args[0]?.pos === token.pos;
  }

  /** Tokens parted before each clause. */
  eachClause(tokens: readonly Token[]): Field[] {
    const starts = tokens.flatMap((token, i) => (i === 0 || this.isClause(token) ? [i] : []));
    return starts.map((start, i) => this.field(tokens.slice(start, starts[i + 1])));
  }

  /** A row of a table: what it is about, its clauses, its recipe. */
  rowLine(tokens: readonly Token[]): Field[] {
    const colon = tokens.findIndex(({ kind }) => kind === ':');
    const before = colon < 0 ? tokens : tokens.slice(0, colon);
    const at = before.findIndex((token) => this.isClause(token));
    const args = at < 0 ? before : before.slice(0, at);
    return [this.field(args), this.field(before.slice(args.length)), this.field(tokens.slice(before.length), WIDE)];
  }

  /** A clause of a reading on a line of its own: its name, what it says. */
  clauseLine(tokens: readonly Token[]): Field[] {
    return [this.field(tokens.slice(0, 1)), this.field(tokens.slice(1), WIDE)];
  }
}

/** Puts the lines of one statement on sheets. */
class Statement {
  private readonly cutter: Cutter;
  private readonly rows: Sheet = { indent: INDENT, lines: [] };
  /** Where rows begin. */
  private readonly rowStarts: ReadonlySet<number>;

  constructor(
    private readonly placed: Placed<StatementTree>,
    private readonly block: Block,
    private readonly lines: readonly FileLine[],
  ) {
    this.cutter = new Cutter(placed.tree);
    this.rowStarts = new Set(placed.tree.statement.rows.map(({ pos }) => pos));
  }

  get keyword(): string {
    return this.placed.tree.statement.keyword;
  }

  get firstNumber(): number {
    return this.block.line + (this.placed.lines[0] ?? 0);
  }

  get lastNumber(): number {
    return this.block.line + (this.placed.lines.at(-1) ?? 0);
  }

  /** Sheets for its own lines; `first` and `clauses` are shared with its family. */
  sheets(first: Sheet, clauses: Sheet): Sheet[] {
    const alone: Sheet[] = [];
    this.byLine().forEach((tokens, index) => {
      if (tokens.length === 0) return;
      const number = this.block.line + (this.placed.lines[index] ?? 0);
      const comment = this.commentAfter(tokens, number, index);
      const add = (sheet: Sheet, fields: readonly Field[]): void => {
        sheet.lines.push({ number, fields, comment });
      };
      const ownLine: Sheet = { indent: INDENT, lines: [] };
      if (index === 0) add(first, this.cutter.firstLine(tokens, families[this.keyword]));
      else if (this.isRow(tokens)) add(this.rows, this.cutter.rowLine(tokens));
      else if (this.isOneClause(tokens)) add(clauses, this.cutter.clauseLine(tokens));
      else {
        add(ownLine, [this.cutter.field(tokens)]);
        alone.push(ownLine);
      }
    });
    return [this.rows, ...alone];
  }

  private byLine(): Token[][] {
    const found: Token[][] = this.placed.lines.map(() => []);
    for (const token of lex(this.placed.tree.text).tokens) found[token.line]?.push(token);
    return found;
  }

  private commentAfter(tokens: readonly Token[], number: number, index: number): string {
    const last = tokens.at(-1);
    const end = last === undefined ? 0 : last.pos + last.len;
    const inLine = this.block.offset + (this.placed.starts[index] ?? 0) + end - (this.placed.tree.joints[index] ?? 0);
    const { text, start } = this.lines[number] ?? { text: '', start: 0 };
    return text.slice(inLine - start).trim();
  }

  private isRow(tokens: readonly Token[]): boolean {
    return tokens[0] !== undefined && this.rowStarts.has(tokens[0].pos);
  }

  private isOneClause(tokens: readonly Token[]): boolean {
    const clauses = tokens.filter((token) => this.cutter.isClause(token));
    return this.keyword === 'reading' && clauses.length === 1 && clauses[0] === tokens[0];
  }
}

/** Statements of one family that follow one another without a blank line. */
function runs(all: readonly Statement[], lines: readonly FileLine[]): Statement[][] {
  const found: Statement[][] = [];
  for (const one of all) {
    const before = found.at(-1)?.at(-1);
    const family = families[one.keyword];
    const joins =
      before !== undefined &&
      family !== undefined &&
      families[before.keyword] === family &&
      !lines.slice(before.lastNumber + 1, one.firstNumber).some(({ text }) => isBlank(text));
    if (joins) found.at(-1)?.push(one);
    else found.push([one]);
  }
  return found;
}

function laidSheet({ indent, lines }: Sheet, off: readonly boolean[]): [number, Laid][] {
  const moved = lines.filter(({ number }) => !off[number]);
  const bodies = inColumns(moved.map(({ fields }) => fields));
  return moved.map(({ number, comment }, i) => [
    number,
    { body: indent + (bodies[i] ?? ''), comment, kind: 'statement' },
  ]);
}

/** The lines of a block's statements; those whose strings are unsure or that are switched off stand as they are. */
export function laidStatements(block: Block, lines: readonly FileLine[], off: readonly boolean[]): Map<number, Laid> {
  const all = block.statements
    .filter(({ tree }) => isUnderstood(tree))
    .map((placed) => new Statement(placed, block, lines));
  const sheets = runs(all, lines).flatMap((run) => {
    const first: Sheet = { indent: '', lines: [] };
    const clauses: Sheet = { indent: INDENT, lines: [] };
    return [first, clauses, ...run.flatMap((statement) => statement.sheets(first, clauses))];
  });
  return new Map(sheets.flatMap((sheet) => laidSheet(sheet, off)));
}
