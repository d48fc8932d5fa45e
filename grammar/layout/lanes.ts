/** Lanes laid out: what stands in one bar of a system stands in one column. */
import { offsetIn } from '../place';
import { type Leaf, leavesOfLane } from '../print';
import type { Barline, Block, FileTree, Item, PlacedLane } from '../tree';
import { padded, spaces, widest, widthOf } from './columns';
import type { FileLine, Laid } from './lines';

/** What stands between two barlines. */
interface Cell {
  readonly text: string;
  /** Bars that it takes: options and spans may hold barlines. */
  readonly bars: number;
  /** The barline that ends it, with what is glued to it; empty where the line ends without one. */
  readonly bar: string;
}

/** One line of a lane. */
interface Row {
  readonly line: number;
  /** Indentation and name of the lane; nothing in a line that continues it. */
  readonly head: string;
  readonly open: string;
  /** Bars of the lane before this line. */
  readonly before: number;
  readonly cells: readonly Cell[];
  readonly comment: string;
}

const LANE_INDENT = '  ';
const SUB_LANE_INDENT = '    ';

const indentOf = ({ tree }: PlacedLane): string => (tree.kind === 'lane' ? LANE_INDENT : SUB_LANE_INDENT);

const knownBarline = /^(?:\||\|\||\|\|\||:\|\||\|\|:|:\|\|:)(?:\[\])?$/;

/** Whether all of a lane is understood, so that its signs can be moved. */
function isUnderstood(tree: FileTree, block: Block, lane: PlacedLane): boolean {
  const isBar = (bar: Barline): boolean => {
    const at = offsetIn(block, lane, bar.pos);
    return knownBarline.test(/^:*\|[|:]*(?:\[\])?/.exec(tree.text.slice(at, at + bar.len))?.[0] ?? '');
  };
  const good = (item: Item): boolean => {
    if (item.kind === 'junk') return false;
    if (item.kind === 'barline') return isBar(item);
    if (item.kind === 'span') return item.items.every(good);
    return item.kind !== 'options' || item.options.every((option) => option.items.every(good));
  };
  const { pos, len } = lane.open;
  return (
    knownBarline.test(tree.text.slice(block.offset + pos, block.offset + pos + len)) &&
    lane.tree.segments.every(({ items, bar }) => items.every(good) && (bar === undefined || isBar(bar)))
  );
}

/** The barlines inside spans and first options: those that the bars of the lane are counted by. */
function innerBars(items: readonly Item[]): Barline[] {
  return items.flatMap((item) => {
    if (item.kind === 'barline') return [item];
    if (item.kind === 'span') return innerBars(item.items);
    return item.kind === 'options' ? innerBars(item.options[0]?.items ?? []) : [];
  });
}

/** What a leaf is to the columns, by its offset in the file. */
type BarKind = 'ends' | 'inside';

function barKinds(block: Block, lane: PlacedLane): Map<number, BarKind> {
  const kinds = new Map<number, BarKind>();
  for (const { items, bar } of lane.tree.segments) {
    for (const inner of innerBars(items)) kinds.set(offsetIn(block, lane, inner.pos), 'inside');
    if (bar !== undefined) kinds.set(offsetIn(block, lane, bar.pos), 'ends');
  }
  return kinds;
}

/** Signs as typed: glued or with one space between them. */
class Signs {
  text = '';
  private end = -1;

  add({ start, end, text }: Leaf): void {
    this.text += this.text === '' || start === this.end ? text : ` ${text}`;
    this.end = end;
  }

  /** Whether the leaf is a mark or an annotation glued to the last sign. */
  takes({ start, text }: Leaf): boolean {
    return start === this.end && /^['*]/.test(text);
  }
}

function rowOf(leaves: readonly Leaf[], kinds: ReadonlyMap<number, BarKind>): Pick<Row, 'open' | 'cells'> {
  const [first, ...rest] = leaves;
  const open = new Signs();
  if (first !== undefined) open.add(first);
  const cells: { text: string; bars: number; bar: Signs }[] = [];
  let current = new Signs();
  let bars = 1;
  let lastBar: Signs | undefined = open;
  for (const leaf of rest) {
    if (lastBar?.takes(leaf)) {
      lastBar.add(leaf);
      continue;
    }
    lastBar = undefined;
    const kind = kinds.get(leaf.start);
    if (kind === 'ends') {
      lastBar = new Signs();
      lastBar.add(leaf);
      cells.push({ text: current.text, bars, bar: lastBar });
      current = new Signs();
      bars = 1;
    } else {
      if (kind === 'inside') bars++;
      current.add(leaf);
    }
  }
  const last = current.text === '' ? [] : [{ text: current.text, bars, bar: '' }];
  return { open: open.text, cells: [...cells.map((cell) => ({ ...cell, bar: cell.bar.text })), ...last] };
}

function rowsOf(tree: FileTree, block: Block, lane: PlacedLane, lines: readonly FileLine[]): Row[] {
  const kinds = barKinds(block, lane);
  const leaves = leavesOfLane(tree, block, lane);
  const names = lane.witness === undefined ? 1 : 2;
  const indent = indentOf(lane);
  const rows: Row[] = [];
  let from = 0;
  let before = 0;
  lane.lines.forEach((inBlock, index) => {
    const line = block.line + inBlock;
    const { start, text } = lines[line] ?? { start: 0, text: '' };
    let to = from;
    while (to < leaves.length && (leaves[to]?.start ?? 0) < start + text.length) to++;
    const here = leaves.slice(from, to);
    from = to;
    const signs = index === 0 ? here.slice(names) : here;
    // A barline that begins a line ends the bar left open above, or is one with the barline there.
    if (index > 0 && kinds.has(signs[0]?.start ?? -1)) before++;
    const row = rowOf(signs, kinds);
    const head =
      index > 0
        ? ''
        : indent +
          here
            .slice(0, names)
            .map((leaf) => leaf.text)
            .join(' ');
    const comment = text.slice((here.at(-1)?.end ?? start) - start).trim();
    rows.push({ line, head, before, comment, ...row });
    before += row.cells.reduce((sum, cell) => sum + (cell.bar === '' ? cell.bars - 1 : cell.bars), 0);
  });
  return rows;
}

const between = (width: number): number => (width === 0 ? 1 : width + 2);

/** Widths of the bars and barlines of rows that begin with the same bar. */
class Columns {
  readonly open: number;
  private readonly widths: number[] = [];
  private readonly bars: number[] = [];

