/**
 * Words, strings and signs of a statement or change.
 *
 * One pass, each character looked at a bounded number of times; whatever it meets becomes a token.
 */
import type { Fix, Problem } from '../findings/finding';
import { undoubled } from '../quoted';

export interface Token {
  readonly kind: 'word' | 'string' | '=' | ':' | ',' | '(' | ')';
  /** As typed; of a string what stands between the quotes, two quotes made one. */
  readonly text: string;
  readonly pos: number;
  readonly len: number;
  /** Index of its line in the statement. */
  readonly line: number;
}

const signs: ReadonlySet<string> = new Set(['=', ':', ',', '(', ')']);
const typographic: ReadonlySet<string> = new Set(['“', '”', '„', '‟', '«', '»']);
/** A string to its first quotation mark that is neither doubled nor behind a backslash. */
const withEscapes = /^"(?:\\"|""|[^"])*"/;
const isSpace = (char: string | undefined): boolean => char !== undefined && /\s/.test(char);
const isDigit = (char: string | undefined): boolean => char !== undefined && char >= '0' && char <= '9';

/** Characters of which words are made; `,` and `:` may stand inside some. */
const inWord = (char: string | undefined): boolean =>
  char !== undefined && char !== '"' && !isSpace(char) && !signs.has(char) && !typographic.has(char);

class Lexer {
  readonly tokens: Token[] = [];
  readonly problems: Problem[] = [];
  private pos = 0;
  private line = 0;

  constructor(private readonly text: string) {}

  read(): void {
    while (this.pos < this.text.length) this.next();
  }

  private next(): void {
    const char = this.text[this.pos] ?? '';
    if (char === '\n') this.line++;
    if (isSpace(char)) this.pos++;
    else if (this.atComment(this.pos)) this.pos = this.lineEnd();
    else if (char === '"' || typographic.has(char)) this.string();
    else if (signs.has(char)) this.take(char as Token['kind'], this.pos + 1, char);
    else this.word();
  }

  private take(kind: Token['kind'], end: number, text: string): void {
    this.tokens.push({ kind, text, pos: this.pos, len: end - this.pos, line: this.line });
    this.pos = end;
  }

  private atComment(pos: number): boolean {
    return this.text[pos] === '/' && this.text[pos + 1] === '/';
  }

  private lineEnd(): number {
    const end = this.text.indexOf('\n', this.pos);
    return end < 0 ? this.text.length : end;
  }

  /** `K,L` and `3:2` are words; a comma or colon at a word's edge is a sign of its own. */
  private joins(pos: number): boolean {
    const char = this.text[pos];
    if (char === ',') return inWord(this.text[pos + 1]) && !this.atComment(pos + 1);
    return char === ':' && isDigit(this.text[pos - 1]) && isDigit(this.text[pos + 1]);
  }

  private word(): void {
    let end = this.pos + 1;
    while (end < this.text.length && !this.atComment(end) && (inWord(this.text[end]) || this.joins(end))) end++;
    this.take('word', end, this.text.slice(this.pos, end));
  }

  private string(): void {
    const [start, lineEnd] = [this.pos, this.lineEnd()];
    const straight = this.text[start] === '"';
    if (straight && this.escaped(start, lineEnd)) return;
    const end = this.closingQuote(start + 1, lineEnd, straight);
    if (end === undefined) {
      this.unclosed(start, lineEnd);
      return;
    }
    const plain = straight && this.text[end] === '"';
    const inner = this.text.slice(start + 1, end);
    if (!plain) this.typographicQuotes(start, end);
    this.take('string', end + 1, straight ? undoubled(inner) : inner);
  }

  /** Takes a string in which a quotation mark is typed as \", as programs have it, and says that it is doubled. */
  private escaped(start: number, lineEnd: number): boolean {
    const typed = withEscapes.exec(this.text.slice(start, lineEnd))?.[0] ?? '';
    const first = typed.indexOf('\\"');
    if (first < 0 || first === typed.length - 2) return false;
    // A string may end in a backslash, `"a\"`, with others after it: `"b"`, or with a comment.
    const after = this.text.slice(start + first + 2, lineEnd);
    const marksLeft = (after.split('//')[0] ?? '').match(/(?<!\\)"/g)?.length ?? 0;
    if (/^[\s),:]/.test(after) && marksLeft % 2 === 0) return false;
    const edits = [...typed.slice(0, -1).matchAll(/\\"/g)].map(({ index }) => ({
      pos: start + index,
      len: 2,
      text: '""',
    }));
    this.problems.push({
      code: 'escaped-quote',
      slots: {},
      pos: start + first,
      len: 2,
      fixes: [{ title: 'double the quotation marks', edits }],
    });
    this.take('string', start + typed.length, typed.slice(1, -1).replaceAll(/\\"|""/g, '"'));
    return true;
  }

  /** Where the string ends; two straight quotes are one inside it. A typographic quote ends it if no straight one does. */
  private closingQuote(from: number, lineEnd: number, straight: boolean): number | undefined {
    let instead: number | undefined;
    for (let pos = from; pos < lineEnd; pos++) {
      const char = this.text[pos] ?? '';
      if (straight && char === '"' && this.text[pos + 1] === '"') pos++;
      else if (char === '"') return pos;
      else if (typographic.has(char)) {
        if (!straight) return pos;
        instead ??= pos;
      }
    }
    return instead;
  }

  private typographicQuotes(start: number, end: number): void {
    const edits = [start, end].filter((pos) => this.text[pos] !== '"').map((pos) => ({ pos, len: 1, text: '"' }));
    this.problems.push({
      code: 'typographic-quotes',
      slots: { quote: this.text[edits[0]?.pos ?? start] ?? '' },
      pos: start,
      len: end + 1 - start,
      fixes: [{ title: 'write straight quotes', edits }],
    });
  }

  private unclosed(start: number, lineEnd: number): void {
    let end = lineEnd;
    while (end > start + 1 && isSpace(this.text[end - 1])) end--;
    const opening = this.text[start] === '"' ? [] : [{ pos: start, len: 1, text: '"' }];
    const closed = (title: string, pos: number): Fix => ({ title, edits: [...opening, { pos, len: 0, text: '"' }] });
    const comment = /\s+\/\//.exec(this.text.slice(start, end));
    this.problems.push({
      code: 'unclosed-string',
      slots: {},
      pos: start,
      len: end - start,
      fixes: [
        ...(comment === null ? [] : [closed('close the quotes before the comment', start + comment.index)]),
        closed('close the quotes at the end of the line', end),
      ],
    });
    this.take('string', end, undoubled(this.text.slice(start + 1, end)));
    this.pos = lineEnd;
  }
}

/** The tokens of a text and what was wrong with its quotes. */
export function lex(text: string): { readonly tokens: readonly Token[]; readonly problems: Problem[] } {
  const lexer = new Lexer(text);
  lexer.read();
  return { tokens: lexer.tokens, problems: lexer.problems };
}
