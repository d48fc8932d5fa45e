/** What each stretch of a text is, for colours that know the notation. */
import type { Range, SemanticTokensEdit, SemanticTokensLegend } from 'vscode-languageserver-types';
import { indexAtOrBelow } from '../../grammar/place';
import type { Block, BlockContents, FileTree, Placed } from '../../grammar/tree';
import { leavesInLane, leavesInStatement, type TokenLeaf, type TokenType } from './tokenLeaves';

const types: readonly TokenType[] = [
  'keyword',
  'property',
  'enumMember',
  'string',
  'number',
  'variable',
  'class',
  'label',
  'decorator',
  'operator',
  'macro',
  'comment',
  'parameter',
];

export const legend: SemanticTokensLegend = { tokenTypes: [...types], tokenModifiers: ['declaration', 'modification'] };

const typeNumbers: ReadonlyMap<TokenType, number> = new Map(types.map((type, index) => [type, index]));

/** Numbers of one token: lines below the token before, signs right of it or of the line's beginning, length, type, modifiers. */
const EACH = 5;

interface Token {
  /** From the block's first line. */
  readonly line: number;
  readonly column: number;
  readonly length: number;
  readonly type: number;
  readonly modifiers: number;
}

/** The tokens of a file, or of the lines of a range, as the protocol encodes them. */
export function semanticTokens(tree: FileTree, range?: Range): number[] {
  const data: number[] = [];
  let [lastLine, lastColumn] = [0, 0];
  for (const block of tree.blocks) {
    if (range !== undefined && !reaches(tree, block, range)) continue;
    for (const { line: inBlock, column, length, type, modifiers } of tokensOfBlock(tree, block)) {
      const line = block.line + inBlock;
      if (range !== undefined && (line < range.start.line || line > range.end.line)) continue;
      data.push(line - lastLine, line === lastLine ? column - lastColumn : column, length, type, modifiers);
      [lastLine, lastColumn] = [line, column];
    }
  }
  return data;
}

function reaches(tree: FileTree, { line, offset, length }: Block, { start, end }: Range): boolean {
  return line <= end.line && indexAtOrBelow(tree.lineStarts, offset + length) >= start.line;
}

/** Equal blocks have equal tokens, wherever they stand. */
const known = new WeakMap<BlockContents, readonly Token[]>();

function tokensOfBlock(tree: FileTree, block: Block): readonly Token[] {
  const kept = known.get(block.contents);
  if (kept !== undefined) return kept;
  const tokens = [...inStatements(tree, block), ...inLanes(tree, block)];
  tokens.sort((a, b) => a.line - b.line || a.column - b.column);
  known.set(block.contents, tokens);
  return tokens;
}

const inStatements = (tree: FileTree, block: Block): Token[] =>
  block.statements.flatMap((placed) =>
    leavesInStatement(placed.tree).flatMap((leaf) => tokenOf(tree, block, placed, leaf)),
  );

const inLanes = (tree: FileTree, block: Block): Token[] =>
  block.lanes.flatMap((lane) => [
    nameToken(tree, block, lane.name, 'variable'),
    ...(lane.witness === undefined ? [] : [nameToken(tree, block, lane.witness, 'label')]),
    ...leavesInLane(lane.tree).flatMap((leaf) => tokenOf(tree, block, lane, leaf)),
  ]);

const DECLARED = 1;
const EDITORS = 2;

function nameToken(tree: FileTree, block: Block, name: { text: string; pos: number }, type: TokenType): Token {
  const offset = block.offset + name.pos;
  const line = indexAtOrBelow(tree.lineStarts, offset);
  return {
    line: line - block.line,
    column: offset - (tree.lineStarts[line] ?? 0),
    length: name.text.length,
    type: typeNumbers.get(type) ?? 0,
    modifiers: 0,
  };
}

/** A leaf at its place; what runs over the end of a line is left to the grammar of the colours. */
function tokenOf(
  tree: FileTree,
  block: Block,
  placed: Placed<{ joints: readonly number[] }>,
  leaf: TokenLeaf,
): Token[] {
  const { joints } = placed.tree;
  const index = indexAtOrBelow(joints, leaf.pos);
  const end = joints[index + 1];
  if (leaf.len <= 0 || (end !== undefined && leaf.pos + leaf.len >= end)) return [];
  const line = placed.lines[index] ?? 0;
  const offset = block.offset + (placed.starts[index] ?? 0) + leaf.pos - (joints[index] ?? 0);
  return [
    {
      line,
      column: offset - (tree.lineStarts[block.line + line] ?? 0),
      length: leaf.len,
      type: typeNumbers.get(leaf.type) ?? 0,
      modifiers: (leaf.isGiven ? DECLARED : 0) + (leaf.isEditors ? EDITORS : 0),
    },
  ];
}

/** What turns the numbers of one version into those of the next: the stretch between what they share at both ends. */
export function tokenEdits(before: readonly number[], after: readonly number[]): SemanticTokensEdit[] {
  const shortest = Math.min(before.length, after.length);
  let start = 0;
  while (start < shortest && before[start] === after[start]) start++;
  let shared = 0;
  while (shared < shortest - start && before[before.length - 1 - shared] === after[after.length - 1 - shared]) shared++;
  const deleteCount = before.length - shared - start;
  const data = after.slice(start, after.length - shared);
  return deleteCount === 0 && data.length === 0 ? [] : [{ start, deleteCount, data }];
}

/** The tokens as a reader sees them: offset in the file, length and type. */
export function decoded(tree: FileTree, data: readonly number[]): { start: number; length: number; type: string }[] {
  const tokens: { start: number; length: number; type: string }[] = [];
  let [line, column] = [0, 0];
  for (let at = 0; at < data.length; at += EACH) {
    const [lines = 0, columns = 0, length = 0, type = 0] = data.slice(at, at + EACH);
    column = lines === 0 ? column + columns : columns;
    line += lines;
    tokens.push({ start: (tree.lineStarts[line] ?? 0) + column, length, type: types[type] ?? '' });
  }
  return tokens;
}
