/**
 * The grammar of a lane, bar by bar.
 *
 * Every sequence of tokens with balanced brackets is a sentence of it: what stands where it has no business becomes junk
 * with a problem, so a parse never fails and needs no recovery.
 */
import type { FindingCode } from '../findings/catalogue';
import type { Fix, Problem, Slots, TextEdit } from '../findings/finding';
import { parseChange } from '../statements/parser';
import type {
  Annotation,
  Barline,
  EventItem,
  EventWhat,
  Item,
  Junk,
  Label,
  LaneTree,
  Option,
  OptionsItem,
  Segment,
  Span,
  SpanItem,
  Suffix,
} from '../tree';
import { barlineOf, joinedBarline } from './barline';
import { annotationOf, beginning, eventAt, goingOn, suffixAt, unquoted } from './event';
import { isPossibleProportion, type LabelForm, optionHeadOf, spanHeadOf, spanWords, valueFormOf } from './forms';
import { endOf, spanOf, type Token, type TokenType } from './lexer';
import { ProblemList } from './problems';
import { slipProblem } from './slips';
import * as T from './tokens';

/** One bar as parsed. */
export interface ParsedBar {
  readonly items: readonly Item[];
  readonly bar: Barline | undefined;
  readonly broken: boolean;
}

const noSuffixes: readonly Suffix[] = [];
const noReasons: readonly Annotation[] = [];

const wordsInRound = /^\(\s*(above|below)\s+("(?:[^"]|"")*")\s*\)$/;
const placeInRound = /^\(\s*(?:above|below|after|before)\s*\)$/;

/** What may stand directly before round brackets. */
const mayLeadRound = new Set([T.OptionsOpen, T.OptionNext]);
/** What may be glued to a closing round bracket, or says itself that it is glued. */
const mayFollowRound = new Set([T.SpanClose, T.OptionsClose, T.OptionNext, T.BareNext, T.Bar, T.BadBar]);

/** What may be glued to any event, barline or closed bracket, and what is said where white space parts it. */
const glued = new Map<TokenType, FindingCode>([
  [T.MarkToken, 'mark-apart'],
  [T.Annotated, 'mark-apart'],
]);
const gluedToNote = new Map<TokenType, FindingCode>([...glued, [T.Member, 'member-apart']]);

const END: Token = { tokenType: T.End, image: '', startOffset: Number.NaN };

const spaceAt = (pos: number): TextEdit => ({ pos, len: 0, text: ' ' });

const junkTokens = new Set<TokenType>([T.JunkToken, T.OpenQuote, T.CurlyQuoted]);

