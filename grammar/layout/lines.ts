/** The lines of a file as the writer broke them, and what is to become of each. */
import type { FileTree } from '../tree';

export interface FileLine {
  /** Without its end. */
  readonly text: string;
  /** Its line end as typed; empty at the end of the file. */
  readonly end: string;
  /** Offset in the file. */
  readonly start: number;
}

/** The lines of the file; after the last line end there is no line more. */
export function fileLines(tree: FileTree): FileLine[] {
  const lines = tree.lineStarts.map((start, i): FileLine => {
    const whole = tree.text.slice(start, tree.lineStarts[i + 1] ?? tree.text.length);
    const text = whole.replace(/[\r\n]+$/, '');
    return { text, end: whole.slice(text.length), start };
  });
  return lines.at(-1)?.text === '' ? lines.slice(0, -1) : lines;
}

/** A line whose signs have been laid out; lines that are not among these stay as they are. */
export interface Laid {
  readonly kind: 'statement' | 'lane';
  readonly body: string;
  /** Its comment from the two strokes on; empty if it has none. */
  readonly comment: string;
}

export const isBlank = (text: string): boolean => /^\s*$/.test(text);
export const isComment = (text: string): boolean => /^\s*\/\//.test(text);

const switched = /^\s*\/\/\s*align\s+(on|off)\s*$/;

/** For each line whether `// align off` above it keeps it as it stands. */
export function switchedOff(lines: readonly FileLine[]): boolean[] {
  let off = false;
  return lines.map(({ text }) => {
    const word = switched.exec(text)?.[1];
    // The comments that switch are laid out like any other.
    if (word !== undefined) off = word === 'off';
    return off && word === undefined;
  });
}
