/**
 * The grammar of a lane, bar by bar.
 *
 * Every sequence of tokens with balanced brackets is a sentence of it: what stands where it has no business becomes junk
 * with a problem, so a parse never fails and needs no recovery.
 */
import { EmbeddedActionsParser, EOF, type IToken, type ParserMethod, type TokenType } from 'chevrotain';
import type { FindingCode } from '../findings/catalogue';
import { type Fix, problemOf, type Slots, type TextEdit } from '../findings/finding';
import { gluing, replacing } from '../findings/fixes';
import { unquoted } from '../quoted';
import type {
  Annotation,
  Barline,
  EventItem,
  EventWhat,
  Item,
  Junk,
  LaneTree,
  Option,
  OptionsItem,
  Segment,
  Span,
  SpanItem,
  Suffix,
} from '../tree';
import { type Around, lostAmount } from './around';
import { barlineOf, joinedBarline } from './barline';
import { annotationOf, beginning, eventAt, goingOn, suffixAt } from './event';
import { optionHeadOf, spanHeadOf, valueFormOf } from './forms';
import { checkSpanHead, headMeant, labelsAt } from './heads';
import { ProblemList } from './problems';
import { isPlaceOfSign, roundItem } from './round';
import { mendingAt, slipProblem } from './slips';
import * as T from './tokens';
import { endOf, spanOf } from './tokens';

/** One bar as parsed. */
export interface ParsedBar {
  readonly items: readonly Item[];
  readonly bar: Barline | undefined;
  readonly broken: boolean;
}

const noSuffixes: readonly Suffix[] = [];
const noReasons: readonly Annotation[] = [];

const RECORDED: IToken = {
  image: '',
  startOffset: 0,
  tokenType: T.JunkToken,
  tokenTypeIdx: 0,
};

const RECORDED_BAR: Barline = { kind: 'barline', pos: 0, len: 0, shape: '|', editors: false, suffixes: [] };

/** What may stand directly before round brackets. */
const mayLeadRound = new Set([T.OptionsOpen, T.OptionNext]);
/** What may be glued to a closing round bracket, or says itself that it is glued. */
const mayFollowRound = new Set([T.SpanClose, T.OptionsClose, T.OptionNext, T.BareNext, T.Bar, T.BadBar]);

/** What belongs to a note before it, from which white space would part it. */
const gluedTokens = new Set<TokenType>([T.MarkToken, T.Annotated, T.Member]);

const spaceAt = (pos: number): TextEdit => ({ pos, len: 0, text: ' ' });

const junkTokens = new Set([T.JunkToken, T.OpenQuote, T.CurlyQuoted]);

/** Events that are no notes. */
const otherEvents = new Map<TokenType, EventWhat>([
  [T.Rest, 'rest'],
  [T.BarRest, 'barRest'],
  [T.Gap, 'gap'],
  [T.BarGap, 'barGap'],
  [T.Repeat, 'repeat'],
]);

const ofBarline: ReadonlySet<TokenType> = new Set([T.Bar, T.BadBar, T.Again]);

