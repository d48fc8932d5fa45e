/** From problems, whose places count from a statement, lane or block, to findings with places in the file. */
import { catalogue } from '../../grammar/findings/catalogue';
import type { AbsoluteFix, Finding, Problem } from '../../grammar/findings/finding';
import { sentence } from '../../grammar/findings/word';
import { rangeAt, stretchIn } from '../../grammar/place';
import type { Block, FileTree, Placed, Span } from '../../grammar/tree';
import type { FileSource, PlacedProblem } from '../score/score';

/** A file by the name its host gives it. */
export interface NamedTree {
  readonly file: string;
  readonly tree: FileTree;
}

/** Whatever has joined lines: a statement or a lane. */
type Holder = Placed<{ readonly joints: readonly number[] }>;

/** Tells offsets in the file from places in a text. */
type Places = (span: Span) => { readonly start: number; readonly end: number };

const inFile: Places = ({ pos, len }) => ({ start: pos, end: pos + len });

const atStart: Places = () => ({ start: 0, end: 0 });

const inBlock =
  (block: Block): Places =>
  ({ pos, len }) => ({ start: block.offset + pos, end: block.offset + pos + len });

const inHolder =
  (block: Block, holder: Holder): Places =>
  (span) =>
    stretchIn(block, holder, span);

function absolute({ file, tree }: NamedTree, problem: Problem, places: Places, related: Finding['related']): Finding {
  const { start, end } = places(problem);
  return {
    code: problem.code,
    level: catalogue[problem.code].level,
    message: sentence(problem.code, problem.slots),
    file,
    range: rangeAt(tree, start, end),
    related,
    fixes: (problem.fixes ?? []).map(
      ({ title, edits }): AbsoluteFix => ({
        title,
        edits: edits.map((edit) => {
          const at = places(edit);
          return { offset: at.start, length: at.end - at.start, text: edit.text };
        }),
      }),
    ),
  };
}

/** The finding of a problem whose place counts from the start of the file. */
export const findingInFile = (named: NamedTree, problem: Problem): Finding => absolute(named, problem, inFile, []);

/** The finding of a problem in a statement or lane of a block. */
export const findingInHolder = (named: NamedTree, block: Block, holder: Holder, problem: Problem): Finding =>
  absolute(named, problem, inHolder(block, holder), []);

/** The finding of a problem met while a score was built or exported; one that has no place stands at the file's start. */
export function findingOfScore(named: NamedTree, placed: PlacedProblem): Finding {
  const places = placesIn(named.tree, placed) ?? atStart;
  return absolute(named, placed.problem, places, relatedTo(named, placed));
}

function relatedTo({ file, tree }: NamedTree, { related = [] }: PlacedProblem): Finding['related'] {
  const found: Finding['related'][number][] = [];
  for (const { message, source } of related) {
    const range = rangeOf(tree, source);
    if (range !== undefined) found.push({ message, file, range });
  }
  return found;
}

function placesIn(
  tree: FileTree,
  at: { readonly block: number; readonly lane: number | undefined; readonly statement?: number | undefined },
): Places | undefined {
  const block = tree.blocks[at.block];
  if (block === undefined) return undefined;
  const holder = at.statement === undefined ? block.lanes[at.lane ?? -1] : block.statements[at.statement];
  return holder === undefined ? inBlock(block) : inHolder(block, holder);
}

function rangeOf(tree: FileTree, source: FileSource): Finding['range'] | undefined {
  const at = placesIn(tree, source)?.(source);
  return at && rangeAt(tree, at.start, at.end);
}
