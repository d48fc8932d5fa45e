/**
 * From the text of a file to its tree: cut into lines, lines grouped into statements and lanes, those into blocks.
 *
 * The cut reads only the beginnings of lines. Statements and lanes are parsed each by itself, from its own text, and equal
 * texts give one tree as long as a {@link TreeCache} keeps them.
 */
import { type Fix, type Problem, problemOf } from './findings/finding';
import { replacing } from './findings/fixes';
import { finished } from './finished';
import { drawnBarline, joinedBarline } from './lanes/barline';
import { parseLane } from './lanes/lane';
import { source } from './lanes/patterns';
import { offsetIn } from './place';
import { parseStatement } from './statements/parser';
import type {
  Barline,
  Block,
  BlockContents,
  FileTree,
  LaneKind,
  LaneTree,
  Placed,
  PlacedLane,
  Span,
  StatementTree,
} from './tree';
import { nameMeant } from './vocabulary/names';

/** Keeps what a text alone says, so that equal texts give one object. */
export interface TreeCache {
  /** @param text the block's, without blank lines and comments at its end */
  block(kind: Block['kind'], text: string): BlockContents;
  lane(kind: LaneKind, text: string, joints: readonly number[]): LaneTree;
  statement(text: string, joints: readonly number[]): StatementTree;
}

/** Parses every text anew. */
export const noCache: TreeCache = {
  block: (kind, text) => parseBlock(kind, text, noCache),
  lane: parseLane,
  statement: parseStatement,
};

interface Line {
  readonly text: string;
  /** Offset in the block. */
  readonly start: number;
  /** From the block's first. */
  readonly number: number;
}

/** A stretch of lines that make a block. */
interface BlockCut {
  readonly kind: Block['kind'];
  readonly start: number;
  readonly line: number;
  /** Where its last line ends that is neither blank nor a comment. */
  textEnd: number;
}

