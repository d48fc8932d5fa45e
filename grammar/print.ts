/**
 * The text of a tree.
 *
 * Every sign of a lane and every argument of a statement is a leaf with its own text, printed from what the tree says of
 * it wherever a sign can be written in one way only; what lies between two leaves (white space, comments, the ends of
 * lines, and within statements their signs) is taken from the text of the file. Printing gives back exactly what was read.
 */
import { quoted } from './quoted';
import type {
  Annotation,
  Argument,
  Barline,
  Block,
  Clause,
  EventItem,
  FileTree,
  Item,
  Label,
  LaneTree,
  Member,
  OptionsItem,
  Placed,
  Recipe,
  Row,
  Span,
  SpanItem,
  StatementTree,
  Suffix,
  SyllableItem,
  WordsItem,
} from './tree';
import type { Clauses } from './vocabulary/parts';
import { lookUp, statements } from './vocabulary/statements';

/** The smallest piece of a file that means something; places are offsets in the file. */
export interface Leaf {
  readonly start: number;
  readonly end: number;
  /** As the tree says it. */
  readonly text: string;
}

interface Holder {
  readonly text: string;
  readonly joints: readonly number[];
}

const endOf = ({ pos, len }: Span): number => pos + len;
const knownBarlines: ReadonlySet<string> = new Set(['|', '||', '|||', ':||', '||:', ':||:']);
const EDITORS = '[]';

/** A barline at the beginning of a text, well written or not. */
const barlineHere = /:*\|[|:]*(?:\[\])?/y;
/** White space and comments, one after another. */
const betweenSigns = /\s+|\/\/[^\n]*/y;

/** Collects the leaves of one statement or lane in the order of its text. */
class Leaves {
  readonly found: Leaf[] = [];
  private readonly text: string;
  private line = 0;
  private last = 0;

  constructor(
    private readonly block: Block,
    private readonly placed: Placed<Holder>,
  ) {
    this.text = placed.tree.text;
  }

  /** A leaf printed as `text`; it ends where the tree says, or after as many characters. */
  put(pos: number, text: string, end = pos + text.length): void {
    if (end <= pos) return;
    const start = this.inFile(pos);
    this.found.push({ start, end: start + end - pos, text });
    this.last = end;
  }

  /** A leaf that can be written in several ways, as it stands. Of several lines each is a leaf. */
  slice(pos: number, end: number): void {
    let from = pos;
    for (const piece of this.text.slice(pos, end).split('\n')) {
      this.put(from, piece);
      from += piece.length + 1;
    }
  }

  /** A leaf at the next sign after the last leaf, for signs whose places the tree does not keep. */
  next(text: string): void {
    this.put(this.nextSign(), text);
  }

  /** The piece of the text that begins with the next sign and matches. */
  peek(pattern: RegExp, pos = this.nextSign()): string {
    pattern.lastIndex = pos;
    return pattern.exec(this.text)?.[0] ?? '';
  }

  raw(span: Span): string {
    return this.text.slice(span.pos, endOf(span));
  }

  nextSign(): number {
    let pos = this.last;
    for (let skipped = this.peek(betweenSigns, pos); skipped !== ''; skipped = this.peek(betweenSigns, pos)) {
      pos += skipped.length;
    }
    return pos;
  }

  /** Leaves come in order, so the line is found by going on from the last. */
  private inFile(pos: number): number {
    const { joints } = this.placed.tree;
    while (this.line > 0 && (joints[this.line] ?? 0) > pos) this.line--;
    while (this.line + 1 < joints.length && (joints[this.line + 1] ?? 0) <= pos) this.line++;
    return this.block.offset + (this.placed.starts[this.line] ?? 0) + pos - (joints[this.line] ?? 0);
  }
}

// ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

function annotation(leaves: Leaves, { pos, text, ref }: Annotation): void {
  leaves.put(pos, `*${text === undefined ? ref : quoted(text)}`);
}

function suffixes(leaves: Leaves, all: readonly Suffix[]): void {
  for (const suffix of all) {
    if (suffix.kind === 'mark') leaves.put(suffix.pos, suffix.form.text);
    else annotation(leaves, suffix);
  }
}

function member(leaves: Leaves, one: Member, isFirst: boolean): void {
  const moved = one.stave === undefined ? '' : `(${one.stave})`;
  leaves.put(one.pos, `${isFirst ? '' : '-'}${moved}${one.spelling.text}`);
  if (one.tie !== undefined) leaves.next(one.tie.text);
  suffixes(leaves, one.suffixes);
}

const silences = { rest: 'r', barRest: 'rbar', gap: '_', barGap: '__' } as const;

function event(leaves: Leaves, item: EventItem): void {
  if (item.what === 'note') {
    item.members.forEach((one, index) => {
      member(leaves, one, index === 0);
    });
    return;
  }
  leaves.put(item.pos, item.what === 'repeat' ? (item.tie?.text ?? '=') : silences[item.what]);
  suffixes(leaves, item.suffixes);
}

