/**
 * Brackets in balance, before the parser sees them.
 *
 * A bracket that never closes, closes nothing, or lies too deep becomes junk where it stands, so the parser never meets one.
 */
import type { IToken } from 'chevrotain';
import type { FindingCode } from '../findings/catalogue';
import type { ProblemList } from './problems';
import { BareOpen, JunkToken, roleOf, SpanClose, SpanOpen } from './tokens';

/** Deepest nesting of spans and options. */
export const DEEPEST = 32;

interface Open {
  readonly token: IToken;
  readonly kind: '{' | '<';
  readonly ignored: boolean;
  /** The `;` that part its options: without it they part nothing. */
  readonly nexts: IToken[];
}

const kindOf = ({ tokenType }: IToken): '{' | '<' =>
  tokenType === SpanOpen || tokenType === BareOpen || tokenType === SpanClose ? '{' : '<';

function becomeJunk(token: IToken): void {
  token.tokenType = JunkToken;
  token.tokenTypeIdx = JunkToken.tokenTypeIdx ?? 0;
}

const closing = { '{': '}', '<': '>' } as const;

/** Turns unbalanced brackets among the tokens into junk and says so. */
export function balance(tokens: readonly IToken[], problems: ProblemList): void {
  const stack: Open[] = [];
  const report = (code: FindingCode, token: IToken, bracket: string): void => {
    problems.push({
      code,
      pos: token.startOffset,
      len: 1,
      slots: { bracket, closing: closing[bracket as '{' | '<'] ?? bracket, deepest: DEEPEST },
    });
  };
  // Counted, so that no heap of brackets is searched in vain.
  const opened = { '{': 0, '<': 0 };
  const innermost = (kind: '{' | '<'): number =>
    opened[kind] === 0 ? -1 : stack.findLastIndex((open) => open.kind === kind);
  const unclosed = (open: Open): void => {
    opened[open.kind]--;
    if (open.ignored) return;
    becomeJunk(open.token);
    open.nexts.forEach(becomeJunk);
    report('unclosed-bracket', open.token, open.kind);
  };
  const close = (token: IToken, kind: '{' | '<'): void => {
    const at = innermost(kind);
    if (at < 0) {
      becomeJunk(token);
      report('stray-bracket', token, closing[kind]);
      return;
    }
    stack.splice(at + 1).forEach(unclosed);
    opened[kind]--;
    if (stack.pop()?.ignored === true) becomeJunk(token);
  };
  const next = (token: IToken): void => {
    const at = innermost('<');
    if (at < 0) {
      becomeJunk(token);
      report('stray-bracket', token, ';');
      return;
    }
    stack.splice(at + 1).forEach(unclosed);
    stack[at]?.nexts.push(token);
    if (stack[at]?.ignored === true) becomeJunk(token);
  };
  for (const token of tokens) {
    const role = roleOf(token);
    if (role === 'opens') {
      const kind = kindOf(token);
      const ignored = stack.length >= DEEPEST;
      if (ignored) {
        becomeJunk(token);
        // One finding for a whole heap of brackets is enough.
        if (stack.length === DEEPEST) report('too-deep', token, kind);
      }
      opened[kind]++;
      stack.push({ token, kind, ignored, nexts: [] });
    } else if (role === 'closes') close(token, kindOf(token));
    else if (role === 'parts') next(token);
  }
  stack.forEach(unclosed);
}