/** What balance turned into junk, and reported. */
const bracketJunk = /^(?:[{}<>;]|\{.*|<.*:|;.*:)$/;
const spanList = [...spanWords.keys()].join(', ');

/** The labels of an option's head at their places. */
function labelsAt(forms: readonly LabelForm[], start: number): readonly Label[] {
  const labels: Label[] = [];
  for (const { at, len, name, layer, doubtful } of forms) {
    const pos = start + at;
    labels.push(layer === undefined ? { pos, len, name, doubtful } : { pos, len, name, doubtful, layer });
  }
  return labels.slice();
}

const moveProblem = (problem: Problem, by: number): Problem => ({
  ...problem,
  pos: problem.pos + by,
  ...(problem.fixes === undefined
    ? {}
    : {
        fixes: problem.fixes.map((fix) => ({
          ...fix,
          edits: fix.edits.map((edit) => ({ ...edit, pos: edit.pos + by })),
        })),
      }),
});

export class LaneParser {
  /** What a token begins where an item may stand; one that is not here ends the items. */
  static readonly items = new Map<TokenType, (parser: LaneParser) => Item>([
    [T.Note, (parser) => parser.event('note', gluedToNote)],
    [T.Rest, (parser) => parser.event('rest', glued)],
    [T.BarRest, (parser) => parser.event('barRest', glued)],
    [T.Gap, (parser) => parser.event('gap', glued)],
    [T.BarGap, (parser) => parser.event('barGap', glued)],
    [T.Repeat, (parser) => parser.event('repeat', glued)],
    [T.Value, (parser) => parser.value(parser.take())],
    [T.SpanOpen, (parser) => parser.group()],
    [T.BareOpen, (parser) => parser.group()],
    [T.OptionsOpen, (parser) => parser.options()],
    [T.BareOptions, (parser) => parser.options()],
    [T.Bar, (parser) => parser.bar()],
    [T.BadBar, (parser) => parser.bar()],
    [T.Beam, (parser) => parser.beam(parser.takeApart('beam-glued'))],
    [T.Round, (parser) => parser.round(parser.takeRound())],
    [T.Quoted, (parser) => parser.words(parser.take())],
    [T.Lost, (parser) => parser.lost(parser.take())],
    [T.Omit, (parser) => ({ kind: 'omit', ...spanOf(parser.take()) })],
    [T.MarkToken, (parser) => parser.junk(parser.take(), 'mark-without-event')],
    [T.Annotated, (parser) => parser.junk(parser.take(), 'annotation-without-event')],
    [T.Member, (parser) => parser.junk(parser.take(), 'member-without-chord')],
    [T.OpenQuote, (parser) => parser.junk(parser.take(), 'unclosed-string')],
    [T.CurlyQuoted, (parser) => parser.curlyQuoted(parser.take())],
    [T.JunkToken, (parser) => parser.slip(parser.take())],
  ]);

  private tokens: readonly Token[] = [];
  /** Of the next token. */
  private at = 0;
  private problems = new ProblemList();
  private broken = false;
  /** Where the last token ended, to see what is glued to what. */
  private lastEnd = -1;
  private afterJunk = false;
  /** What bar and brackets hold so far, the innermost last: one list that has grown once serves them all. */
  private readonly stack: Item[] = [];
  private height = 0;
  private readonly found: Suffix[] = [];
  /** The bar before the one that is parsed. */
  private before: Segment | undefined;

  /**
   * Parses the tokens of one bar, its barline the last of them; brackets must be in balance.
   * @param problems takes what is wrong with them
   * @param before the bar before it in the lane
   */
  parseBar(tokens: readonly Token[], problems: ProblemList, before: Segment | undefined): ParsedBar {
    this.start(tokens, problems, -1);
    this.before = before;
    const items = this.items();
    const last = items.at(-1);
    const bar = last?.kind === 'barline' ? last : undefined;
    if (bar !== undefined) items.length--;
    this.refuseOmit(items);
    // The barline stands beside the items, and a copy has no room for it.
    return { items: bar === undefined ? items : items.slice(), bar, broken: this.broken };
  }

  /** Parses what belongs to the opening barline of a lane: marks and annotations glued to it, the barline of the next line. */
  parseOpening(tokens: readonly Token[], problems: ProblemList): LaneTree['opening'] {
    this.start(tokens, problems, 0);
    const suffixes = this.suffixes();
    return this.next.tokenType.role === 'bar' ? { suffixes, again: this.bar() } : { suffixes };
  }

  private start(tokens: readonly Token[], problems: ProblemList, lastEnd: number): void {
    this.problems = problems;
    this.broken = false;
    this.afterJunk = false;
    this.lastEnd = lastEnd;
    this.height = 0;
    this.tokens = tokens;
    this.at = 0;
  }

  // ─── tokens ──────────────────────────────────────────────────────────────────────────────────────────────────────

  private get next(): Token {
    return this.tokens[this.at] ?? END;
  }

  /** The token before the one that was taken last. */
  private get beforeLast(): Token {
    return this.tokens[this.at - 2] ?? END;
  }

  private take(): Token {
    const token = this.next;
    this.at++;
    this.afterJunk = junkTokens.has(token.tokenType);
    this.lastEnd = endOf(token);
    return token;
  }

  /** Takes a token that belongs to the one before it. */
  private takeGlued(code: FindingCode): Token {
    const token = this.next;
    const gap = token.startOffset - this.lastEnd;
    if (gap > 0) {
      const edit = { pos: this.lastEnd, len: gap, text: '' };
      this.reportFixed(code, spanOf(token), { text: token.image }, 'take the white space away', edit);
    }
    return this.take();
  }

  /** Takes a token that belongs to nothing before it. */
  private takeApart(code: FindingCode): Token {
    const token = this.next;
    if (token.startOffset === this.lastEnd) {
      const edit = spaceAt(token.startOffset);
      this.reportFixed(code, spanOf(token), { text: token.image }, 'put white space before it', edit);
    }
    return this.take();
  }

  /** Takes a change or words: a sign with round brackets glued to it would be another thing. */
  private takeRound(): Token {
    const before = this.tokens[this.at - 1] ?? END;
    const isGluedBefore = this.next.startOffset === this.lastEnd && !mayLeadRound.has(before.tokenType);
    const token = this.take();
    const { next } = this;
    const [start, end] = [token.startOffset, endOf(token)];
    const isGluedAfter = end === next.startOffset && !mayFollowRound.has(next.tokenType);
    // Of words that say where a sign is drawn another finding speaks.
    if ((!isGluedBefore && !isGluedAfter) || placeInRound.test(token.image)) return token;
    const [at, slots] = [spanOf(token), { text: token.image }];
    if (isGluedAfter && gluedToNote.has(next.tokenType)) this.report('bracket-glued', at, slots);
    else {
      const edits = [...(isGluedBefore ? [spaceAt(start)] : []), ...(isGluedAfter ? [spaceAt(end)] : [])];
      this.reportFixed('bracket-glued', at, slots, 'put white space around it', ...edits);
    }
    return token;
  }

  // ─── rules ───────────────────────────────────────────────────────────────────────────────────────────────────────

  /** Items as far as they go. */
  private items(): Item[] {
    const start = this.height;
    for (let rule = this.rule(); rule !== undefined; rule = this.rule()) {
      const item = rule(this);
      this.stack[this.height++] = item;
    }
    const own = this.stack.slice(start, this.height);
    this.height = start;
    return own;
  }

  private rule(): ((parser: LaneParser) => Item) | undefined {
    return LaneParser.items.get(this.next.tokenType);
  }

  private event(what: EventWhat, mayFollow: ReadonlyMap<TokenType, FindingCode>): EventItem {
    const { startOffset, image } = this.take();
    let written = beginning(what, image);
    for (let code = mayFollow.get(this.next.tokenType); code !== undefined; code = mayFollow.get(this.next.tokenType)) {
      const token = this.takeGlued(code);
      written = goingOn(written, token.image, token.startOffset - startOffset);
    }
    return eventAt(startOffset, written);
  }

  private suffixes(): readonly Suffix[] {
    if (!glued.has(this.next.tokenType)) return noSuffixes;
    this.found.length = 0;
    while (glued.has(this.next.tokenType)) {
      const token = this.takeGlued('mark-apart');
      this.found.push(suffixAt(token.image, token.startOffset));
    }
    return this.found.slice();
  }

  /** A barline, and that of the next line where the two are one. */
  private bar(): Barline {
    // After junk the barline is glued to something that has been reported.
    const token = this.afterJunk ? this.take() : this.takeApart('barline-glued');
    let line = this.barline(token, this.suffixes());
    while (this.next.tokenType === T.Again) {
      line = joinedBarline(line, this.barline(this.take(), this.suffixes()), this.problems);
    }
    return line;
  }

  private group(): SpanItem {
    const open = this.take();
    const items = this.items();
    this.take();
    return this.groupOf(open, items, this.suffixes());
  }

  private options(): OptionsItem {
    const open = this.take();
    const options = [this.optionOf(open, this.items())];
    while (this.next.tokenType.role === 'parts') options.push(this.optionOf(this.take(), this.items()));
    this.take();
    return this.optionsOf(open, options.slice(), this.suffixes());
  }

  // ─── what the rules make ─────────────────────────────────────────────────────────────────────────────────────────

  private report(code: FindingCode, at: Span, slots: Slots = {}): void {
    this.problems.push({ code, pos: at.pos, len: at.len, slots });
  }

  private reportFixed(code: FindingCode, at: Span, slots: Slots, title: string, ...edits: readonly TextEdit[]): void {
    this.problems.push({ code, pos: at.pos, len: at.len, slots, fixes: [{ title, edits }] });
  }

  private value(token: Token): Item {
    const form = valueFormOf(token.image);
    if (form === undefined) return { kind: 'junk', ...spanOf(token) };
    if (form.duration === undefined) {
      this.broken = true;
      this.report('impossible-value', spanOf(token), { text: token.image });
    }
    return { kind: 'value', pos: token.startOffset, len: token.image.length, form };
  }

  private lost(token: Token): Item {
    const rest = token.image.slice('lost'.length).trim();
    const form = rest === '' || rest === '?' ? undefined : valueFormOf(rest);
    if (rest === '') {
      this.broken = true;
      this.report('lost-without-value', spanOf(token));
    } else if (form !== undefined && form.duration === undefined) {
      this.broken = true;
      this.report('impossible-value', spanOf(token), { text: rest });
    }
    return { kind: 'lost', ...spanOf(token), ...(form === undefined ? {} : { form }) };
  }

  private beam(token: Token): Item {
    return { kind: 'beam', ...spanOf(token), join: token.image === '&' };
  }

  private words(token: Token): Item {
    return { kind: 'words', ...spanOf(token), text: unquoted(token.image) };
  }

  private curlyQuoted(token: Token): Item {
    const inner = token.image.replace(/[“”„«»‟]/g, '');
    this.broken = true;
    this.reportFixed('typographic-quotes', spanOf(token), { quote: token.image.charAt(0) }, 'write straight quotes', {
      ...spanOf(token),
      text: `"${inner}"`,
    });
    return { kind: 'junk', ...spanOf(token) };
  }

  /** Round brackets after white space: a change of state, or words above or below. */
  private round(token: Token): Item {
    const at = spanOf(token);
    const words = wordsInRound.exec(token.image);
    if (words?.[2] !== undefined) {
      return { kind: 'words', ...at, text: unquoted(words[2]), place: words[1] as 'above' | 'below' };
    }
    if (placeInRound.test(token.image)) return this.placeApart(token);
    const { change, problems } = parseChange(token.image);
    for (const problem of problems) this.problems.push(moveProblem(problem, at.pos));
    if (change !== undefined) return { kind: 'change', ...at, change };
    this.broken = true;
    if (problems.length === 0) this.report('not-understood', at, { text: token.image, meant: '' });
    return { kind: 'junk', ...at };
  }

  /** `(above)` after white space: only a sign before it can be meant. */
  private placeApart(token: Token): Junk {
    const at = spanOf(token);
    const before = this.beforeLast;
    this.broken = true;
    if (before.tokenType !== T.MarkToken) this.report('place-apart', at, { text: token.image });
    else {
      const pos = endOf(before);
      const edit = { pos, len: at.pos - pos, text: '' };
      this.reportFixed('place-apart', at, { text: token.image }, 'take the white space away', edit);
    }
    return { kind: 'junk', ...at };
  }

  private junk(token: Token, code: FindingCode): Junk {
    this.broken = true;
    this.report(code, spanOf(token), { text: token.image.slice(0, 40) });
    return { kind: 'junk', ...spanOf(token) };
  }

  private slip(token: Token): Junk {
    this.broken = true;
    // Brackets out of balance have been reported already.
    if (bracketJunk.test(token.image)) return { kind: 'junk', ...spanOf(token) };
    const problem = slipProblem(token.image, token.startOffset);
    const dots = problem.code === 'lone-dot' ? this.dotFixes(token) : [];
    this.problems.push(dots.length === 0 ? problem : { ...problem, fixes: dots });
    return { kind: 'junk', ...spanOf(token) };
  }

  /** A dot apart from its value is joined to it; one after a barline belongs to the note before. */
  private dotFixes(dot: Token): Fix[] {
    const before = this.beforeLast;
    if (before.tokenType === T.Value) {
      const pos = endOf(before);
      return [{ title: 'take the white space away', edits: [{ pos, len: dot.startOffset - pos, text: '' }] }];
    }
    const [note, value] = [this.before?.items.at(-1), this.before?.items.at(-2)];
    if (note?.kind !== 'event' || note.what !== 'note' || value?.kind !== 'value') return [];
    const edits = [
      { pos: value.pos + value.len, len: 0, text: '.' },
      { pos: note.pos + note.len, len: 0, text: "'through(dot)" },
      { pos: dot.startOffset, len: 1, text: '' },
    ];
    return [{ title: 'let the note before run through the barline', edits }];
  }

  /** A barline with what is glued to it. */
  private barline(token: Token, suffixes: readonly Suffix[]): Barline {
    return { ...barlineOf(token, this.problems), len: this.lastEnd - token.startOffset, suffixes };
  }

  private refuseOmit(items: readonly Item[]): void {
    for (const item of items) {
      if (item.kind !== 'omit') continue;
      this.broken = true;
      this.report('omit-misplaced', item);
    }
  }

  private groupOf(open: Token, items: readonly Item[], suffixes: readonly Suffix[]): SpanItem {
    if (items.some((item) => item.kind === 'omit')) this.refuseOmit(items);
    const head = spanHeadOf(open.image) ?? { text: '{' };
    const at = spanOf(open);
    if (open.tokenType === T.BareOpen) {
      // A forgotten head may be that of a tuplet.
      this.broken = true;
      this.report('span-without-head', at);
    } else this.checkHead(head, at);
    return { kind: 'span', pos: open.startOffset, len: this.lastEnd - open.startOffset, head, items, suffixes };
  }

  private checkHead(head: SpanItem['head'], at: Span): void {
    const word = head.word;
    if (head.proportion !== undefined && !isPossibleProportion(head.proportion)) {
      this.broken = true;
      this.report('impossible-proportion', at, { text: head.text.slice(1) });
    }
    if (word === undefined) {
      if (head.proportion === undefined) {
        this.broken = true;
        this.report('unknown-span', at, { text: head.text.slice(1), known: spanList });
      } else if (head.readings !== undefined) this.report('span-takes-no-readings', at, { text: head.text.slice(1) });
      return;
    }
    const allowed = spanWords.get(word);
    if (head.readings !== undefined && allowed?.readings !== true) {
      this.report('span-takes-no-readings', at, { text: word });
    }
    const numbers = head.ratio !== undefined ? 'ratio' : head.proportion !== undefined ? 'proportion' : undefined;
    if (numbers !== undefined && allowed?.[numbers] !== true) this.report('span-takes-no-ratio', at, { text: word });
  }

  private optionOf(open: Token, items: readonly Item[]): Option {
    const labels = labelsAt(optionHeadOf(open.image).labels, open.startOffset);
    if (open.tokenType === T.BareOptions || open.tokenType === T.BareNext) {
      this.broken = true;
      this.report('option-without-label', { pos: open.startOffset, len: 1 });
    }
    const omit = items.length === 1 && items[0]?.kind === 'omit';
    if (!omit && items.some((item) => item.kind === 'omit')) this.refuseOmit(items);
    const pos = labels[0]?.pos ?? endOf(open);
    return { pos, len: Math.max(this.lastEnd - pos, 0), labels, omit, items };
  }

  private optionsOf(open: Token, options: readonly Option[], suffixes: readonly Suffix[]): OptionsItem {
    const { place, reasons } = optionHeadOf(open.image);
    const pos = open.startOffset;
    const len = this.lastEnd - pos;
    const given = reasons.length === 0 ? noReasons : reasons.map(({ text, at }) => annotationOf(text, pos + at));
    if (place === undefined) return { kind: 'options', pos, len, reasons: given, options, suffixes };
    const named = { text: place, pos: pos + 1, len: place.length };
    return { kind: 'options', pos, len, reasons: given, options, suffixes, place: named };
  }
}