/** A barline that is none, or that two lines share, stands as it was typed: its shape is what was made of it. */
function barline(leaves: Leaves, bar: Barline): void {
  const typed = leaves.peek(barlineHere, bar.pos);
  const isDrawn = knownBarlines.has(typed.replace(EDITORS, '')) && bar.again === undefined;
  leaves.put(bar.pos, isDrawn ? `${bar.shape}${bar.editors ? EDITORS : ''}` : typed);
  if (bar.again === undefined) suffixes(leaves, bar.suffixes);
  else again(leaves, bar.again, bar.suffixes);
}

/** What is glued to a barline, and the barlines of the next lines that are one with it, each with its own. */
function again(leaves: Leaves, further: readonly Span[], all: readonly Suffix[]): void {
  let next = 0;
  const gluedBefore = (pos: number): void => {
    const from = next;
    while ((all[next]?.pos ?? pos) < pos) next++;
    suffixes(leaves, all.slice(from, next));
  };
  for (const { pos } of further) {
    gluedBefore(pos);
    leaves.put(pos, leaves.peek(barlineHere, pos));
  }
  gluedBefore(Number.POSITIVE_INFINITY);
}

function span(leaves: Leaves, item: SpanItem): void {
  leaves.put(item.pos, item.head.text);
  items(leaves, item.items);
  leaves.next('}');
  suffixes(leaves, item.suffixes);
}

/** The number of a layer may be typed with noughts before it. */
function label(leaves: Leaves, one: Label): void {
  leaves.put(one.pos, one.name);
  leaves.slice(one.pos + one.name.length, endOf(one));
}

function options(leaves: Leaves, item: OptionsItem): void {
  leaves.put(item.pos, '<');
  if (item.place !== undefined) leaves.put(item.place.pos, item.place.text);
  for (const reason of item.reasons) annotation(leaves, reason);
  item.options.forEach((option, index) => {
    if (index > 0) leaves.next(';');
    option.labels.forEach((one, at) => {
      if (at > 0) leaves.next(',');
      label(leaves, one);
    });
    if (option.labels.length > 0) leaves.next(':');
    items(leaves, option.items);
  });
  leaves.next('>');
  suffixes(leaves, item.suffixes);
}

function words(leaves: Leaves, item: WordsItem): void {
  if (item.place === undefined) leaves.put(item.pos, quoted(item.text));
  else {
    leaves.put(item.pos, '(');
    leaves.next(item.place);
    leaves.next(quoted(item.text));
    leaves.next(')');
  }
}

function syllable(leaves: Leaves, item: SyllableItem): void {
  const plain = `${item.text}${item.goesOn ? '-' : ''}`;
  if (item.what === 'syllable') leaves.put(item.pos, plain.length === item.len ? plain : quoted(item.text));
  else leaves.put(item.pos, item.what === 'none' ? '_' : '=');
}

function item(leaves: Leaves, one: Item): void {
  switch (one.kind) {
    case 'value':
      leaves.put(one.pos, one.form.text);
      break;
    case 'event':
      event(leaves, one);
      break;
    case 'span':
      span(leaves, one);
      break;
    case 'options':
      options(leaves, one);
      break;
    case 'change':
      leaves.put(one.pos, one.change.text);
      break;
    case 'words':
      words(leaves, one);
      break;
    case 'beam':
      leaves.put(one.pos, one.join ? '&' : ',');
      break;
    case 'lost':
      leaves.put(one.pos, 'lost');
      if (one.form !== undefined) leaves.next(one.form.text);
      else if (one.len > 'lost'.length) leaves.next('?');
      break;
    case 'omit':
      leaves.put(one.pos, 'omit');
      break;
    case 'barline':
      barline(leaves, one);
      break;
    case 'figures':
      // `#6` and `6#` are one figure, so figures stand as they were typed.
      if (one.what === 'figures') leaves.slice(one.pos, endOf(one));
      else leaves.put(one.pos, one.what === 'none' ? '_' : '=');
      break;
    case 'syllable':
      syllable(leaves, one);
      break;
    case 'junk':
      leaves.slice(one.pos, endOf(one));
      break;
  }
}

function items(leaves: Leaves, all: readonly Item[]): void {
  for (const one of all) item(leaves, one);
}

/** The leaves after a lane's opening barline. */
function laneLeaves(block: Block, placed: Placed<LaneTree>): Leaf[] {
  const leaves = new Leaves(block, placed);
  const { opening, segments } = placed.tree;
  suffixes(leaves, opening.suffixes);
  if (opening.again !== undefined) barline(leaves, opening.again);
  for (const segment of segments) {
    items(leaves, segment.items);
    if (segment.bar !== undefined) barline(leaves, segment.bar);
  }
  return leaves.found;
}

