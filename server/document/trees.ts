/** Trees of a document's texts, kept from version to version. */
import { detached } from '../../grammar/detached';
import { parseLane } from '../../grammar/lanes/lane';
import { parseBlock, type TreeCache } from '../../grammar/parse';
import { parseStatement } from '../../grammar/statements/parser';
import type { BlockContents, FileTree, LaneKind, LaneTree, StatementTree } from '../../grammar/tree';

export class Trees implements TreeCache {
  /** Lanes and statements that were read since this was last set to zero. */
  lexed = 0;
  private readonly blocks: Readonly<Record<BlockContents['kind'], Map<string, BlockContents>>> = {
    head: new Map(),
    system: new Map(),
    between: new Map(),
  };
  private readonly lanes: Readonly<Record<LaneKind, Map<string, LaneTree>>> = {
    lane: new Map(),
    fig: new Map(),
    text: new Map(),
  };
  private readonly statements = new Map<string, StatementTree>();

  block(kind: BlockContents['kind'], text: string): BlockContents {
    const kept = this.blocks[kind];
    const known = kept.get(text);
    if (known !== undefined) return known;
    const own = detached(text);
    const contents = parseBlock(kind, own, this);
    kept.set(own, contents);
    return contents;
  }

  // The joints need not be in the keys: a line feed stands in a text only where two lines are joined.

  lane(kind: LaneKind, text: string, joints: readonly number[]): LaneTree {
    return this.read(this.lanes[kind], text, (own) => parseLane(kind, own, joints));
  }

  statement(text: string, joints: readonly number[]): StatementTree {
    return this.read(this.statements, text, (own) => parseStatement(own, joints));
  }

  private read<Tree>(known: Map<string, Tree>, text: string, parse: (own: string) => Tree): Tree {
    const found = known.get(text);
    if (found !== undefined) return found;
    this.lexed++;
    const own = detached(text);
    const tree = parse(own);
    known.set(own, tree);
    return tree;
  }

  /** Contents of the systems that are kept. */
  systems(): Iterable<BlockContents> {
    return this.blocks.system.values();
  }

  /** Trees of lanes and statements that are kept. */
  get size(): number {
    const { lane, fig, text } = this.lanes;
    return lane.size + fig.size + text.size + this.statements.size;
  }

  get sizes(): { readonly systems: number; readonly trees: number } {
    return { systems: this.blocks.system.size, trees: this.size };
  }

  /** Drops the blocks of no version that is kept, and the trees that no block kept has any more. */
  sweep(versions: readonly FileTree[]): void {
    const alive = new Set<BlockContents | LaneTree | StatementTree>();
    for (const { blocks } of versions) for (const { contents } of blocks) alive.add(contents);
    for (const contents of [...alive]) {
      const { statements, lanes } = contents as BlockContents;
      for (const { tree } of statements) alive.add(tree);
      for (const { tree } of lanes) alive.add(tree);
    }
    for (const kept of [...Object.values(this.blocks), this.statements, ...Object.values(this.lanes)]) {
      for (const [text, one] of kept) if (!alive.has(one)) kept.delete(text);
    }
  }
}
