/** What a place in a file lies in, from the outside in. */
import { blockAt, posIn, stretchIn } from '../../grammar/place';
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
  Mark,
  Member,
  NamePart,
  Option,
  OptionsItem,
  Placed,
  PlacedLane,
  Row,
  Segment,
  Span,
  Statement,
  StatementTree,
  Suffix,
} from '../../grammar/tree';

/** A part of a statement or lane; its place counts in the joined text. */
export type Node = Span &
  (
    | { readonly what: 'statement'; readonly statement: Statement }
    | { readonly what: 'clause'; readonly clause: Clause }
    | { readonly what: 'row'; readonly row: Row }
    | { readonly what: 'argument'; readonly argument: Argument }
    | { readonly what: 'lane'; readonly lane: LaneTree }
    | { readonly what: 'bar'; readonly bar: Segment }
    | { readonly what: 'item'; readonly item: Item }
    | { readonly what: 'member'; readonly member: Member; readonly event: EventItem }
    | { readonly what: 'mark'; readonly mark: Mark }
    | { readonly what: 'annotation'; readonly annotation: Annotation }
    | { readonly what: 'place'; readonly place: NamePart }
    | { readonly what: 'option'; readonly option: Option; readonly options: OptionsItem }
    | { readonly what: 'label'; readonly label: Label }
  );

/** A statement or lane of a file. */
export type Holder =
  | { readonly kind: 'lane'; readonly index: number; readonly placed: PlacedLane }
  | { readonly kind: 'statement'; readonly index: number; readonly placed: Placed<StatementTree> };

/** A place in a statement or lane. */
export interface Here {
  readonly tree: FileTree;
  readonly blockIndex: number;
  readonly block: Block;
  readonly holder: Holder;
  /** In the joined text. */
  readonly pos: number;
}

const endOf = ({ pos, len }: Span): number => pos + len;
const at = ({ pos, len }: Span): Span => ({ pos, len });

const suffixNode = (suffix: Suffix): Node =>
  suffix.kind === 'mark'
    ? { what: 'mark', mark: suffix, ...at(suffix) }
    : { what: 'annotation', annotation: suffix, ...at(suffix) };

export const itemNode = (item: Item): Node => ({ what: 'item', item, ...at(item) });
const argumentNode = (argument: Argument): Node => ({ what: 'argument', argument, ...at(argument) });
const clauseNode = (clause: Clause): Node => ({ what: 'clause', clause, ...at(clause) });

/** Whole of a statement or lane. */
export const rootOf = ({ kind, placed }: Holder): Node => {
  const { text } = placed.tree;
  return kind === 'lane'
    ? { what: 'lane', lane: placed.tree, pos: 0, len: text.length }
    : { what: 'statement', statement: placed.tree.statement, pos: 0, len: text.length };
};

/** The parts of a node in the order of the text. */
export function partsOf(node: Node): readonly Node[] {
  switch (node.what) {
    case 'statement':
      return [
        ...node.statement.args.map(argumentNode),
        ...node.statement.clauses.map(clauseNode),
        ...node.statement.rows.map((row): Node => ({ what: 'row', row, ...at(row) })),
      ].sort((a, b) => a.pos - b.pos);
    case 'row':
      return [...node.row.args.map(argumentNode), ...node.row.clauses.map(clauseNode)];
    case 'clause':
      return node.clause.args.map(argumentNode);
    case 'lane':
      return [
        ...node.lane.opening.suffixes.map(suffixNode),
        ...node.lane.segments.map((bar): Node => ({ what: 'bar', bar, ...at(bar) })),
      ];
    case 'bar':
      return [...node.bar.items, ...(node.bar.bar === undefined ? [] : [node.bar.bar])].map(itemNode);
    case 'item':
      return partsOfItem(node.item);
    case 'member':
      return node.member.suffixes.map(suffixNode);
    case 'option':
      return [
        ...node.option.labels.map((label): Node => ({ what: 'label', label, ...at(label) })),
        ...node.option.items.map(itemNode),
      ];
    default:
      return [];
  }
}

function partsOfItem(item: Item): readonly Node[] {
  switch (item.kind) {
    case 'event':
      return [
        ...item.members.map((member): Node => ({ what: 'member', member, event: item, ...at(member) })),
        ...item.suffixes.map(suffixNode),
      ];
    case 'span':
      return [...item.items.map(itemNode), ...item.suffixes.map(suffixNode)];
    case 'options':
      return [
        ...(item.place === undefined ? [] : [{ what: 'place', place: item.place, ...at(item.place) } as const]),
        ...item.reasons.map(suffixNode),
        ...item.options.map((option): Node => ({ what: 'option', option, options: item, ...at(option) })),
        ...item.suffixes.map(suffixNode),
      ];
    case 'barline':
      return partsOfBarline(item);
    case 'change':
      return [...item.change.args.map(argumentNode), ...item.change.clauses.map(clauseNode)].map((part) =>
        moved(part, item.pos),
      );
    default:
      return [];
  }
}

const partsOfBarline = ({ suffixes }: Barline): readonly Node[] => suffixes.map(suffixNode);

/** What a change says counts from its opening bracket. */
const moved = (node: Node, by: number): Node => ({ ...node, pos: node.pos + by });

/** Everything below a node, each before its parts. */
export function* below(node: Node): Generator<Node> {
  for (const part of partsOf(node)) {
    yield part;
    yield* below(part);
  }
}

/** Nodes around a place, the outermost first. Where two meet, the one that begins there is meant. */
export function pathTo({ holder, pos }: Here): readonly Node[] {
  const path = [rootOf(holder)];
  for (;;) {
    const around = partsOf(path.at(-1) ?? rootOf(holder)).filter((part) => part.pos <= pos && pos <= endOf(part));
    const inner = around.at(-1);
    if (inner === undefined) return path;
    path.push(inner);
  }
}

/** The statement or lane in which an offset lies, or after whose beginning it stands; undefined before the first. */
export function hereAt(tree: FileTree, offset: number): Here | undefined {
  const blockIndex = blockAt(tree, offset);
  const block = tree.blocks[blockIndex];
  if (block === undefined) return undefined;
  const last = holdersOf(block)
    .flatMap((holder) => {
      const pos = posIn(block, holder.placed, offset);
      return pos === undefined ? [] : [{ holder, pos }];
    })
    .at(-1);
  return last === undefined ? undefined : { tree, blockIndex, block, ...last };
}

/** Statements and lanes of a block in the order of the text. */
export function holdersOf(block: Block): Holder[] {
  return [
    ...block.statements.map((placed, index): Holder => ({ kind: 'statement', index, placed })),
    ...block.lanes.map((placed, index): Holder => ({ kind: 'lane', index, placed })),
  ].sort((a, b) => (a.placed.starts[0] ?? 0) - (b.placed.starts[0] ?? 0));
}

/** Whether an offset lies in the text of the statement or lane, not in the name or the blank lines beside it. */
export const isInside = (here: Here, offset: number): boolean =>
  stretchOf(here, { pos: here.pos, len: 0 }).start === offset;

/** The offsets of a node in the file. */
export const stretchOf = ({ block, holder }: Here, node: Span): { readonly start: number; readonly end: number } =>
  stretchIn(block, holder.placed, node);

/** A statement without the comment that may follow it. */
export function saidIn({ pos, keyword, args, clauses }: Statement): Span {
  const ends = [...args, ...clauses].map((part) => part.pos + part.len);
  return { pos, len: Math.max(pos + keyword.length, ...ends) - pos };
}
