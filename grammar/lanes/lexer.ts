/** From a text to its tokens, each of the first type that fits where the last token ended. */
import type { Span } from '../tree';

/** What a token does to the bars and brackets of a lane; most do nothing. */
export type Role = 'opens' | 'closes' | 'parts' | 'bar' | 'attached';

export interface TokenType {
  readonly name: string;
  /** Sticky; never fits an empty text. */
  readonly pattern: RegExp;
  /** Fits every character with which such a token can begin: the others need not be tried. */
  readonly begins: RegExp;
  /** It parts other tokens and is none itself. */
  readonly skipped: boolean;
  readonly role: Role | undefined;
}

export interface Token {
  /** What brackets out of balance and barlines that are one make another of. */
  tokenType: TokenType;
  readonly image: string;
  readonly startOffset: number;
}

export const endOf = (token: Token): number => token.startOffset + token.image.length;
export const spanOf = (token: Token): Span => ({ pos: token.startOffset, len: token.image.length });

/** Characters with a row of their own in the table of a lexer; few texts of lanes have others. */
const COMMON = 128;

export class Lexer {
  /** The types that can begin with each of the common characters. */
  private readonly beginning: readonly (readonly TokenType[])[];

  /** @param types in the order in which they are tried; for every character there is one that takes it */
  constructor(private readonly types: readonly TokenType[]) {
    this.beginning = Array.from({ length: COMMON }, (_, code) => this.beginningWith(code));
  }

  tokenize(text: string): Token[] {
    const tokens: Token[] = [];
    let at = 0;
    while (at < text.length) {
      const tokenType = this.typeAt(text, at);
      const end = tokenType?.pattern.lastIndex ?? at + 1;
      if (tokenType?.skipped === false) tokens.push({ tokenType, image: text.slice(at, end), startOffset: at });
      at = end;
    }
    return tokens;
  }

  /** The type of the token that begins there; its pattern's `lastIndex` is where it ends. */
  private typeAt(text: string, at: number): TokenType | undefined {
    const code = text.charCodeAt(at);
    const types = this.beginning[code] ?? this.beginningWith(code);
    for (const type of types) {
      type.pattern.lastIndex = at;
      if (type.pattern.test(text)) return type;
    }
    return undefined;
  }

  private beginningWith(code: number): readonly TokenType[] {
    const character = String.fromCharCode(code);
    return this.types.filter(({ begins }) => begins.test(character));
  }
}
