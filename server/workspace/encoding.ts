/** What the bytes of a file may have done to its text. */
import type { Problem } from '../../grammar/findings/finding';

/** Stands for a byte that is no UTF-8, in whatever decoder the host uses. */
const UNREADABLE = '\ufffd';
const BYTE_ORDER_MARK = '\ufeff';

export interface SourceText {
  /** Without a byte order mark. */
  readonly text: string;
  readonly problems: readonly Problem[];
}

/** Whether some of its bytes could not be read as text: to write it back would lose them. */
export const isUnreadable = (text: string): boolean => text.includes(UNREADABLE);

/** A host's text made ready for parsing, with what is to be said about its encoding. */
export function sourceText(raw: string): SourceText {
  const marked = raw.startsWith(BYTE_ORDER_MARK);
  const text = marked ? raw.slice(1) : raw;
  const first = text.indexOf(UNREADABLE);
  const problems: Problem[] = [];
  if (marked) problems.push({ code: 'byte-order-mark', slots: {}, pos: 0, len: 0 });
  if (first >= 0) problems.push({ code: 'not-utf8', slots: { count: countOf(text) }, pos: first, len: 1 });
  return { text, problems };
}

const countOf = (text: string): number => text.split(UNREADABLE).length - 1;
