/** A digit behind a note that is no octave but a value. */
import type { Fix } from '../../grammar/findings/finding';
import { replacing } from '../../grammar/findings/fixes';
import type { Span, Spelling } from '../../grammar/tree';

/** What changes the text where the digit is the note's own value, and where it is that of the next. */
export interface ValueBehind {
  readonly own: Fix;
  readonly next: Fix;
}

/**
 * `e8` as `8 e` or as `e 8`.
 * @param digit the octave that is typed
 * @param pos where the note begins
 * @param typed the value that stands before it, in whose place its own comes
 */
export function valueBehind({ text }: Spelling, digit: number, pos: number, typed: Span | undefined): ValueBehind {
  const value = `${digit}`;
  const bare = text.replace(value, '');
  const at = pos + text.indexOf(value);
  const before =
    typed === undefined ? { pos, len: 0, text: `${value} ` } : { pos: typed.pos, len: typed.len, text: value };
  return {
    own: { title: `write ${value} ${bare}`, edits: [before, { pos: at, len: 1, text: '' }] },
    next: replacing({ pos: at, len: 0 }, ' ', `write ${bare} ${value}`),
  };
}
