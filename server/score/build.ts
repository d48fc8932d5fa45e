/** Builds the score of a file: its systems one after another, its pieces. */
import { finished } from '../../grammar/finished';
import { firstOf } from '../../grammar/statements/read';
import type { Block, FileTree } from '../../grammar/tree';
import type { Choice } from './choice';
import type { Environment } from './environment';
import { type Onlooker, PieceBuilder, type SystemScores } from './piece';
import type { Piece, PlacedProblem, Score } from './score';
import { buildSystem } from './system';

/** Between two blocks in so many others may have their turn, also where all stand as they stood. */
const BLOCKS_IN_STEP = 100;

/** What a document has besides. */
interface Beside {
  /** The score of its last version: bars that stand as they stood are the same, and systems that do are not looked at again. */
  readonly before?: Score | undefined;
  readonly onlooker?: Onlooker | undefined;
}

/** What is built from: all but where the scores of its systems come from. */
export interface ScoreTask {
  /** The file's name, as the host calls it. */
  readonly file: string;
  readonly tree: FileTree;
  readonly environment: Environment;
  readonly choice: Choice;
}

/**
 * The score of a file under one choice of options, built system by system, so that whoever asked can turn to something else
 * between two.
 */
export function* buildingScore(
  task: ScoreTask,
  systemScore: SystemScores,
  { before, onlooker }: Beside = {},
): Generator<undefined, Score> {
  const { tree, environment, choice } = task;
  const problems: PlacedProblem[] = [];
  const pieces: Piece[] = [];
  const pieceOf = (name: string | undefined): PieceBuilder =>
    new PieceBuilder(name, environment, choice, systemScore, onlooker, problems, before?.pieces[pieces.length]);
  let piece = pieceOf(undefined);
  let page = '1';
  /** By page: a page that is taken up again counts on, so that no two systems have one address. */
  const ordinals = new Map<string, number>();
  const finish = (): void => {
    piece.reportIdle();
    if (piece.hasSystems) pieces.push(piece.finish());
  };
  const begin = (name: string): void => {
    // Only what stands before the first piece is meant for it.
    const isHandedOver = piece.name === undefined && !piece.hasSystems;
    if (!isHandedOver) finish();
    const next = pieceOf(name);
    if (isHandedOver) piece.handOver(next);
    piece = next;
  };
  for (let index = 0; index < tree.blocks.length; index++) {
    if (index % BLOCKS_IN_STEP === 0) yield;
    const { kind, statements } = tree.blocks[index] as Block;
    // Most blocks are systems: they hold one statement, and what it says the system's score has read.
    if (kind === 'system') {
      ordinals.set(page, (ordinals.get(page) ?? 0) + 1);
      const stands = piece.addSystem(tree, index, page, ordinals.get(page) ?? 1);
      if (!stands) yield;
      continue;
    }
    for (let at = 0; at < statements.length; at++) {
      const { statement } = (statements[at] as Block['statements'][number]).tree;
      switch (statement.keyword) {
        case 'page':
          page = firstOf(statement.args, 'string')?.text ?? page;
          break;
        case 'piece':
          begin(firstOf(statement.args, 'string')?.text ?? '');
          break;
        case 'section':
          piece.beginSection(statement, index, at);
          break;
        case 'order':
          piece.takeOrder(statement, index, at);
          break;
        case 'tempo':
          if (kind === 'between') piece.takeTempo(statement);
          break;
      }
    }
  }
  finish();
  return { ...task, pieces, problems };
}

/**
 * The score of a file under one choice of options.
 * @param file its name, as the host calls it
 */
export const buildScore = (file: string, tree: FileTree, environment: Environment, choice: Choice): Score =>
  finished(
    buildingScore({ file, tree, environment, choice }, (block, carry) =>
      buildSystem({ block, environment, choice, carry }),
    ),
  );
