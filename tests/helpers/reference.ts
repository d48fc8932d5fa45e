/** The examples of the reference, each as a whole file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export const REFERENCE = join(import.meta.dirname, '../../grammar/REFERENCE.md');

export const referenceText = (): string => readFileSync(REFERENCE, 'utf8');

export interface Example {
  /** Line of the reference where it begins, from 1. */
  readonly line: number;
  /** As it stands in the reference. */
  readonly text: string;
  /** With what it needs around it. */
  readonly file: string;
  /** The code of the one finding that it must give; undefined where it must be sound. */
  readonly wrong: string | undefined;
  readonly kind: Kind;
  /** The fenced block of another language that follows it, such as what an export of it gives. */
  readonly gives: string | undefined;
}

const KINDS = ['file', 'frame', 'timeline', 'statements', 'system', 'lane'] as const;
export type Kind = (typeof KINDS)[number];

interface Fence {
  readonly line: number;
  readonly info: readonly string[];
  readonly text: string;
}

/** All fenced blocks of a Markdown text. */
function fences(markdown: string): Fence[] {
  const found: Fence[] = [];
  let open: { line: number; info: string[]; lines: string[] } | undefined;
  for (const [index, line] of markdown.split('\n').entries()) {
    const mark = /^```(.*)$/.exec(line);
    if (open === undefined) {
      if (mark !== null) open = { line: index + 1, info: (mark[1] ?? '').split(/\s+/).filter(Boolean), lines: [] };
    } else if (mark === null) open.lines.push(line);
    else {
      found.push({ line: open.line, info: open.info, text: open.lines.join('\n') });
      open = undefined;
    }
  }
  if (open !== undefined) throw new Error(`the block of line ${open.line} does not end`);
  return found;
}

/** Statements with the lines that go on with them. */
const statementsIn = (text: string): string[] =>
  text.split(/\n(?=\S)/).filter((statement) => statement.trim() !== '' && !statement.startsWith('//'));

const NAMED = new Set(['source', 'hand', 'editor', 'reading', 'note', 'stave', 'voice', 'table', 'temperament']);

/** What a statement declares: its keyword, with the name it gives if there can be several of them. */
function declared(statement: string): string {
  const [keyword = '', name = ''] = statement.split(/\s+/);
  return NAMED.has(keyword) ? `${keyword} ${name}` : keyword;
}

/** Statements or systems under the lines of the frame, without those that they declare themselves. */
function underFrame(frame: string, piece: string): string {
  const own = new Set(statementsIn(piece).map(declared));
  return [...statementsIn(frame).filter((statement) => !own.has(declared(statement))), piece, ''].join('\n');
}

/** Each line of music as a movement of its own; a line that begins with a barline goes on with the one above. */
const lanesAsPieces = (text: string): string =>
  text
    .split('\n')
    .map((line) =>
      line.trimStart().startsWith('|')
        ? `  ${line}`
        : `piece "one line"\nsystem upper G2 lower F4 meter C\n  dessus | ${line}`,
    )
    .join('\n');

function fileOf(kind: Kind, text: string, frame: string): string {
  if (kind === 'lane') return underFrame(frame, lanesAsPieces(text));
  return kind === 'system' || kind === 'statements' ? underFrame(frame, text) : `${text}\n`;
}

function kindOf(words: readonly string[], line: number): Kind {
  const [word = 'file', ...more] = words;
  const kind = KINDS.find((one) => one === word);
  if (kind === undefined || more.length > 0)
    throw new Error(`line ${line}: no such kind of example: ${words.join(' ')}`);
  return kind;
}

/** All examples of the reference, in order. */
export function examplesOf(markdown: string): Example[] {
  const all = fences(markdown);
  const frame = all.find(({ info }) => info[0] === 'bent' && info[1] === 'frame')?.text;
  if (frame === undefined) throw new Error('the reference has no frame for its examples');
  return all.flatMap(({ line, info, text }, index): Example[] => {
    const [language, ...words] = info;
    if (language !== 'bent') return [];
    const isWrong = words[0] === 'wrong';
    const kind = kindOf(isWrong ? words.slice(2) : words, line);
    const next = all[index + 1];
    return [
      {
        line,
        text,
        kind,
        file: fileOf(kind, text, frame),
        wrong: isWrong ? words[1] : undefined,
        gives: next === undefined || next.info[0] === 'bent' ? undefined : next.text,
      },
    ];
  });
}
