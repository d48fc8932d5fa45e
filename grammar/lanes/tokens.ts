/** The tokens of a lane: one compound token each for value, note, mark, span head, option head, change and barline. */
import { Lexer, type Role, type TokenType } from './lexer';
import { source } from './patterns';

interface Traits {
  readonly skipped?: boolean;
  readonly role?: Role;
}

/** @param begins fits the characters with which such a token can begin */
const token = (name: string, begins: RegExp, pattern: string, { skipped = false, role }: Traits = {}): TokenType => ({
  name,
  pattern: new RegExp(pattern, 'y'),
  begins,
  skipped,
  role,
});

const ANY = /[\s\S]/;
const NOTHING = /(?!)/;

const { afterEvent, afterWord, inRound } = source;

export const Space = token('Space', /\s/, '\\s+', { skipped: true });
export const Comment = token('Comment', /\//, '//[^\\n]*', { skipped: true });
export const Quoted = token('Quoted', /"/, source.string);
export const OpenQuote = token('OpenQuote', /"/, '"[^\\n|]*');
export const CurlyQuoted = token('CurlyQuoted', /[“”„«»‟]/, '[“”„«»‟][^\\n|"“”„«»‟]*[“”„«»‟]?');
export const Bar = token('Bar', /[:|]/, source.barline, { role: 'bar' });
export const BadBar = token('BadBar', /[:|]/, ':*\\|[|:]*(?:\\[\\])?', { role: 'bar' });
export const SpanOpen = token('SpanOpen', /\{/, source.spanHead, { role: 'opens' });
export const BareOpen = token('BareOpen', /\{/, '\\{', { role: 'opens' });
export const SpanClose = token('SpanClose', /\}/, '\\}', { role: 'closes' });
export const OptionsOpen = token('OptionsOpen', /</, source.optionHead, { role: 'opens' });
export const BareOptions = token('BareOptions', /</, '<', { role: 'opens' });
export const OptionNext = token('OptionNext', /;/, source.optionNext, { role: 'parts' });
export const BareNext = token('BareNext', /;/, ';', { role: 'parts' });
export const OptionsClose = token('OptionsClose', />/, '>', { role: 'closes' });
export const Round = token('Round', /\(/, `\\(${inRound}(?:"[^"\\n]*"${inRound}){0,99}\\)`);
export const Lost = token('Lost', /l/, `lost(?:[ \\t]+(?:${source.value}|\\?))?${afterWord}`);
export const BarRest = token('BarRest', /r/, `rbar${afterEvent}`);
export const Rest = token('Rest', /r/, `r${afterEvent}`);
export const BarGap = token('BarGap', /_/, `__${afterEvent}`);
export const Gap = token('Gap', /_/, `_${afterEvent}`);
export const Omit = token('Omit', /o/, `omit${afterWord}`);
export const Value = token('Value', /[MLB\d]/, `${source.value}${afterWord}`);
export const Note = token('Note', /[a-g]/, `${source.spelling}(?:${source.tie})?${afterEvent}`);
export const Member = token(
  'Member',
  /-/,
  `-(?:\\((?:up|down|home)\\))?${source.spelling}(?:${source.tie})?${afterEvent}`,
);
export const Repeat = token('Repeat', /[[=]/, `${source.tie}${afterEvent}`);
export const MarkToken = token('Mark', /'/, `${source.mark}${afterEvent}`, { role: 'attached' });
export const Annotated = token('Annotated', /\*/, `${source.annotation}${afterEvent}`, { role: 'attached' });
export const Beam = token('Beam', /[&,]/, '[&,](?!(?!//)\\S)');
// One slip is one junk: `f5(#)`, `c5"x"`, `K:`. A comment ends it.
const junk =
  /(?:[^\s|{}<>;:"(/]+|\/(?!\/)|:+(?!\|)|\((?:##|#|bb|b|n)\))(?:[^\s|{}<>;:"(/]+|\/(?!\/)|:+(?!\|)|"[^"\n|]*"|\((?:##|#|bb|b|n)\)){0,1000}|[:"(]/;
export const JunkToken = token('Junk', ANY, junk.source);
/** A barline that begins a line and is one with the barline that ended the line above; the lexer does not tell it from others. */
export const Again = token('Again', NOTHING, NOTHING.source);
/** What stands after the last token. */
export const End = token('End', NOTHING, NOTHING.source);

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

/** Every character of a lane belongs to some token. */
export const laneLexer = new Lexer(laneTokens);

/** What the sub-lanes `fig` and `text` are made of: anything between spaces and barlines. */
export const SubItem = token('SubItem', ANY, '(?:[^\\s|"/]+|\\/(?!\\/)){1,1000}');

export const subLaneTokens: TokenType[] = [Space, Comment, Bar, BadBar, Quoted, OpenQuote, SubItem];

export const subLaneLexer = new Lexer(subLaneTokens);
