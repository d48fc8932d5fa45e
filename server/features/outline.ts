/** The movements and leaves of a file as stretches of its text. */
import { stretchIn } from '../../grammar/place';
import { firstOf } from '../../grammar/statements/read';
import type { Block, FileTree, Placed, StatementTree } from '../../grammar/tree';

export interface Stretch {
  readonly kind: 'piece' | 'page';
  /** As the statement says it. */
  readonly name: string;
  readonly start: number;
  /** Of the statement itself. */
  readonly headEnd: number;
  /** Where the text ends that belongs to it, blank lines and comments left out. */
  readonly end: number;
}

const KINDS: ReadonlySet<string> = new Set(['piece', 'page']);

/** Each `piece` and `page` with all that stands under it, in the order of the text. */
export function stretchesOf(tree: FileTree): Stretch[] {
  const heads = tree.blocks.flatMap((block) =>
    block.statements
      .filter((placed) => KINDS.has(placed.tree.statement.keyword))
      .map((placed) => headOf(block, placed)),
  );
  return heads.map((head, index) => {
    const next = heads.slice(index + 1).find(({ kind }) => kind === 'piece' || kind === head.kind);
    return { ...head, end: textEndBefore(tree, next?.start ?? tree.text.length) };
  });
}

function headOf(block: Block, placed: Placed<StatementTree>): Omit<Stretch, 'end'> {
  const { statement, text } = placed.tree;
  const { start, end } = stretchIn(block, placed, { pos: 0, len: text.length });
  const name = firstOf(statement.args, 'string')?.text ?? '';
  return { kind: statement.keyword === 'piece' ? 'piece' : 'page', name, start, headEnd: end };
}

/** Where the last statement or lane that begins before an offset ends. */
function textEndBefore(tree: FileTree, offset: number): number {
  const last = tree.blocks.filter((block) => block.offset < offset).at(-1);
  return last === undefined ? offset : endBefore(last, offset);
}

/** Where the text of a block ends, or what of it stands before an offset. */
function endBefore(block: Block, offset: number): number {
  return Math.max(
    block.offset,
    ...[...block.statements, ...block.lanes]
      .filter(({ starts }) => block.offset + (starts[0] ?? 0) < offset)
      .map((placed) => stretchIn(block, placed, { pos: 0, len: placed.tree.text.length }).end),
  );
}

/** Where the text of a block ends, blank lines and comments after it left out. */
export const textEnd = (block: Block): number => endBefore(block, Number.POSITIVE_INFINITY);
