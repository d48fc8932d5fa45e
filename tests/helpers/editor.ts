/** Texts with a caret `‸` and marked stretches `⟦ ⟧`: data in, text out. A barline is no caret here. */
import type { Location, Position, Range, TextEdit } from 'vscode-languageserver-types';
import { parseFile } from '../../grammar/parse';
import { offsetOfPosition, positionOfOffset } from '../../server/features/place';
import { type Project, projectOf } from '../../server/workspace/project';
import { memoryFiles } from './memoryFiles';
import { HEAD } from './music';

export const FILE = 'score.bent';

export interface AtCaret {
  readonly project: Project;
  readonly position: Position;
}

/** A file with a caret, and other files that it may include. */
export function atCaret(marked: string, files: Readonly<Record<string, string>> = {}): AtCaret {
  const offset = marked.indexOf('‸');
  if (offset < 0) throw new Error('there is no caret');
  const project = projectNamed(FILE, marked.replace('‸', ''), files);
  return { project, position: positionOfOffset(project.tree, offset) };
}

export const projectNamed = (file: string, text: string, files: Readonly<Record<string, string>> = {}): Project =>
  projectOf(memoryFiles(files), file, text);

/** A lane of dessus under the usual head, with a caret in it. */
export const inLane = (music: string, before = ''): AtCaret => atCaret(laneText(music, before));

export const laneText = (music: string, before = ''): string =>
  `${HEAD}${before}system upper C1 lower F4 key bb meter C\n  dessus | ${music} |||\n`;

/** The text with these stretches marked. */
export function markedWith(text: string, ranges: readonly Range[]): string {
  const tree = parseFile(text);
  const marks = ranges.flatMap(({ start, end }) => [
    { offset: offsetOfPosition(tree, start), sign: '⟦' },
    { offset: offsetOfPosition(tree, end), sign: '⟧' },
  ]);
  return marks
    .sort((a, b) => b.offset - a.offset || (a.sign < b.sign ? 1 : -1))
    .reduce((all, { offset, sign }) => all.slice(0, offset) + sign + all.slice(offset), text);
}

/** The text with these places in a file marked. */
export const markedIn = (project: Project, places: readonly Location[], file = FILE): string =>
  markedWith(
    (project.included.find((one) => one.file === file) ?? project).tree.text,
    places.filter(({ uri }) => uri === file).map(({ range }) => range),
  );

/** The lines in which something is marked, without their indentation. */
export const markedLines = (text: string): string[] =>
  text
    .split('\n')
    .filter((line) => /[⟦⟧]/.test(line))
    .map((line) => line.trim());

/** The text that a range holds. */
export function textIn(text: string, { start, end }: Range): string {
  const tree = parseFile(text);
  return text.slice(offsetOfPosition(tree, start), offsetOfPosition(tree, end));
}

/** The text after edits. */
export function withEdits(text: string, edits: readonly TextEdit[]): string {
  const tree = parseFile(text);
  return edits
    .map(({ range, newText }) => ({
      start: offsetOfPosition(tree, range.start),
      end: offsetOfPosition(tree, range.end),
      newText,
    }))
    .sort((a, b) => b.start - a.start || b.end - a.end)
    .reduce((all, { start, end, newText }) => all.slice(0, start) + newText + all.slice(end), text);
}