/** The leaves of a lane's name and opening barline. */
function openingLeaves(tree: FileTree, block: Block, lane: Block['lanes'][number]): Leaf[] {
  const { open } = lane;
  const leaf = (pos: number, text: string): Leaf => {
    const start = block.offset + pos;
    return { start, end: start + text.length, text };
  };
  const at = block.offset + open.pos;
  const typed = tree.text.slice(at, at + open.len);
  const isDrawn = knownBarlines.has(typed.replace(EDITORS, '')) && lane.tree.opening.again === undefined;
  return [
    leaf(lane.name.pos, lane.name.text),
    ...(lane.witness === undefined ? [] : [leaf(lane.witness.pos, lane.witness.text)]),
    leaf(open.pos, isDrawn ? `${open.shape}${open.editors ? EDITORS : ''}` : typed),
  ];
}

// ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

/** A string without quotes, with typographic ones, or unclosed is reported and stands as it was typed. */
function string(leaves: Leaves, arg: Span & { readonly text: string }): void {
  const raw = leaves.raw(arg);
  const isQuoted = raw.length > 1 && raw.startsWith('"') && raw.endsWith('"') && raw.length === quoted(arg.text).length;
  if (isQuoted) leaves.put(arg.pos, quoted(arg.text));
  else leaves.slice(arg.pos, endOf(arg));
}

function argument(leaves: Leaves, arg: Argument): void {
  switch (arg.kind) {
    case 'word':
      // A key of several words may have any white space between them.
      arg.text.split(' ').forEach((word, index) => {
        if (index === 0) leaves.put(arg.pos, word);
        else leaves.next(word);
      });
      break;
    case 'name':
    case 'number':
      leaves.put(arg.pos, arg.text);
      break;
    case 'string':
      string(leaves, arg);
      break;
    case 'names':
      for (const name of arg.names) leaves.put(name.pos, name.text);
      break;
    case 'value':
      leaves.put(arg.pos, arg.form.text);
      break;
    case 'pitch':
      leaves.put(arg.pos, arg.spelling.text);
      break;
    case 'pair':
      leaves.put(arg.pos, arg.first.text);
      leaves.put(endOf(arg) - arg.second.text.length, arg.second.text);
      break;
    default:
      // Numbers in ratios, clefs and regions may be typed with noughts before them.
      leaves.slice(arg.pos, endOf(arg));
  }
}

function clauses(leaves: Leaves, all: readonly Clause[], known: Clauses): void {
  for (const clause of all) {
    const opens = lookUp(known, clause.name)?.opens;
    if (opens === undefined || opens === ':') leaves.put(clause.pos, opens ?? clause.name);
    for (const arg of clause.args) argument(leaves, arg);
  }
}

function recipe(leaves: Leaves, { phrases }: Recipe): void {
  for (const step of phrases.flatMap((phrase) => phrase.steps)) leaves.slice(step.pos, endOf(step));
}

function row(leaves: Leaves, one: Row, known: Clauses, word: string | undefined): void {
  if (word !== undefined) leaves.put(one.pos, word);
  for (const arg of one.args) argument(leaves, arg);
  clauses(leaves, one.clauses, known);
  if (one.recipe !== undefined) recipe(leaves, one.recipe);
}

function statementLeaves(block: Block, placed: Placed<StatementTree>): Leaf[] {
  const leaves = new Leaves(block, placed);
  const { keyword, args, clauses: own, rows } = placed.tree.statement;
  const entry = lookUp(statements, keyword);
  // What is no statement is known by its first word at most, and that may be a string.
  if (entry === undefined) return [];
  leaves.put(0, keyword);
  for (const arg of args) argument(leaves, arg);
  // Rows may stand between clauses.
  const inOrder = [
    ...own.map((clause) => ({ at: clause.pos, print: () => clauses(leaves, [clause], entry.clauses) })),
    ...rows.map((one) => ({
      at: one.pos,
      print: () => row(leaves, one, entry.rows?.clauses ?? {}, entry.rows?.word),
    })),
  ].sort((a, b) => a.at - b.at);
  for (const { print } of inOrder) print();
  return leaves.found;
}

// ─── the file ────────────────────────────────────────────────────────────────────────────────────────────────────

/** The leaves of a lane with its name, in the order of the file; between them is nothing but white space and comments. */
export const leavesOfLane = (tree: FileTree, block: Block, lane: Block['lanes'][number]): Leaf[] => [
  ...openingLeaves(tree, block, lane),
  ...laneLeaves(block, lane),
];

/** All leaves in the order of the file. */
export function leavesOf(tree: FileTree): Leaf[] {
  return tree.blocks.flatMap((block) =>
    [
      ...block.statements.map((placed) => statementLeaves(block, placed)),
      ...block.lanes.map((lane) => leavesOfLane(tree, block, lane)),
    ]
      // A lane may stand between statements where it has no business.
      .sort(([a], [b]) => (a?.start ?? 0) - (b?.start ?? 0))
      .flat(),
  );
}

/** The text of the file, from its leaves. */
export function printFile(tree: FileTree): string {
  const pieces: string[] = [];
  let from = 0;
  for (const { start, end, text } of leavesOf(tree)) {
    pieces.push(tree.text.slice(from, start), text);
    from = end;
  }
  pieces.push(tree.text.slice(from));
  return pieces.join('');
}
