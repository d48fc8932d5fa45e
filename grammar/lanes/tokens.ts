/** The tokens of a lane: one compound token each for value, note, mark, span head, option head, change and barline. */
import { createToken, type IToken, Lexer, type TokenType } from 'chevrotain';
import type { LaneKind, Span } from '../tree';
import { source } from './patterns';

/** @param begins the characters with which such a token can begin: the lexer would have to take its pattern apart at each start */
const token = (name: string, begins: string, pattern: string, options: { skipped?: boolean } = {}): TokenType =>
  createToken({
    name,
    pattern: new RegExp(pattern),
    start_chars_hint: [...begins],
    line_breaks: false,
    ...(options.skipped === true ? { group: Lexer.SKIPPED } : {}),
  });

/**
 * First characters of a token that takes whatever no other took: without them the lexer would try every token at every
 * character. Beyond 255 the lexer sorts characters by blocks of 255, so one of each block is enough.
 */
const anyCharacter: number[] = [
  ...Array.from({ length: 256 }, (_, code) => code),
  ...Array.from({ length: 257 }, (_, block) => Math.min(256 + block * 255, 0xffff)),
];

const { afterEvent, afterWord, inRound } = source;

export const Space = createToken({
  name: 'Space',
  pattern: /\s+/,
  group: Lexer.SKIPPED,
  line_breaks: true,
});
export const Comment = token('Comment', '/', '//[^\\n]*', { skipped: true });
export const Quoted = token('Quoted', '"', source.string);
export const OpenQuote = token('OpenQuote', '"', '"[^\\n|]*');
export const CurlyQuoted = token('CurlyQuoted', '«»“”„‟', '[“”„«»‟][^\\n|"“”„«»‟]*[“”„«»‟]?');
export const Bar = token('Bar', ':|', source.barline);
export const BadBar = token('BadBar', ':|', ':*\\|[|:]*(?:\\[\\])?');
export const SpanOpen = token('SpanOpen', '{', source.spanHead);
export const BareOpen = token('BareOpen', '{', '\\{');
export const SpanClose = token('SpanClose', '}', '\\}');
export const OptionsOpen = token('OptionsOpen', '<', source.optionHead);
export const BareOptions = token('BareOptions', '<', '<');
export const OptionNext = token('OptionNext', ';', source.optionNext);
export const BareNext = token('BareNext', ';', ';');
export const OptionsClose = token('OptionsClose', '>', '>');
export const Round = token('Round', '(', `\\(${inRound}(?:"[^"\\n]*"${inRound}){0,99}\\)`);
export const Lost = token('Lost', 'l', `lost(?:[ \\t]+(?:${source.value}|\\?))?${afterWord}`);
export const BarRest = token('BarRest', 'r', `rbar${afterEvent}`);
export const Rest = token('Rest', 'r', `r${afterEvent}`);
export const BarGap = token('BarGap', '_', `__${afterEvent}`);
export const Gap = token('Gap', '_', `_${afterEvent}`);
export const Omit = token('Omit', 'o', `omit${afterWord}`);
export const Value = token('Value', '0123456789MLB', `${source.value}${afterWord}`);
export const Note = token('Note', 'abcdefg', `${source.spelling}(?:${source.tie})?${afterEvent}`);
export const Member = token(
  'Member',
  '-',
  `-(?:\\((?:up|down|home)\\))?${source.spelling}(?:${source.tie})?${afterEvent}`,
);
export const Repeat = token('Repeat', '[=', `${source.tie}${afterEvent}`);
export const MarkToken = token('Mark', "'", `${source.mark}${afterEvent}`);
export const Annotated = token('Annotated', '*', `${source.annotation}${afterEvent}`);
export const Beam = token('Beam', '&,', '[&,](?!(?!//)\\S)');
const slip =
  /(?:[^\s|{}<>;:"(/]+|\/(?!\/)|:+(?!\|)|\((?:##|#|bb|b|n)\))(?:[^\s|{}<>;:"(/]+|\/(?!\/)|:+(?!\|)|"[^"\n|]*"|\((?:##|#|bb|b|n)\)){0,1000}|[:"(]/;
export const JunkToken = createToken({
  name: 'Junk',
  // One slip is one junk: `f5(#)`, `c5"x"`, `K:`, `'zz(above)?`. A comment ends it.
  pattern: new RegExp(`${source.markUnordered}${afterEvent}|${slip.source}`),
  start_chars_hint: anyCharacter,
  line_breaks: false,
});
/** A barline that begins a line and is one with the barline that ended the line above; the lexer does not tell it from others. */
export const Again = createToken({ name: 'Again', pattern: Lexer.NA });

/** In the order in which the lexer tries them. */
export const laneTokens: TokenType[] = [
  Space,
  Comment,
  Bar,
  BadBar,
  Note,
  Value,
  MarkToken,
  Member,
  Rest,
  BarRest,
  BarGap,
  Gap,
  Repeat,
  Lost,
  Omit,
  Annotated,
  Beam,
  SpanOpen,
  BareOpen,
  SpanClose,
  OptionsOpen,
  BareOptions,
  OptionNext,
  BareNext,
  OptionsClose,
  Round,
  Quoted,
  OpenQuote,
  CurlyQuoted,
  JunkToken,
];

/** Tokens that are known to be well defined, for a test tries them, need not be looked through at each start. */
const settings = { ensureOptimizations: true, positionTracking: 'onlyOffset', skipValidations: true } as const;

/** Every character of a lane belongs to some token, so the lexer itself never reports an error. */
const laneLexer = new Lexer(laneTokens, settings);

/** What the sub-lanes `fig` and `text` are made of: anything between spaces and barlines. */
export const SubItem = createToken({
  name: 'SubItem',
  pattern: /(?:[^\s|"/]+|\/(?!\/)){1,1000}/,
  start_chars_hint: anyCharacter,
  line_breaks: false,
});

export const subLaneTokens: TokenType[] = [Space, Comment, Bar, BadBar, Quoted, OpenQuote, SubItem];

let subLaneLexer: Lexer | undefined;

/** That of sub-lanes is made when the first of them is read. */
export function lexerOf(kind: LaneKind): Lexer {
  if (kind === 'lane') return laneLexer;
  subLaneLexer ??= new Lexer(subLaneTokens, settings);
  return subLaneLexer;
}

/** What a token does to the bars and brackets of a lane; most do nothing. */
export type Role = 'opens' | 'closes' | 'parts' | 'bar' | 'attached';

/** By the lexer's own number of a token's type: asked for each token, a map would cost as much as the lexer. */
const roles: (Role | undefined)[] = [];
const play = (role: Role, types: readonly TokenType[]): void => {
  for (const type of types) roles[type.tokenTypeIdx ?? 0] = role;
};
for (const type of [...laneTokens, SubItem, Again]) roles[type.tokenTypeIdx ?? 0] = undefined;
play('opens', [SpanOpen, BareOpen, OptionsOpen, BareOptions]);
play('closes', [SpanClose, OptionsClose]);
play('parts', [OptionNext, BareNext]);
play('bar', [Bar, BadBar]);
play('attached', [MarkToken, Annotated]);

export const roleOf = (token: IToken): Role | undefined => roles[token.tokenTypeIdx];

export const endOf = (token: IToken): number => token.startOffset + token.image.length;
export const spanOf = (token: IToken): Span => ({ pos: token.startOffset, len: token.image.length });
