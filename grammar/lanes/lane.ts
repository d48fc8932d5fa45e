/** From the text of a lane to its tree: tokens, brackets in balance, bars cut at the barlines outside brackets. */
import type { IToken } from 'chevrotain';
import type { Barline, BarlineShape, Item, LaneKind, LaneTree, Segment } from '../tree';
import { balance } from './balance';
import { LaneParser, type ParsedBar } from './parser';
import { ProblemList } from './problems';
import { subItem } from './sublane';
import * as T from './tokens';

/** One parser for all lanes; it keeps nothing between two bars. */
const parser = new LaneParser();

const opens = new Set([T.SpanOpen, T.BareOpen, T.OptionsOpen, T.BareOptions]);
const closes = new Set([T.SpanClose, T.OptionsClose]);
const bars = new Set([T.Bar, T.BadBar]);
const attached = new Set([T.MarkToken, T.Annotated]);

const endOf = (token: IToken): number => token.startOffset + token.image.length;

/** The tokens of each bar, its barline with what is glued to it the last of them. */
function cutAtBarlines(tokens: readonly IToken[]): IToken[][] {
  const found: IToken[][] = [];
  let current: IToken[] = [];
  let depth = 0;
  /** Where the barline that closed the last bar ends, as long as only its marks and annotations have followed. */
  let barEnd = -1;
  for (const token of tokens) {
    if (token.startOffset === barEnd && attached.has(token.tokenType)) {
      found.at(-1)?.push(token);
      barEnd = endOf(token);
      continue;
    }
    current.push(token);
    if (opens.has(token.tokenType)) depth++;
    else if (closes.has(token.tokenType)) depth--;
    else if (depth === 0 && bars.has(token.tokenType)) {
      found.push(current);
      current = [];
      barEnd = endOf(token);
    }
  }
  if (current.length > 0) found.push(current);
  return found;
}

/** A barline that begins a continuing line and the one that ended the line above are one. */
function joinBarlines(
  tokens: readonly IToken[],
  joints: readonly number[],
  text: string,
): { kept: IToken[]; again: Map<number, IToken> } {
  const again = new Map<number, IToken>();
  if (joints.length < 2) return { kept: tokens as IToken[], again };
  const lineStarts = new Set(
    joints.slice(1).map((joint) => joint + (/^\s*/.exec(text.slice(joint, joint + 1000))?.[0].length ?? 0)),
  );
  const kept: IToken[] = [];
  for (const token of tokens) {
    const before = kept.at(-1);
    if (
      before !== undefined &&
      bars.has(token.tokenType) &&
      lineStarts.has(token.startOffset) &&
      bars.has(before.tokenType)
    ) {
      again.set(before.startOffset, token);
    } else kept.push(token);
  }
  return { kept, again };
}

const shapeOf = (token: IToken): BarlineShape =>
  token.tokenType === T.Bar ? (token.image.replace('[]', '') as BarlineShape) : '|';

/** The barline with the one that begins the next line made part of it. */
function joined(bar: Barline, token: IToken, problems: ProblemList): Barline {
  const below = shapeOf(token);
  if (bar.shape !== '|' && below !== '|' && bar.shape !== below) {
    problems.push({
      code: 'barline-joint',
      pos: token.startOffset,
      len: token.image.length,
      slots: { above: bar.shape, below },
    });
  }
  return {
    ...bar,
    shape: bar.shape === '|' ? below : bar.shape,
    editors: bar.editors || token.image.endsWith('[]'),
    again: { pos: token.startOffset, len: token.image.length },
  };
}

function parseSubBar(kind: 'fig' | 'text', tokens: readonly IToken[], problems: ProblemList): ParsedBar {
  const items: Item[] = [];
  let bar: Barline | undefined;
  for (const token of tokens) {
    const at = { pos: token.startOffset, len: token.image.length };
    if (bars.has(token.tokenType)) {
      if (token.tokenType === T.BadBar) problems.push({ code: 'bad-barline', ...at, slots: { text: token.image } });
      bar = { kind: 'barline', ...at, shape: shapeOf(token), editors: token.image.endsWith('[]'), suffixes: [] };
    } else if (token.tokenType === T.OpenQuote) {
      problems.push({ code: 'unclosed-string', ...at, slots: {} });
      items.push({ kind: 'junk', ...at });
    } else items.push(subItem(kind, token, problems));
  }
  return { items, bar, broken: items.some((item) => item.kind === 'junk') };
}

/**
 * The tree of a lane.
 *
 * @param text what stands after the opening barline, lines joined by line feeds; a line that continues the lane begins
 *   with its own opening barline
 * @param joints offset in `text` of each line
 */
export function parseLane(kind: LaneKind, text: string, joints: readonly number[]): LaneTree {
  const { tokens } = (kind === 'lane' ? T.laneLexer : T.subLaneLexer).tokenize(text);
  const problems = new ProblemList();
  if (kind === 'lane') balance(tokens, problems);
  const { kept, again } = joinBarlines(tokens, joints, text);
  const segments: Segment[] = [];
  let pos = 0;
  for (const barTokens of cutAtBarlines(kept)) {
    const parsed = kind === 'lane' ? parser.parseBar(barTokens, problems) : parseSubBar(kind, barTokens, problems);
    const last = barTokens.at(-1);
    const end = last === undefined ? pos : endOf(last);
    const repeated = parsed.bar === undefined ? undefined : again.get(parsed.bar.pos);
    const bar =
      parsed.bar === undefined || repeated === undefined ? parsed.bar : joined(parsed.bar, repeated, problems);
    segments.push({
      pos,
      len: end - pos,
      items: parsed.items,
      ...(bar === undefined ? {} : { bar }),
      broken: parsed.broken,
    });
    pos = bar?.again === undefined ? end : bar.again.pos + bar.again.len;
  }
  return { kind, text, joints, segments, problems: problems.all() };
}
