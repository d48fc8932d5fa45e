/** From the text of a lane to its tree: tokens, brackets in balance, bars cut at the barlines outside brackets. */
import type { IToken } from 'chevrotain';
import type { Barline, Item, LaneKind, LaneTree, Segment } from '../tree';
import { balance } from './balance';
import { barlineOf, joinedBarline } from './barline';
import { LaneParser, type ParsedBar } from './parser';
import { ProblemList } from './problems';
import { subItem } from './sublane';
import * as T from './tokens';
import { endOf, spanOf } from './tokens';

/** One parser for all lanes; it keeps nothing between two bars. */
const parser = new LaneParser();

const isBar = (token: IToken): boolean => T.roleOf(token) === 'bar';
/** What is glued to an event or a barline. */
const isAttached = (token: IToken): boolean => T.roleOf(token) === 'attached';

/** The tokens of each bar, its barline with what belongs to it the last of them. */
function cutAtBarlines(tokens: readonly IToken[]): IToken[][] {
  const found: IToken[][] = [];
  let start = 0;
  let depth = 0;
  /** Where the barline that closed the last bar ends, as long as only what belongs to it has followed. */
  let barEnd = -1;
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index] as IToken;
    const belongs = (token.startOffset === barEnd && isAttached(token)) || token.tokenType === T.Again;
    if (barEnd >= 0 && belongs) {
      barEnd = endOf(token);
      continue;
    }
    if (barEnd >= 0) {
      found.push(tokens.slice(start, index));
      start = index;
      barEnd = -1;
    }
    const role = T.roleOf(token);
    if (role === 'opens') depth++;
    else if (role === 'closes') depth--;
    else if (depth === 0 && role === 'bar') barEnd = endOf(token);
  }
  if (start < tokens.length) found.push(tokens.slice(start));
  return found;
}

/** Where the lines that continue a lane begin. */
type LineStarts = ReadonlySet<number>;
const oneLine: LineStarts = new Set();

/** The barline goes on with one of a line above. */
function becomesAgain(token: IToken): void {
  token.tokenType = T.Again;
  token.tokenTypeIdx = T.Again.tokenTypeIdx ?? 0;
}

/** Makes one of each barline that begins a continuing line and the one that ended the line above. */
function joinBarlines(tokens: readonly IToken[], lineStarts: LineStarts): void {
  if (lineStarts.size === 0) return;
  /** Where the last barline ends with what is glued to it, as long as nothing else has followed. */
  let barEnd = -1;
  for (const token of tokens) {
    const isLine = isBar(token);
    if (isLine && barEnd >= 0 && lineStarts.has(token.startOffset)) {
      becomesAgain(token);
      barEnd = endOf(token);
    } else if (isLine) barEnd = endOf(token);
    else if (token.startOffset === barEnd && isAttached(token)) barEnd = endOf(token);
    else barEnd = -1;
  }
}

/** The one barline that those of several lines are. */
function oneOf([first, ...further]: readonly Barline[], problems: ProblemList): Barline | undefined {
  return first === undefined || further.length === 0 ? first : joinedBarline(first, further, problems);
}

/** Bars of a sub-lane: items, then a barline, perhaps one with the barline that begins the next line. */
function parseSubBar(kind: 'fig' | 'text', tokens: readonly IToken[], problems: ProblemList): ParsedBar {
  const items: Item[] = [];
  const barlines: Barline[] = [];
  for (const token of tokens) {
    if (isBar(token) || token.tokenType === T.Again) barlines.push(barlineOf(token, problems));
    else if (token.tokenType === T.OpenQuote) {
      problems.push({ code: 'unclosed-string', ...spanOf(token), slots: {} });
      items.push({ kind: 'junk', ...spanOf(token) });
    } else items.push(subItem(kind, token, items.at(-1), problems));
  }
  return { items, bar: oneOf(barlines, problems), broken: items.some((item) => item.kind === 'junk') };
}

/** The tokens that belong to the opening barline: what is glued to it, and the barlines of the next lines as long as nothing stands between. */
function cutOpening(kind: LaneKind, tokens: readonly IToken[], lineStarts: LineStarts): IToken[] {
  const found: IToken[] = [];
  let end = 0;
  for (const token of tokens) {
    const isGlued = kind === 'lane' && token.startOffset === end && isAttached(token);
    const isNextLine = lineStarts.has(token.startOffset) && isBar(token);
    if (!isGlued && !isNextLine) break;
    if (isNextLine && found.some(isBar)) becomesAgain(token);
    found.push(token);
    end = endOf(token);
  }
  return found;
}

function parseOpening(kind: LaneKind, tokens: IToken[], problems: ProblemList): LaneTree['opening'] {
  if (tokens.length === 0) return noOpening;
  if (kind === 'lane') return parser.parseOpening(tokens, problems);
  const again = oneOf(
    tokens.map((token) => barlineOf(token, problems)),
    problems,
  );
  return again === undefined ? noOpening : { suffixes: [], again };
}

const noOpening: LaneTree['opening'] = { suffixes: [] };

/**
 * The tree of a lane.
 *
 * @param text what stands after the opening barline, lines joined by line feeds; a line that continues the lane begins
 *   with its own opening barline
 * @param joints offset in `text` of each line
 */
export function parseLane(kind: LaneKind, text: string, joints: readonly number[]): LaneTree {
  const { tokens } = T.lexerOf(kind).tokenize(text);
  const problems = new ProblemList();
  if (kind === 'lane') balance(tokens, problems);
  const lineStarts = joints.length < 2 ? oneLine : new Set(joints.slice(1));
  const openingTokens = cutOpening(kind, tokens, lineStarts);
  const opening = parseOpening(kind, openingTokens, problems);
  const rest = openingTokens.length === 0 ? tokens : tokens.slice(openingTokens.length);
  joinBarlines(rest, lineStarts);
  const segments: Segment[] = [];
  const lastOpening = openingTokens.at(-1);
  let pos = lastOpening === undefined ? 0 : endOf(lastOpening);
  const bars = cutAtBarlines(rest);
  for (const [index, barTokens] of bars.entries()) {
    const { items, bar, broken } =
      kind === 'lane'
        ? parser.parseBar(barTokens, problems, segments.at(-1), bars[index + 1]?.[0])
        : parseSubBar(kind, barTokens, problems);
    const last = barTokens.at(-1);
    const end = last === undefined ? pos : endOf(last);
    const len = end - pos;
    segments.push(bar === undefined ? { pos, len, items, broken } : { pos, len, items, broken, bar });
    pos = end;
  }
  return { kind, text, joints, opening, segments: segments.slice(), problems: problems.all() };
}
