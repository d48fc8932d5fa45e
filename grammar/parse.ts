/**
 * From the text of a file to its tree: cut into lines, lines grouped into statements and lanes, those into blocks.
 *
 * The cut reads only the beginnings of lines. Statements and lanes are parsed each by itself, from its own text, and equal
 * texts give one tree as long as a {@link TreeCache} keeps them.
 */
import type { Problem } from './findings/finding';
import { joinedBarline } from './lanes/barline';
import { parseLane } from './lanes/lane';
import { source } from './lanes/patterns';
import { offsetIn } from './place';
import { parseStatement } from './statements/parser';
import type {
  Barline,
  BarlineShape,
  Block,
  FileTree,
  LaneKind,
  LaneTree,
  Placed,
  PlacedLane,
  Span,
  StatementTree,
} from './tree';

/** Trees by text; what one parse did not ask for is dropped by the next, so memory is bounded by two versions. */
export interface TreeCache {
  lane(kind: LaneKind, text: string, joints: readonly number[]): LaneTree;
  statement(text: string, joints: readonly number[]): StatementTree;
}

/** Parses every text anew. */
export const noCache: TreeCache = { lane: parseLane, statement: parseStatement };

interface Line {
  readonly text: string;
  /** Offset in the file. */
  readonly start: number;
  readonly number: number;
}

/** Lines without their ends; a line ends with LF, CR LF or CR. */
function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  const ends = /\r\n|\n|\r/g;
  let start = 0;
  for (let end = ends.exec(text); end !== null; end = ends.exec(text)) {
    lines.push({ text: text.slice(start, end.index), start, number: lines.length });
    start = end.index + end[0].length;
  }
  lines.push({ text: text.slice(start), start, number: lines.length });
  return lines;
}

const name = source.name;
const laneStart = new RegExp(`^(\\s*)(?:(${name})(?:(\\s+)(${name}))?\\s*)?(:?\\|[|:]*(?:\\[\\])?)`);
/** A line that goes on with a system's head: a clause, or a stave with its clef. */
const headGoesOn = /^\s*(?:(?:key|meter|tempo|at|loose|free)\b|\S+\s+[A-Za-z]\d+(?:\+|\s|$))(?!.*\|)/;
const blank = /^\s*(?:\/\/[^\n]*)?$/;
const knownBarlines = new Set<string>(['|', '||', '|||', ':||', '||:', ':||:']);
const subLanes = new Set<string>(['fig', 'text']);

/** For places that count from a block's start. */
const atStart = { offset: 0 };

/** Collects the lines of one statement or lane. */
class Gathered {
  readonly pieces: string[] = [];
  readonly joints: number[] = [];
  readonly starts: number[] = [];
  readonly lines: number[] = [];
  private length = 0;

  constructor(private readonly block: { readonly offset: number; readonly line: number }) {}

  add(line: Line, from: number): void {
    const piece = line.text.slice(from);
    this.joints.push(this.length);
    this.starts.push(line.start + from - this.block.offset);
    this.lines.push(line.number - this.block.line);
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
    readonly kind: Block['kind'],
    readonly offset: number,
    readonly line: number,
    private readonly cache: TreeCache,
  ) {}

  beginStatement(line: Line): void {
    this.finish();
    this.statement = new Gathered(this);
    this.statement.add(line, 0);
  }

  /** An indented line that is no lane. */
  continueStatement(line: Line): void {
    const indent = /^\s*/.exec(line.text)?.[0].length ?? 0;
    const laneAbove = this.lanes.length > 0 || this.lane !== undefined;
    if (this.kind === 'system' && (laneAbove || !headGoesOn.test(line.text))) {
      this.report('lane-without-barline', line, indent);
    } else if (this.statement === undefined) this.report('continues-nothing', line, indent);
    else this.statement.add(line, indent);
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
    const at = line.start - this.offset;
    const kind = subLanes.has(first) && second === undefined ? (first as LaneKind) : 'lane';
    const known = knownBarlines.has(bar.replace('[]', ''));
    const gathered = new Gathered(this);
    gathered.add(line, head.length);
    this.lane = {
      gathered,
      kind,
      name: { text: first, pos: at + indent.length },
      witness:
        second === undefined ? undefined : { text: second, pos: at + indent.length + first.length + between.length },
      open: {
        kind: 'barline',
        pos: at + head.length - bar.length,
        len: bar.length,
        shape: known ? (bar.replace('[]', '') as BarlineShape) : '|',
        editors: bar.endsWith('[]'),
        suffixes: [],
      },
    };
    if (!known) this.report('bad-barline', line, head.length - bar.length, bar.slice(0, 20));
    if (this.kind !== 'system') this.report('lane-outside-system', line, indent.length);
  }

  private report(code: Problem['code'], line: Line, from: number, text = ''): void {
    const len = Math.max(line.text.trimEnd().length - from, 0);
    this.problems.push({ code, pos: line.start + from - this.offset, len, slots: { text } });
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
    return joinedBarline(whole, { ...moved(again), suffixes: again.suffixes.map(moved) }, this.problems);
  }

  block(end: number): Block {
    this.finish();
    return {
      kind: this.kind,
      line: this.line,
      offset: this.offset,
      length: end - this.offset,
      statements: this.statements,
      lanes: this.lanes,
      problems: this.problems,
    };
  }
}

const isSystem = (line: string): boolean => /^system(?![\w-])/.test(line);

/** The tree of a file. Never throws: what is not understood is junk with a problem. */
export function parseFile(text: string, cache: TreeCache = noCache): FileTree {
  const lines = linesOf(text);
  const blocks: Block[] = [];
  let current = new BlockBuilder('head', 0, 0, cache);
  const begin = (kind: Block['kind'], line: Line): void => {
    if (line.start > 0) blocks.push(current.block(line.start));
    current = new BlockBuilder(kind, line.start, line.number, cache);
  };
  for (const line of lines) {
    if (blank.test(line.text)) continue;
    const lane = laneStart.exec(line.text);
    if (lane !== null) current.addLane(line, lane);
    else if (/^\s/.test(line.text)) current.continueStatement(line);
    else {
      if (isSystem(line.text)) begin('system', line);
      else if (current.kind === 'system') begin('between', line);
      current.beginStatement(line);
    }
  }
  blocks.push(current.block(text.length));
  return { text, blocks, lineStarts: lines.map((line) => line.start) };
}
