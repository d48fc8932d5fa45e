/** What writes a tuning into a file: the arguments of statements that stand there, or statements more. */
import { stretchIn } from '../../../grammar/place';
import { clauseOf } from '../../../grammar/statements/read';
import type { Argument, Block, FileTree, Placed, Span, StatementTree } from '../../../grammar/tree';
import type { TextChange } from '../../document/edits';
import { lineage } from '../../readings/choices';
import { pitchOf, statedTuningOf, tuningByWords } from '../../readings/tunings';
import type { ReadingDeclaration } from '../../score/environment';
import { isSame } from '../../tuning/temperament';
import type { Tuning } from '../../tuning/tuning';
import type { Project } from '../../workspace/project';
import { lineAfterLast } from '../annotating';
import { saidIn } from '../nodes';

/** A statement or clause as it will read, and the change that makes it so. */
export interface Writing {
  readonly text: string;
  readonly change: TextChange;
}

interface WritingTuning {
  readonly statements: readonly Writing[];
  /** The file cannot say it, and why; "" where nothing hinders. */
  readonly obstacle: string;
}

/** What a reading needs to have a tuning; nothing where it has it. Its own clause is changed, or else the file's statement. */
export function writingTuning(project: Project, reading: string, tuning: Tuning): WritingTuning {
  const { environment } = project;
  const { temperament, pitch } = tuning;
  const words = temperament.name;
  const stated = statedTuningOf(environment, reading, pitch);
  const isStated = stated !== undefined && isSame(stated.temperament, temperament);
  const meant = tuningByWords(environment, words, pitch);
  if (!isStated && (meant === undefined || !isSame(meant.temperament, temperament))) {
    return { statements: [], obstacle: `Another file defines “${words}”: include that file first.` };
  }
  const pitchText = `a4 = ${Number(pitch.toFixed(3))}`;
  const isPitched = environment.pitch !== undefined && Math.abs(pitchOf(environment) - pitch) < 0.0005;
  return {
    statements: [
      ...(isPitched ? [] : [ofFile(project, 'pitch', pitchText)]),
      ...(isStated ? [] : [ofReading(project, reading, words) ?? ofFile(project, 'tuning', words)]),
    ],
    obstacle: '',
  };
}

// ─── of a reading ────────────────────────────────────────────────────────────────────────────────────────────────

/** Undefined where a reading has the tuning of the file. */
function ofReading({ tree, environment }: Project, name: string, words: string): Writing | undefined {
  const line = lineage(environment, name);
  const [own] = line;
  if (own === undefined || line.every((reading) => clauseOf(reading, 'tuning') === undefined)) return undefined;
  const place = placeOf(tree, own);
  if (place === undefined) return undefined;
  const text = `tuning ${words}`;
  const clause = clauseOf(own, 'tuning');
  const change =
    clause === undefined
      ? lineBelow(tree, place, `  ${text}`)
      : inPlaceOf(place, clause.pos + 'tuning'.length, clause.args, words);
  return { text: `${text} (${name})`, change };
}

interface Place {
  readonly block: Block;
  readonly placed: Placed<StatementTree>;
}

function placeOf({ blocks }: FileTree, { block: index, statement }: ReadingDeclaration): Place | undefined {
  const block = blocks[index];
  const placed = block?.statements[statement];
  return block && placed && { block, placed };
}

/** After the line on which a statement ends, its comment included. */
function lineBelow(tree: FileTree, { block, placed }: Place, line: string): TextChange {
  const { end } = stretchIn(block, placed, saidIn(placed.tree.statement));
  return asLine(tree, tree.lineStarts.find((start) => start > end) ?? tree.text.length, line);
}

// ─── of the file ─────────────────────────────────────────────────────────────────────────────────────────────────

/** Stands before a statement that is not there yet, where it is there itself. */
const BEFORE: Readonly<Record<'pitch' | 'tuning', readonly string[]>> = {
  pitch: ['instrument'],
  tuning: ['pitch', 'instrument'],
};

function ofFile({ tree }: Project, keyword: 'pitch' | 'tuning', words: string): Writing {
  const text = `${keyword} ${words}`;
  for (const block of tree.blocks) {
    const placed = block.statements.find((one) => one.tree.statement.keyword === keyword);
    if (placed === undefined) continue;
    const { pos, args } = placed.tree.statement;
    return { text, change: inPlaceOf({ block, placed }, pos + keyword.length, args, words) };
  }
  return { text, change: asLine(tree, lineAfterLast(tree, BEFORE[keyword]), text) };
}

/** Other words where arguments stand; after the keyword where there are none. */
function inPlaceOf(
  { block, placed }: Place,
  afterKeyword: number,
  args: readonly Argument[],
  words: string,
): TextChange {
  const span = spanOf(args);
  const { start, end } = stretchIn(block, placed, span ?? { pos: afterKeyword, len: 0 });
  return { offset: start, length: end - start, text: span === undefined ? ` ${words}` : words };
}

function spanOf(args: readonly Argument[]): Span | undefined {
  const [first, last] = [args[0], args.at(-1)];
  return first && last && { pos: first.pos, len: last.pos + last.len - first.pos };
}

/** A line more; the last line of a file may have no end. */
const asLine = ({ text }: FileTree, offset: number, line: string): TextChange => ({
  offset,
  length: 0,
  text: offset === text.length && text !== '' && !text.endsWith('\n') ? `\n${line}` : `${line}\n`,
});