  constructor(rows: readonly Row[]) {
    this.open = widest(rows.map((row) => row.open));
    // What takes several bars can wait until those are known.
    for (const wide of [false, true]) for (const row of rows) this.measure(row, wide);
  }

  private measure(row: Row, wide: boolean): void {
    let column = 0;
    for (const { text, bars, bar } of row.cells) {
      const last = column + bars - 1;
      if (bar !== '' && bars > 1 === wide) {
        // Of several bars the last takes what the others leave.
        const left = widthOf(text) - (wide ? this.total(column, last - 1) + (this.bars[last - 1] ?? 0) : 0);
        // A bar of no width has one space, not two.
        this.widths[last] = Math.max(this.widths[last] ?? 0, wide && left === 0 ? 1 : left);
        this.bars[last] = Math.max(this.bars[last] ?? 0, widthOf(bar));
      }
      column += bars;
    }
  }

  /** Columns from the barline before one bar to the barline after another. */
  private total(first: number, last: number): number {
    let total = 0;
    for (let column = first; column <= last; column++) {
      total += between(this.widths[column] ?? 0);
      if (column < last) total += this.bars[column] ?? 0;
    }
    return total;
  }

  body(row: Row): string {
    let text = padded(row.open, this.open);
    let column = 0;
    for (const cell of row.cells) {
      const last = column + cell.bars - 1;
      const width = this.total(column, last);
      text += cell.text === '' ? spaces(width) : padded(` ${cell.text} `, cell.bar === '' ? 0 : width);
      text += padded(cell.bar, this.bars[last] ?? 0);
      column += cell.bars;
    }
    return text.trimEnd();
  }
}

/** In loose and free systems the bars of the lanes do not agree. */
const hasBarsInCommon = (block: Block): boolean =>
  !(block.statements[0]?.tree.statement.args ?? []).some(
    (arg) => arg.kind === 'word' && (arg.text === 'loose' || arg.text === 'free'),
  );

const bodies = (rows: readonly Row[]): string[] => {
  const columns = new Columns(rows);
  return rows.map((row) => columns.body(row));
};

/** Rows that begin with the same bar, or each row by itself. */
function together(rows: readonly Row[], inCommon: boolean): Row[][] {
  const groups = new Map<number, Row[]>();
  for (const row of rows) {
    const key = inCommon ? row.before : row.line;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()];
}

/** The lines of a lane that is not understood: moved to its place as a whole, and otherwise as they are. */
function shiftedLines(block: Block, lane: PlacedLane, lines: readonly FileLine[]): [number, Laid][] {
  const numbers = lane.lines.map((inBlock) => block.line + inBlock);
  const textOf = (line: number): string => lines[line]?.text ?? '';
  const given = /^\s*/.exec(textOf(numbers[0] ?? -1))?.[0] ?? '';
  const indent = indentOf(lane);
  const shifted = (text: string): string => (text.startsWith(given) ? indent + text.slice(given.length) : text);
  return numbers.map((line) => [line, { body: shifted(textOf(line)).trimEnd(), comment: '', kind: 'lane' }]);
}

/** The lines of a system's lanes; those that are switched off stand as they are. */
export function laidLanes(
  tree: FileTree,
  block: Block,
  lines: readonly FileLine[],
  off: readonly boolean[],
): Map<number, Laid> {
  const laid = new Map<number, Laid>();
  if (block.kind !== 'system') return laid;
  const rows: Row[] = [];
  for (const lane of block.lanes) {
    if (isUnderstood(tree, block, lane)) {
      for (const row of rowsOf(tree, block, lane, lines)) if (!off[row.line]) rows.push(row);
    } else {
      for (const [line, own] of shiftedLines(block, lane, lines)) if (!off[line]) laid.set(line, own);
    }
  }
  const headWidth = widest(rows.map((row) => row.head));
  for (const group of together(rows, hasBarsInCommon(block))) {
    bodies(group).forEach((body, i) => {
      const row = group[i];
      if (row === undefined) return;
      laid.set(row.line, { body: `${padded(row.head, headWidth)} ${body}`, comment: row.comment, kind: 'lane' });
    });
  }
  return laid;
}