/** What balance turned into junk, and reported. */
const bracketJunk = /^(?:[{}<>;]|\{.*|<.*:|;.*:)$/;

export class LaneParser extends EmbeddedActionsParser {
  private problems = new ProblemList();
  private broken = false;
  /** Where the last token ended, to see what is glued to what. */
  private lastEnd = -1;
  private afterJunk = false;
  private readonly items: ParserMethod<[], Item[]>;
  private readonly opening: ParserMethod<[], LaneTree['opening']>;
  /** What bar and brackets hold so far, the innermost last: one list that has grown once serves them all. */
  private readonly stack: Item[] = [];
  private height = 0;
  private readonly found: Suffix[] = [];
  /** Options read so far, those of the innermost brackets last. */
  private readonly read: Option[] = [];
  /** The event that is read, as far as it goes. */
  private written = beginning('rest', 'r');
  private eventStart = 0;
  /** Belongs to what has been reported before it. */
  private told: IToken | undefined;
  /** The bar before the one that is parsed. */
  private before: Segment | undefined;
  /** The token with which the next bar begins. */
  private after: IToken | undefined;

  /** @param skipValidations the grammar is known to be sound, for a test looks it through, and need not be at each start */
  constructor(skipValidations = true) {
    super([...T.laneTokens, T.Again], { maxLookahead: 1, recoveryEnabled: false, skipValidations });

    // Alternatives and what is repeated are made once: made anew for each token they would take longer than the parse.
    const suffix = [{ ALT: () => this.CONSUME(T.MarkToken) }, { ALT: () => this.CONSUME(T.Annotated) }];
    const takeSuffix = (): void => {
      const token = this.glued(this.OR(suffix), 'mark-apart');
      this.found.push(suffixAt(token.image, token.startOffset));
    };
    const suffixes = this.RULE('suffixes', (): readonly Suffix[] => {
      this.found.length = 0;
      this.MANY(takeSuffix);
      return this.found.slice();
    });
    /** Most things have nothing glued to them: the rule is not even entered. */
    const first = (): readonly Suffix[] => (this.isSuffixNext() ? this.SUBRULE(suffixes) : noSuffixes);
    const second = (): readonly Suffix[] => (this.isSuffixNext() ? this.SUBRULE2(suffixes) : noSuffixes);

    const glue = [
      { ALT: () => this.goOn(this.CONSUME(T.MarkToken), 'mark-apart') },
      { ALT: () => this.goOn(this.CONSUME(T.Annotated), 'mark-apart') },
    ];
    const glueToNote = [...glue, { ALT: () => this.goOn(this.CONSUME(T.Member), 'member-apart') }];
    const takeGlued = (): void => this.OR1(glue);
    const takeGluedToNote = (): void => this.OR1(glueToNote);

    const chord = this.RULE('chord', (): EventItem => {
      const token = this.begin('note', this.CONSUME(T.Note));
      if (this.isSuffixNext() || this.LA(1).tokenType === T.Member) this.MANY(takeGluedToNote);
      return eventAt(token.startOffset, this.written);
    });

    const silent = [
      { ALT: () => this.CONSUME(T.Rest) },
      { ALT: () => this.CONSUME(T.BarRest) },
      { ALT: () => this.CONSUME(T.Gap) },
      { ALT: () => this.CONSUME(T.BarGap) },
      { ALT: () => this.CONSUME(T.Repeat) },
    ];
    const silence = this.RULE('silence', (): EventItem => {
      const token = this.known(this.OR(silent));
      this.begin(otherEvents.get(token.tokenType) ?? 'rest', token);
      if (this.isSuffixNext()) this.MANY(takeGlued);
      return eventAt(token.startOffset, this.written);
    });

    const drawn = [{ ALT: () => this.CONSUME(T.Bar) }, { ALT: () => this.CONSUME(T.BadBar) }];
    const bar = this.RULE('bar', (): Barline => {
      const token = this.known(this.OR(drawn));
      // After junk the barline is glued to something that has been reported.
      if (!this.afterJunk) this.expectApart(token, 'barline-glued');
      this.taken(token);
      const line = this.barline(token, first());
      // A line may hold a barline alone.
      const further: Barline[] = [];
      this.MANY(() => {
        const again = this.taken(this.CONSUME(T.Again));
        further.push(this.barline(again, second()));
      });
      return this.joined(line, further);
    });

    this.opening = this.RULE('opening', () => {
      const own = this.SUBRULE(suffixes);
      let again: Barline | undefined;
      this.OPTION(() => {
        again = this.SUBRULE(bar);
      });
      return again === undefined ? { suffixes: own } : { suffixes: own, again };
    });

    const opened = [{ ALT: () => this.CONSUME(T.SpanOpen) }, { ALT: () => this.CONSUME(T.BareOpen) }];
    const group = this.RULE('group', (): SpanItem => {
      const open = this.opened(this.OR(opened));
      const items = this.SUBRULE1(this.items);
      this.taken(this.CONSUME(T.SpanClose));
      return this.groupOf(open, items, first());
    });

    const optionsOpened = [{ ALT: () => this.CONSUME(T.OptionsOpen) }, { ALT: () => this.CONSUME(T.BareOptions) }];
    const nextOption = [{ ALT: () => this.CONSUME(T.OptionNext) }, { ALT: () => this.CONSUME(T.BareNext) }];
    const takeOption = (): void => {
      const next = this.taken(this.OR2(nextOption));
      this.read.push(this.optionOf(next, this.SUBRULE2(this.items)));
    };
    const options = this.RULE('options', (): OptionsItem => {
      const open = this.taken(this.OR(optionsOpened));
      const from = this.read.length;
      this.read.push(this.optionOf(open, this.SUBRULE1(this.items)));
      this.MANY(takeOption);
      this.taken(this.CONSUME(T.OptionsClose));
      return this.optionsOf(open, this.read.splice(from), first());
    });

    const item = [
      { ALT: () => this.SUBRULE(chord) },
      { ALT: () => this.value(this.taken(this.CONSUME(T.Value))) },
      { ALT: () => this.SUBRULE(silence) },
      { ALT: () => this.SUBRULE(group) },
      { ALT: () => this.SUBRULE(options) },
      { ALT: () => this.SUBRULE(bar) },
      { ALT: () => this.beam(this.CONSUME(T.Beam)) },
      { ALT: () => this.round(this.roundApart(this.CONSUME(T.Round))) },
      { ALT: () => this.words(this.taken(this.CONSUME(T.Quoted))) },
      { ALT: () => this.lost(this.taken(this.CONSUME(T.Lost))) },
      { ALT: () => this.junk(this.taken(this.CONSUME(T.MarkToken)), 'mark-without-event') },
      { ALT: () => this.junk(this.taken(this.CONSUME(T.Annotated)), 'annotation-without-event') },
      { ALT: () => this.junk(this.taken(this.CONSUME(T.Member)), 'member-without-chord') },
      { ALT: (): Item => ({ kind: 'omit', ...spanOf(this.taken(this.CONSUME(T.Omit))) }) },
      { ALT: () => this.junk(this.taken(this.CONSUME(T.OpenQuote)), 'unclosed-string') },
      { ALT: () => this.curlyQuoted(this.taken(this.CONSUME(T.CurlyQuoted))) },
      { ALT: () => this.slip(this.taken(this.CONSUME(T.JunkToken))) },
    ];
    const takeItem = (): void => {
      const one = this.OR<Item>(item);
      this.stack[this.height++] = one;
    };
    this.items = this.RULE('items', (): Item[] => {
      const start = this.height;
      this.MANY(takeItem);
      const own = this.stack.slice(start, this.height);
      this.height = start;
      return own;
    });

    this.performSelfAnalysis();
  }

  /**
   * Parses the tokens of one bar, its barline the last of them; brackets must be in balance.
   * @param problems takes what is wrong with them
   * @param before the bar before it in the lane
   */
  parseBar(tokens: IToken[], problems: ProblemList, before: Segment | undefined, after: IToken | undefined): ParsedBar {
    this.start(tokens, problems, -1);
    this.before = before;
    this.after = after;
    const items = this.items();
    const last = items.at(-1);
    const bar = last?.kind === 'barline' ? last : undefined;
    if (bar !== undefined) items.length--;
    this.refuseOmit(items);
    // The barline stands beside the items, and a copy has no room for it.
    return { items: bar === undefined ? items : items.slice(), bar, broken: this.broken };
  }

  /** Parses what belongs to the opening barline of a lane: marks and annotations glued to it, the barline of the next line. */
  parseOpening(tokens: IToken[], problems: ProblemList): LaneTree['opening'] {
    this.start(tokens, problems, 0);
    return this.opening();
  }

  private start(tokens: IToken[], problems: ProblemList, lastEnd: number): void {
    this.problems = problems;
    this.broken = false;
    this.afterJunk = false;
    this.told = undefined;
    this.lastEnd = lastEnd;
    this.height = 0;
    this.input = tokens;
  }

  // ─── what the rules make ─────────────────────────────────────────────────────────────────────────────────────────

  /**
   * A token. While chevrotain records the grammar a choice among tokens gives none, and others have no place; nodes made of
   * such would teach the engine to keep every place as a fraction, in a box of its own.
   */
  private known(token: IToken): IToken {
    return this.RECORDING_PHASE ? RECORDED : token;
  }

  private isSuffixNext(): boolean {
    const { tokenType } = this.LA(1);
    return tokenType === T.MarkToken || tokenType === T.Annotated || this.RECORDING_PHASE;
  }

  private taken(read: IToken): IToken {
    const token = this.known(read);
    this.afterJunk = junkTokens.has(token.tokenType);
    this.lastEnd = endOf(token);
    return token;
  }

  /** A token that belongs to the one before it. */
  private glued(read: IToken, code: FindingCode): IToken {
    const token = this.known(read);
    this.expectGlued(token, code);
    return this.taken(token);
  }

  /** Begins an event. */
  private begin(what: EventWhat, read: IToken): IToken {
    const token = this.taken(read);
    this.eventStart = token.startOffset;
    this.written = beginning(what, token.image);
    return token;
  }

  /** One sign more of the event that was begun. */
  private goOn(read: IToken, code: FindingCode): void {
    const token = this.glued(read, code);
    this.written = goingOn(this.written, token.image, token.startOffset - this.eventStart);
  }

  private report(code: FindingCode, at: Span, slots: Slots = {}, ...fixes: readonly Fix[]): void {
    this.problems.push(problemOf(code, at, slots, fixes));
  }

  private expectGlued(token: IToken, code: FindingCode): void {
    if (token.startOffset <= this.lastEnd) return;
    this.report(code, spanOf(token), { text: token.image }, gluing(this.lastEnd, token.startOffset));
  }

  private expectApart(token: IToken, code: FindingCode): void {
    if (token.startOffset !== this.lastEnd) return;
    const edits = [spaceAt(token.startOffset)];
    this.report(code, spanOf(token), { text: token.image }, { title: 'put white space before it', edits });
  }

  private value(token: IToken): Item {
    const form = valueFormOf(token.image);
    if (form === undefined) return { kind: 'junk', ...spanOf(token) };
    if (form.duration === undefined) {
      this.broken = true;
      if (token !== this.told) this.report('impossible-value', spanOf(token), { text: token.image });
    }
    return { kind: 'value', pos: token.startOffset, len: token.image.length, form };
  }

  private lost(token: IToken): Item {
    const rest = token.image.slice('lost'.length).trim();
    const form = rest === '' || rest === '?' ? undefined : valueFormOf(rest);
    if (rest === '') return this.lostWithoutAmount(token);
    if (form !== undefined && form.duration === undefined) {
      this.broken = true;
      this.report('impossible-value', spanOf(token), { text: rest });
    }
    return { kind: 'lost', ...spanOf(token), ...(form === undefined ? {} : { form }) };
  }

  private lostWithoutAmount(token: IToken): Junk {
    this.broken = true;
    const at = spanOf(token);
    const next = this.LA(1);
    if (next.image === 'bar') this.told = next;
    this.problems.push(problemOf('lost-without-value', at, {}, lostAmount(this.around(token)).map(mendingAt(at))));
    return { kind: 'junk', ...at };
  }

  private beam(read: IToken): Item {
    const token = this.known(read);
    this.expectApart(token, 'beam-glued');
    this.taken(token);
    return { kind: 'beam', ...spanOf(token), join: token.image === '&' };
  }

  private words(token: IToken): Item {
    return { kind: 'words', ...spanOf(token), text: unquoted(token.image) };
  }

  private curlyQuoted(token: IToken): Item {
    const inner = token.image.replace(/[“”„«»‟]/g, '');
    this.broken = true;
    const edits = [{ ...spanOf(token), text: `"${inner}"` }];
    const slots = { quote: token.image.charAt(0) };
    this.report('typographic-quotes', spanOf(token), slots, { title: 'write straight quotes', edits });
    return { kind: 'junk', ...spanOf(token) };
  }

  private round(token: IToken): Item {
    const item = roundItem(token, this.LA(-1), this.problems);
    if (item.kind === 'junk') this.broken = true;
    return item;
  }

  /** A change or words: a sign with round brackets glued to it would be another thing. */
  private roundApart(read: IToken): IToken {
    const token = this.known(read);
    const [before, next] = [this.LA(-1).tokenType, this.LA(1)];
    const [start, end] = [token.startOffset, endOf(token)];
    const isGluedBefore = start === this.lastEnd && !mayLeadRound.has(before);
    const isGluedAfter = end === next.startOffset && !mayFollowRound.has(next.tokenType);
    this.taken(token);
    // Of words that say where a sign is drawn another finding speaks.
    if ((!isGluedBefore && !isGluedAfter) || isPlaceOfSign(token)) return token;
    const [at, slots] = [spanOf(token), { text: token.image }];
    if (isGluedAfter && gluedTokens.has(next.tokenType)) this.report('bracket-glued', at, slots);
    else {
      const edits = [...(isGluedBefore ? [spaceAt(start)] : []), ...(isGluedAfter ? [spaceAt(end)] : [])];
      this.report('bracket-glued', at, slots, { title: 'put white space around it', edits });
    }
    return token;
  }

  private junk(token: IToken, code: FindingCode): Junk {
    this.broken = true;
    this.report(code, spanOf(token), { text: token.image.slice(0, 40) });
    return { kind: 'junk', ...spanOf(token) };
  }

  private slip(token: IToken): Junk {
    this.broken = true;
    // Brackets out of balance have been reported already.
    if (this.RECORDING_PHASE || token === this.told || bracketJunk.test(token.image)) {
      return { kind: 'junk', ...spanOf(token) };
    }
    const problem = slipProblem(token.image, this.around(token));
    // `c5"zz`: what makes no sense here is the quotation mark, of which its own finding speaks.
    if (problem.code === 'not-understood' && this.isGluedToOpenQuote(token)) return { kind: 'junk', ...spanOf(token) };
    this.problems.push(problem);
    return { kind: 'junk', ...spanOf(token) };
  }

  /** What stands around the token that was taken last. */
  private around(token: IToken): Around {
    return {
      slip: spanOf(token),
      before: (count) => this.LA(-count),
      next: this.LA(1),
      goingOn: () => this.goingOn(),
      barBefore: this.before,
    };
  }

  /** The next token, or the first behind the next barline and what is glued to it, be it in the next bar. */
  private goingOn(): IToken {
    let count = 1;
    const isOfBarline = ({ tokenType }: IToken): boolean =>
      ofBarline.has(tokenType) || (count > 1 && (tokenType === T.MarkToken || tokenType === T.Annotated));
    while (isOfBarline(this.LA(count))) count++;
    const next = this.LA(count);
    return next.tokenType === EOF ? (this.after ?? next) : next;
  }

  private isGluedToOpenQuote(token: IToken): boolean {
    const next = this.LA(1);
    return next.tokenType === T.OpenQuote && next.startOffset === endOf(token);
  }

  /** A barline with what is glued to it. */
  private barline(token: IToken, suffixes: readonly Suffix[]): Barline {
    if (this.RECORDING_PHASE) return RECORDED_BAR;
    return { ...barlineOf(token, this.problems), len: this.lastEnd - token.startOffset, suffixes };
  }

  private joined(first: Barline, further: readonly Barline[]): Barline {
    return this.RECORDING_PHASE || further.length === 0 ? first : joinedBarline(first, further, this.problems);
  }

  private refuseOmit(items: readonly Item[]): void {
    for (const item of items) {
      if (item.kind !== 'omit') continue;
      this.broken = true;
      this.report('omit-misplaced', item);
    }
  }

  /** The bracket of a span, perhaps without its head or with one in other signs. */
  private opened(read: IToken): IToken {
    const open = this.taken(read);
    const next = this.LA(1);
    const isBare = open.tokenType === T.BareOpen;
    // What a head lacks was not understood; most heads lack nothing.
    if (!isBare && next.tokenType !== T.JunkToken) return open;
    const meant = headMeant(open, next);
    if (meant !== undefined) this.told = next;
    else if (!isBare) return open;
    const at = spanOf(open);
    const both = { pos: at.pos, len: endOf(next) - at.pos };
    const fixes = meant === undefined ? [] : [replacing(both, meant)];
    if (isBare) this.report('span-without-head', at, {}, ...fixes);
    else this.report('typed-otherwise', both, { text: `${open.image} ${next.image}`, meant: `${meant}` }, ...fixes);
    return open;
  }

  private groupOf(open: IToken, items: readonly Item[], suffixes: readonly Suffix[]): SpanItem {
    if (items.some?.((item) => item.kind === 'omit')) this.refuseOmit(items);
    const head = spanHeadOf(open.image) ?? { text: '{' };
    const at = spanOf(open);
    // A head that is missing may be that of a tuplet.
    if (open.tokenType === T.BareOpen || !checkSpanHead(head, at, this.problems)) this.broken = true;
    return { kind: 'span', pos: open.startOffset, len: this.lastEnd - open.startOffset, head, items, suffixes };
  }

  private optionOf(open: IToken, items: readonly Item[]): Option {
    const labels = labelsAt(optionHeadOf(open.image).labels, open.startOffset);
    if (open.tokenType === T.BareOptions || open.tokenType === T.BareNext) {
      this.broken = true;
      this.report('option-without-label', { pos: open.startOffset, len: 1 });
    }
    const omit = items.length === 1 && items[0]?.kind === 'omit';
    if (!omit && items.some?.((item) => item.kind === 'omit')) this.refuseOmit(items);
    const pos = labels[0]?.pos ?? endOf(open);
    return { pos, len: Math.max(this.lastEnd - pos, 0), labels, omit, items };
  }

  private optionsOf(open: IToken, options: readonly Option[], suffixes: readonly Suffix[]): OptionsItem {
    const { place, reasons } = optionHeadOf(open.image);
    const pos = open.startOffset;
    const len = this.lastEnd - pos;
    const given = reasons.length === 0 ? noReasons : reasons.map(({ text, at }) => annotationOf(text, pos + at));
    if (place === undefined) return { kind: 'options', pos, len, reasons: given, options, suffixes };
    const named = { text: place, pos: pos + 1, len: place.length };
    return { kind: 'options', pos, len, reasons: given, options, suffixes, place: named };
  }
}