const name = source.name;
const laneStart = new RegExp(`^(\\s*)(?:(${name})(?:(\\s+)(${name}))?\\s*)?(:?\\|[|:]*(?:\\[\\])?)`);
/** A lane whose voice has signs in its name that a name cannot have. */
const misnamedLane = /^\s*(\p{L}[\p{L}\p{M}\d_.'’-]*)\s*\|/u;
const addressedLane = new RegExp(`^${name}\\.${name}$`);
/** The names of a lane before its first value, where a barline should stand. */
const withoutBarline = new RegExp(`^\\s*${name}(?:\\s+${name})?(?=\\s+\\d+\\.*\\s)`);
/** A line that goes on with a system's head: a clause, or a stave with its clef. */
const headGoesOn = /^\s*(?:(?:key|meter|tempo|at|loose|free)\b|\S+\s+[A-Za-z]\d+(?:\+|\s|$))(?!.*\|)/;
const blank = /^\s*(?:\/\/[^\n]*)?$/;
const subLanes = new Set<string>(['fig', 'text']);

const isSystem = (line: string): boolean => /^system(?![\w-])/.test(line);

/** For places that count from a block's start. */
const atStart = { offset: 0 };

// ─── the cut ─────────────────────────────────────────────────────────────────────────────────────────────────────

/** Where each line of a text starts and, a pair each, where it ends; a line ends with LF, CR LF or CR. */
function linesIn(text: string): readonly number[] {
  const found: number[] = [];
  let start = 0;
  let [lf, cr] = [text.indexOf('\n'), text.indexOf('\r')];
  while (lf >= 0 || cr >= 0) {
    const end = cr < 0 || (lf >= 0 && lf < cr) ? lf : cr;
    found.push(start, end);
    start = end === cr && lf === cr + 1 ? end + 2 : end + 1;
    if (lf >= 0 && lf < start) lf = text.indexOf('\n', start);
    if (cr >= 0 && cr < start) cr = text.indexOf('\r', start);
  }
  found.push(start, text.length);
  return found;
}

const SPACE = 32;
const TAB = 9;
const SLASH = 47;
const DELETE = 127;

type Beginning = 'blank' | 'indented' | 'statement' | 'system';

/**
 * What a line is by its beginning. The cut runs over the whole text after every stroke of a key, so it looks at as few
 * characters as it can.
 */
function beginningOf(text: string, start: number, end: number): Beginning {
  let at = start;
  let code = text.charCodeAt(at);
  while (at < end && (code === SPACE || code === TAB)) code = text.charCodeAt(++at);
  if (at === end) return 'blank';
  const isPlain = code > SPACE && code < DELETE && code !== SLASH;
  if (at > start && isPlain) return 'indented';
  const line = text.slice(start, end);
  if (!isPlain && blank.test(line)) return 'blank';
  if (laneStart.test(line) || /^\s/.test(line)) return 'indented';
  return isSystem(line) ? 'system' : 'statement';
}

/** Cuts a text into blocks: at each system, and at the first statement after one. @param kind of the first block */
function cutBlocks(
  text: string,
  kind: Block['kind'],
): { readonly cuts: readonly BlockCut[]; readonly lineStarts: readonly number[] } {
  const cuts: BlockCut[] = [];
  const lineStarts: number[] = [];
  let current: BlockCut = { kind, start: 0, line: 0, textEnd: 0 };
  const lines = linesIn(text);
  for (let at = 0; at < lines.length; at += 2) {
    const [start, end] = [lines[at] as number, lines[at + 1] as number];
    const beginning = beginningOf(text, start, end);
    lineStarts.push(start);
    if (beginning === 'blank') continue;
    if (beginning === 'system' || (beginning === 'statement' && current.kind === 'system')) {
      if (start > 0) cuts.push(current);
      current = {
        kind: beginning === 'system' ? 'system' : 'between',
        start,
        line: lineStarts.length - 1,
        textEnd: end,
      };
    }
    current.textEnd = end;
  }
  cuts.push(current);
  return { cuts, lineStarts };
}

// ─── one block ───────────────────────────────────────────────────────────────────────────────────────────────────

/** Collects the lines of one statement or lane. */
class Gathered {
  readonly pieces: string[] = [];
  readonly joints: number[] = [];
  readonly starts: number[] = [];
  readonly lines: number[] = [];
  private length = 0;

  add(line: Line, from: number): void {
    const piece = line.text.slice(from);
    this.joints.push(this.length);
    this.starts.push(line.start + from);
    this.lines.push(line.number);
    this.pieces.push(piece);
    this.length += piece.length + 1;
  }

  placed<T>(tree: T): Placed<T> {
    return { tree, starts: this.starts, lines: this.lines };
  }

  get text(): string {
    return this.pieces.join('\n');
  }
}

interface OpenLane {
  readonly gathered: Gathered;
  readonly kind: LaneKind;
  readonly name: PlacedLane['name'];
  readonly witness: PlacedLane['witness'];
  readonly open: Barline;
}

/** Gathers the lines of one block and parses what stands in it. */
class BlockBuilder {
  readonly statements: Placed<StatementTree>[] = [];
  readonly lanes: PlacedLane[] = [];
  readonly problems: Problem[] = [];
  private statement: Gathered | undefined;
  private lane: OpenLane | undefined;

  constructor(
    private readonly kind: Block['kind'],
    private readonly cache: TreeCache,
  ) {}

  beginStatement(line: Line): void {
    this.finish();
    this.statement = new Gathered();
    this.statement.add(line, 0);
  }

  /** An indented line that is no lane. */
  continueStatement(line: Line): void {
    const indent = /^\s*/.exec(line.text)?.[0].length ?? 0;
    const laneAbove = this.lanes.length > 0 || this.lane !== undefined;
    if (this.kind === 'system' && (laneAbove || !headGoesOn.test(line.text))) this.noLane(line, indent);
    else if (this.statement === undefined) this.report('continues-nothing', line, indent);
    else this.statement.add(line, indent);
  }

  /** A line among lanes that is none: its name is not typed as names are, or no barline follows it. */
  private noLane(line: Line, indent: number): void {
    const [, misnamed = ''] = misnamedLane.exec(line.text) ?? [];
    // `dessus.L` is what a witness lane is called in addresses.
    const meant = addressedLane.test(misnamed) ? misnamed.replace('.', ' ') : nameMeant(misnamed, 'voice');
    if (meant !== undefined) {
      const at = { pos: line.start + indent, len: misnamed.length };
      const slots = { word: misnamed, expected: 'the name of a voice' };
      this.problems.push(problemOf('bad-name', at, slots, [replacing(at, meant)]));
      return;
    }
    // `tempo 2 at 60` is of the head, too late.
    const names = headGoesOn.test(line.text) ? '' : (withoutBarline.exec(line.text)?.[0] ?? '');
    const fix = replacing({ pos: line.start + names.length, len: 0 }, ' |', 'put a barline before the music');
    this.report('lane-without-barline', line, indent, names === '' ? [] : [fix]);
  }

  addLane(line: Line, match: RegExpExecArray): void {
    const [head = '', indent = '', first, between = '', second, bar = '|'] = match;
    if (first === undefined) {
      if (this.lane === undefined) this.report('lane-continues-nothing', line, indent.length);
      // The opening barline of a continuing line belongs to the lane's text.
      else this.lane.gathered.add(line, head.length - bar.length);
      return;
    }
    this.finish();
    const at = line.start;
    const kind = subLanes.has(first) && second === undefined ? (first as LaneKind) : 'lane';
    const gathered = new Gathered();
    gathered.add(line, head.length);
    const opening = { pos: at + head.length - bar.length, len: bar.length };
    this.lane = {
      gathered,
      kind,
      name: { text: first, pos: at + indent.length },
      witness:
        second === undefined ? undefined : { text: second, pos: at + indent.length + first.length + between.length },
      open: { kind: 'barline', ...opening, ...drawnBarline(opening, bar, this.problems), suffixes: [] },
    };
    if (this.kind !== 'system') this.report('lane-outside-system', line, indent.length);
  }

  private report(code: Problem['code'], line: Line, from: number, fixes: readonly Fix[] = []): void {
    const len = Math.max(line.text.trimEnd().length - from, 0);
    this.problems.push(problemOf(code, { pos: line.start + from, len }, {}, fixes));
  }

  private finish(): void {
    if (this.statement !== undefined) {
      const { text, joints } = this.statement;
      this.statements.push(this.statement.placed(this.cache.statement(text, joints)));
      this.statement = undefined;
    }
    if (this.lane !== undefined) {
      const { gathered, kind, name: voice, witness, open } = this.lane;
      const placed = gathered.placed(this.cache.lane(kind, gathered.text, gathered.joints));
      const whole = this.joinOpening(open, placed);
      this.lanes.push({ ...placed, name: voice, ...(witness === undefined ? {} : { witness }), open: whole });
      this.lane = undefined;
    }
  }

  /** The opening barline with what its tree says belongs to it. */
  private joinOpening(open: Barline, placed: Placed<LaneTree>): Barline {
    const { suffixes, again } = placed.tree.opening;
    if (suffixes.length === 0 && again === undefined) return open;
    const moved = <Node extends Span>(node: Node): Node => ({ ...node, pos: offsetIn(atStart, placed, node.pos) });
    const whole = { ...open, suffixes: suffixes.map(moved) };
    if (again === undefined) return whole;
    const below = { ...moved(again), suffixes: again.suffixes.map(moved), again: again.again?.map(moved) ?? [] };
    return joinedBarline(whole, [below], this.problems);
  }

  contents(): BlockContents {
    this.finish();
    return { kind: this.kind, statements: this.statements, lanes: this.lanes, problems: this.problems };
  }
}

/** What a block's text says. Statements and lanes are asked of the cache. */
export function parseBlock(kind: Block['kind'], text: string, cache: TreeCache): BlockContents {
  const builder = new BlockBuilder(kind, cache);
  const lines = linesIn(text);
  for (let at = 0; at < lines.length; at += 2) {
    const start = lines[at] as number;
    const line: Line = { text: text.slice(start, lines[at + 1]), start, number: at / 2 };
    if (blank.test(line.text)) continue;
    const lane = laneStart.exec(line.text);
    if (lane !== null) builder.addLane(line, lane);
    else if (/^\s/.test(line.text)) builder.continueStatement(line);
    else builder.beginStatement(line);
  }
  return builder.contents();
}

// ─── the file ────────────────────────────────────────────────────────────────────────────────────────────────────

const placedAt = (contents: BlockContents, line: number, offset: number, length: number): Block => {
  const { kind, statements, lanes, problems } = contents;
  return { kind, statements, lanes, problems, contents, line, offset, length };
};

/** The blocks of a tree that stand in a text as they are: so many at its beginning, and those from an index on at its end. */
interface Unchanged {
  readonly first: number;
  readonly rest: number;
  /** Between them the text is to be cut anew. */
  readonly from: number;
  readonly to: number;
}

const isLineEnd = (sign: string | undefined): boolean => sign === '\n' || sign === '\r';

/**
 * What a text has in common with the one that was cut before. The last block before a change may go on into it; after it
 * only a system surely begins a block of its own.
 */
function unchanged({ text: old, blocks }: FileTree, text: string): Unchanged {
  const standsAt = ({ offset, length }: Block, start: number): boolean =>
    text.slice(start, start + length) === old.slice(offset, offset + length);
  let alike = 0;
  while (alike < blocks.length && standsAt(blocks[alike] as Block, (blocks[alike] as Block).offset)) alike++;
  const first = Math.max(0, alike - 1);
  const from = blocks[first]?.offset ?? 0;
  let [rest, to] = [blocks.length, text.length];
  for (let index = blocks.length - 1, start = text.length; index > first; index--) {
    const block = blocks[index] as Block;
    start -= block.length;
    if (start <= from || !standsAt(block, start)) break;
    if (block.kind === 'system' && isLineEnd(text[start - 1])) [rest, to] = [index, start];
  }
  return { first, rest, from, to };
}

const nothingUnchanged = (text: string): Unchanged => ({ first: 0, rest: 0, from: 0, to: text.length });

/**
 * The tree of a file, block by block, so that whoever asked can turn to something else between two.
 * @param before the tree of another version: only what differs from it is cut anew
 */
export function* parsing(text: string, cache: TreeCache, before?: FileTree): Generator<undefined, FileTree> {
  const { first, rest, from, to } = before === undefined ? nothingUnchanged(text) : unchanged(before, text);
  const [known = [], knownLines = []] = [before?.blocks, before?.lineStarts];
  const begins: Pick<Block, 'kind' | 'line'> = (first > 0 ? known[first] : undefined) ?? { kind: 'head', line: 0 };
  const { cuts, lineStarts } = cutBlocks(text.slice(from, to), begins.kind);
  const blocks: Block[] = known.slice(0, first);
  for (let index = 0; index < cuts.length; index++) {
    const { kind, start, line, textEnd } = cuts[index] as BlockCut;
    const contents = cache.block(kind, text.slice(from + start, from + textEnd));
    const end = cuts[index + 1]?.start ?? to - from;
    blocks.push(placedAt(contents, begins.line + line, from + start, end - start));
    yield;
  }
  const lines = knownLines.slice(0, begins.line);
  for (const start of lineStarts) lines.push(from + start);
  const next = known[rest];
  if (next !== undefined) {
    // The cut ended with the first line of what follows, still empty.
    lines.pop();
    const [offset, line] = [to - next.offset, lines.length - next.line];
    for (let index = rest; index < known.length; index++) {
      const block = known[index] as Block;
      const stays = offset === 0 && line === 0;
      blocks.push(stays ? block : placedAt(block.contents, block.line + line, block.offset + offset, block.length));
    }
    for (let index = next.line; index < knownLines.length; index++) lines.push((knownLines[index] as number) + offset);
  }
  return { text, blocks, lineStarts: lines };
}

/** The tree of a file. Never throws: what is not understood is junk with a problem. */
export function parseFile(text: string, cache: TreeCache = noCache): FileTree {
  return finished(parsing(text, cache));
}
