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

class Balance {
  private readonly stack: Open[] = [];
  /** Counted, so that no heap of brackets is searched in vain. */
  private readonly opened = { '{': 0, '<': 0 };

  constructor(private readonly problems: ProblemList) {}

  open(token: IToken): void {
    const kind = kindOf(token);
    const ignored = this.stack.length >= DEEPEST;
    if (ignored) {
      becomeJunk(token);
      // One finding for a whole heap of brackets is enough.
      if (this.stack.length === DEEPEST) this.report('too-deep', token, kind);
    }
    this.opened[kind]++;
    this.stack.push({ token, kind, ignored, nexts: [] });
  }

  close(token: IToken): void {
    const kind = kindOf(token);
    if (this.endInside(kind) === undefined) {
      becomeJunk(token);
      this.report('stray-bracket', token, closing[kind]);
      return;
    }
    this.opened[kind]--;
    if (this.stack.pop()?.ignored === true) becomeJunk(token);
  }

  next(token: IToken): void {
    const options = this.endInside('<');
    if (options === undefined) this.report('stray-bracket', token, ';');
    else options.nexts.push(token);
    if (options === undefined || options.ignored) becomeJunk(token);
  }

  /** Whatever is still open never closes. */
  end(): void {
    for (const open of this.stack) this.unclosed(open);
  }

  /** The innermost bracket of a kind: what has opened inside it never closes. */
  private endInside(kind: '{' | '<'): Open | undefined {
    if (this.opened[kind] === 0) return undefined;
    const { stack } = this;
    let at = stack.length - 1;
    while (stack[at]?.kind !== kind) at--;
    if (at + 1 < stack.length) for (const open of stack.splice(at + 1)) this.unclosed(open);
    return stack[at];
  }

  private unclosed(open: Open): void {
    this.opened[open.kind]--;
    if (open.ignored) return;
    becomeJunk(open.token);
    open.nexts.forEach(becomeJunk);
    this.report('unclosed-bracket', open.token, open.kind);
  }

  private report(code: FindingCode, token: IToken, bracket: string): void {
    this.problems.push({
      code,
      pos: token.startOffset,
      len: 1,
      slots: { bracket, closing: closing[bracket as '{' | '<'] ?? bracket, deepest: DEEPEST },
    });
  }
}

/** Turns unbalanced brackets among the tokens into junk and says so. */
export function balance(tokens: readonly IToken[], problems: ProblemList): void {
  const brackets = new Balance(problems);
  for (const token of tokens) {
    const role = roleOf(token);
    if (role === 'opens') brackets.open(token);
    else if (role === 'closes') brackets.close(token);
    else if (role === 'parts') brackets.next(token);
  }
  brackets.end();
}
