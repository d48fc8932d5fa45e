/** What the bytes of a file may have done to its text. */
import type { Problem } from '../../grammar/findings/finding';

/** Stands for a byte that is no UTF-8, in whatever decoder the host uses. */
const UNREADABLE = /\ufffd/g;
/** The same, with the empty half of each unit of UTF-16, which is half of a text that should be UTF-16 without a mark. */
const UNREADABLE_OR_EMPTY = /[\ufffd\0]/g;
const BYTE_ORDER_MARK = '\ufeff';

export interface SourceText {
  /** Without a byte order mark. */
  readonly text: string;
  readonly problems: readonly Problem[];
}

/** What could not be read in a text. A stray NUL is a sign like another; where they are a quarter of the text it is UTF-16. */
function unreadIn(text: string): { readonly first: number; readonly count: number } {
  const empty = text.match(/\0/g)?.length ?? 0;
  const unread = empty > 0 && empty * 4 >= text.length ? UNREADABLE_OR_EMPTY : UNREADABLE;
  return { first: text.search(unread), count: text.match(unread)?.length ?? 0 };
}

/** Whether some of its bytes could not be read as text: to write it back would lose them. */
export const isUnreadable = (text: string): boolean => unreadIn(text).count > 0;

/** The byte order mark with which a text begins, or nothing. Places in a text are counted behind it. */
export const markOf = (raw: string): string => (raw.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : '');

/** A host's text made ready for parsing, with what is to be said about its encoding. */
export function sourceText(raw: string): SourceText {
  const mark = markOf(raw);
  const text = raw.slice(mark.length);
  const { first, count } = unreadIn(text);
  const problems: Problem[] = [];
  if (mark !== '') problems.push({ code: 'byte-order-mark', slots: {}, pos: 0, len: 0 });
  if (first >= 0) problems.push({ code: 'not-utf8', slots: { count }, pos: first, len: 1 });
  return { text, problems };
}
