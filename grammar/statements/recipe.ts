/** Recipes: how a table says that a sign is played. */
import type { Fix } from '../findings/finding';
import { replacing } from '../findings/fixes';
import { nearest } from '../nearest';
import type { AccidentalSign, Recipe, RecipePhrase, RecipeStep, Span } from '../tree';
import { isBeatValue } from '../vocabulary/meters';
import type { recipeForms } from '../vocabulary/statements';
import type { Token } from './lexer';
import type { Report } from './readers';

const stepPattern = /^([+-]?)(\d{1,2})(##|#|bb|b|n)?$/;
const sharePattern = /^(\d{1,3})\/(\d{1,3})$/;
const numberPattern = /^\d{1,3}(?:\.\d{1,3})?$/;

/** Steps reach an octave at most. */
const FARTHEST_STEP = 7;
const SMALLEST_SHARE = 99;
/** Notes a second or a pulse: more are not played. */
const MOST_NOTES = 64;

/** Words inside a phrase. */
const FOLLOWING = ['repeated', 'for', 'at', 'leaned', 'beat', 'second', 'pulse', 'up', 'down', 'filled'];

type Share = { readonly n: number; readonly d: number };
type Speed = NonNullable<RecipePhrase['speed']>;

const stretch = (first: Span, last: Span): Span => ({ pos: first.pos, len: last.pos + last.len - first.pos });
const inserting = (title: string, pos: number, text: string): Fix => ({ title, edits: [{ pos, len: 0, text }] });

/** Commas glued between two words are taken as if they stood apart. */
function parted(tokens: readonly Token[], report: Report): Token[] {
  return tokens.flatMap((token): Token[] => {
    if (token.kind !== 'word' || !token.text.includes(',')) return [token];
    const spaced = token.text.split(',').join(', ');
    report('recipe-comma', token, { word: token.text }, [replacing(token, spaced)]);
    let pos = token.pos;
    return token.text.split(/(,)/).map((text) => {
      const piece: Token = { ...token, kind: text === ',' ? ',' : 'word', text, pos, len: text.length };
      pos += text.length;
      return piece;
    });
  });
}

class RecipeReader {
  private index = 0;
  private start: Recipe['start'];
  private unresolved: string | undefined;
  private extended: string | undefined;
  private readonly phrases: RecipePhrase[] = [];
  /** Which phrases last to the end of the note. */
  private readonly endless = new Set<number>();

  constructor(
    private readonly tokens: readonly Token[],
    private readonly colon: Token,
    private readonly report: Report,
    private readonly taken: (form: string) => void,
  ) {}

  /** Reads phrase by phrase; what is not understood is passed over to the next comma. */
  read(): Recipe {
    while (this.peek() !== undefined) {
      this.phrase();
      this.endPhrase();
    }
    this.judge();
    const last = this.tokens.at(-1) ?? this.colon;
    return {
      ...(this.start === undefined ? {} : { start: this.start }),
      ...(this.unresolved === undefined ? {} : { unresolved: this.unresolved }),
      ...(this.extended === undefined ? {} : { extends: this.extended }),
      phrases: this.phrases,
      ...stretch(this.tokens[0] ?? this.colon, last),
    };
  }

  // ── tokens ──

  private peek(ahead = 0): Token | undefined {
    return this.tokens[this.index + ahead];
  }

  private get last(): Token {
    return this.tokens[this.index - 1] ?? this.colon;
  }

  private isNext(text: string, ahead = 0): boolean {
    const token = this.peek(ahead);
    return token !== undefined && token.kind !== 'string' && token.text === text;
  }

  private accept(text: string): boolean {
    if (!this.isNext(text)) return false;
    this.index++;
    return true;
  }

  /** The same of a word with a slip in it, which is reported. */
  private acceptNearly(text: string): boolean {
    if (this.accept(text)) return true;
    const token = this.peek();
    if (token?.kind !== 'word' || nearest(token.text, [text]) === undefined) return false;
    this.index++;
    this.report('recipe-word', token, { word: token.text, expected: `\`${text}\`` }, [replacing(token, text)]);
    return true;
  }

  private acceptWord(): Token | undefined {
    const token = this.peek();
    if (token?.kind !== 'word') return undefined;
    this.index++;
    return token;
  }

  // ── phrases ──

  private readonly heads: Readonly<Record<string, () => void>> = {
    on: () => this.beginning('on beat'),
    before: () => this.beginning('before beat'),
    extends: () => this.extension(),
    unresolved: () => this.reason(),
    hold: () => this.lasting('hold'),
    rest: () => this.lasting('rest'),
    spread: () => this.spreading(),
  };

  private beginsPhrase(token: Token | undefined): boolean {
    if (token === undefined) return false;
    return (
      token.kind === '(' ||
      (token.kind === 'word' && (Object.hasOwn(this.heads, token.text) || stepPattern.test(token.text)))
    );
  }

  private phrase(): void {
    const token = this.peek();
    if (token?.kind === 'word' && Object.hasOwn(this.heads, token.text)) this.heads[token.text]?.();
    else if (this.beginsPhrase(token)) this.steps();
  }

  /** After a phrase stands a comma; where it was forgotten the next phrase begins, anything else is passed over. */
  private endPhrase(): void {
    if (this.last.kind === '(') this.missing('steps such as +1 0');
    const token = this.peek();
    if (token === undefined || this.accept(',')) return;
    if (this.last.kind === '(') this.skip();
    else if (this.beginsPhrase(token) && this.last !== this.colon && this.last.kind !== ',') {
      const fix = inserting('put a comma between the phrases', this.last.pos + this.last.len, ',');
      this.report('recipe-comma', token, { word: token.text }, [fix]);
    } else {
      this.strange(token);
      this.skip();
    }
  }

  /** Passes over the rest of a phrase. */
  private skip(): void {
    while (this.peek() !== undefined && !this.isNext(',')) this.index++;
    this.accept(',');
  }

  private strange(token: Token): void {
    const meant = nearest(token.text, [...Object.keys(this.heads), ...FOLLOWING]);
    const fixes = meant === undefined ? [] : [replacing(token, meant)];
    this.report(
      'recipe-word',
      token,
      { word: token.text, expected: meant === undefined ? 'steps such as 0 +1 -1, `hold` or `rest`' : `\`${meant}\`` },
      fixes,
    );
  }

  private missing(expected: string): void {
    this.report('missing-argument', this.last, { where: this.last.text, expected });
  }

  private beginning(start: NonNullable<Recipe['start']>): void {
    const head = this.acceptWord();
    if (head === undefined) return;
    if (!this.acceptNearly('beat')) this.missing('`beat`');
    if (this.start !== undefined || this.phrases.length > 0) this.report('recipe-start-first', head, { word: start });
    this.start ??= start;
    this.taken(start);
  }

  private extension(): void {
    const head = this.acceptWord();
    const row = this.acceptWord();
    if (head === undefined || row === undefined) {
      this.missing('the sign whose row comes first');
      return;
    }
    if (this.phrases.length > 0 || this.extended !== undefined) this.report('recipe-extends-first', head, {});
    this.extended ??= row.text;
    this.taken('extends');
  }

  private reason(): void {
    this.index++;
    const reason = this.peek();
    if (reason?.kind !== 'string') {
      this.unresolved ??= '';
      this.missing('the reason in quotes');
      return;
    }
    this.index++;
    this.unresolved ??= reason.text;
    this.taken('unresolved');
  }

  private lasting(kind: 'hold' | 'rest'): void {
    const head = this.acceptWord();
    if (head === undefined) return;
    const limited = sharePattern.test(this.peek()?.text ?? '');
    const share = limited ? this.share() : undefined;
    this.taken(kind);
    this.push(head, { kind, steps: [], repeated: false, ...(share === undefined ? {} : { share }) });
    if (!limited) this.endless.add(this.phrases.length - 1);
  }

  private spreading(): void {
    const head = this.acceptWord();
    if (head === undefined) return;
    const direction = (['up', 'down'] as const).find((word) => this.accept(word));
    if (direction === undefined) {
      this.missing('`up` or `down`');
      return;
    }
    this.taken('spread');
    this.taken(direction);
    const filled = this.accept('filled');
    if (filled) this.taken('filled');
    this.push(head, { kind: 'spread', steps: [], repeated: false, spread: { direction, filled } });
  }

  private push(first: Span, phrase: Omit<RecipePhrase, 'pos' | 'len'>): void {
    this.phrases.push({ ...phrase, ...stretch(first, this.last) });
  }

  // ── steps ──

  private steps(): void {
    const first = this.peek() ?? this.colon;
    const bracketed = this.accept('(');
    const steps = this.stepRun();
    // A bracket around nothing is passed over with what follows it.
    if (steps.length === 0 && bracketed) return;
    const repeated = bracketed ? this.closeRepeated(first) : this.unbracketed(first);
    if (repeated) this.taken('repeated');
    let [share, speed]: [Share | undefined, Speed | undefined] = [undefined, undefined];
    const leaned = this.accept('leaned');
    if (leaned) this.taken('leaned');
    for (;;) {
      if (share === undefined && this.accept('for')) share = this.shareAfterFor();
      else if (speed === undefined && this.accept('at')) speed = this.speed();
      else break;
    }
    if (steps.length > 0)
      this.push(first, {
        kind: 'steps',
        steps,
        repeated,
        ...(leaned ? { leaned } : {}),
        ...(share === undefined ? {} : { share }),
        ...(speed === undefined ? {} : { speed }),
      });
  }

  private stepRun(): RecipeStep[] {
    const steps: RecipeStep[] = [];
    for (let token = this.peek(); token?.kind === 'word' && stepPattern.test(token.text); token = this.peek()) {
      this.index++;
      const step = this.step(token);
      if (step !== undefined) steps.push(step);
    }
    return steps;
  }

  private step(token: Token): RecipeStep | undefined {
    const [, sign = '', digits = '', accidental] = stepPattern.exec(token.text) ?? [];
    const size = Number(digits);
    if (size > FARTHEST_STEP) {
      const range = { what: 'a step', low: -FARTHEST_STEP, high: FARTHEST_STEP };
      this.report('number-out-of-range', token, { word: token.text, ...range });
      return undefined;
    }
    if (sign === '' && size > 0) {
      this.report('step-without-sign', token, { word: token.text }, [replacing(token, `+${token.text}`)]);
    }
    this.taken('step');
    return {
      step: size === 0 ? 0 : sign === '-' ? -size : size,
      ...(accidental === undefined ? {} : { accidental: accidental as AccidentalSign }),
      pos: token.pos,
      len: token.len,
    };
  }

  /** `)` and `repeated`; brackets around steps mean nothing else. */
  private closeRepeated(opening: Token): boolean {
    if (!this.accept(')')) {
      const fix = inserting('close the bracket', this.last.pos + this.last.len, ')');
      this.report('recipe-bracket', opening, {}, [fix]);
    }
    if (!this.acceptNearly('repeated')) {
      const fix = inserting('add `repeated`', this.last.pos + this.last.len, ' repeated');
      this.report('missing-argument', this.last, { where: '( … )', expected: '`repeated`' }, [fix]);
    }
    return true;
  }

  private unbracketed(first: Token): boolean {
    const end = this.last.pos + this.last.len;
    if (!this.isNext('repeated')) return false;
    const edits = [
      { pos: first.pos, len: 0, text: '(' },
      { pos: end, len: 0, text: ')' },
    ];
    this.report('recipe-bracket', stretch(first, this.last), {}, [{ title: 'put the steps in brackets', edits }]);
    this.index++;
    return true;
  }

  // ── shares and speeds ──

  private shareAfterFor(): Share | undefined {
    this.taken('for');
    if (sharePattern.test(this.peek()?.text ?? '')) return this.share();
    this.missing('a share of the value, such as 1/2');
    return undefined;
  }

  private share(): Share | undefined {
    const token = this.acceptWord();
    const match = sharePattern.exec(token?.text ?? '');
    const [n, d] = [Number(match?.[1]), Number(match?.[2])];
    if (token !== undefined && n >= 1 && n <= d && d <= SMALLEST_SHARE) return { n, d };
    if (token !== undefined) this.report('share-out-of-range', token, { word: token.text });
    return undefined;
  }

  private speed(): Speed | undefined {
    const token = this.peek();
    if (token?.kind !== 'word' || !numberPattern.test(token.text)) {
      this.missing('a speed: 11 a second, 8 a pulse, or a note value');
      return undefined;
    }
    this.index++;
    const number = Number(token.text);
    if (this.accept('a')) return this.rate(token, number);
    this.taken('value');
    if (isBeatValue(number)) return { kind: 'value', number };
    this.report('wrong-argument', token, { word: token.text, expected: 'a note value such as 32' });
    return undefined;
  }

  private rate(token: Token, number: number): Speed | undefined {
    const unit = this.peek();
    const kind = (['second', 'pulse'] as const).find((word) => this.acceptNearly(word));
    if (kind === undefined) {
      // A misspelt word is judged where the phrase ends; nothing at all is missing here.
      if (unit === undefined || unit.kind === ',') this.missing('`second` or `pulse`');
      return undefined;
    }
    this.taken(`a ${kind}`);
    if (number >= 1 && number <= MOST_NOTES) return { kind, number };
    const range = { what: 'the number of notes', low: 1, high: MOST_NOTES };
    this.report('number-out-of-range', token, { word: token.text, ...range });
    return undefined;
  }

  // ── the whole ──

  private judge(): void {
    if (this.unresolved !== undefined) {
      if (this.phrases.length > 0) this.report('recipe-unresolved-alone', this.phrases[0] ?? this.colon, {});
      return;
    }
    const [first] = this.phrases;
    if (first === undefined) {
      if (this.extended === undefined) this.missing('a recipe, such as `on beat, 0 -1 0, hold`');
      return;
    }
    if (this.start === undefined && this.extended === undefined) {
      this.report('recipe-start-missing', first, {}, [inserting('begin on the beat', first.pos, 'on beat, ')]);
    }
    const open = [...this.endless].map((index) => this.phrases[index]);
    for (const phrase of open) {
      // A silence lasts to the end; a note may stand until what comes after it must begin.
      const ended = phrase?.kind === 'rest' ? phrase !== this.phrases.at(-1) : phrase !== open.at(-1);
      if (phrase !== undefined && ended) this.report('recipe-ended', phrase, { word: phrase.kind });
    }
  }
}

/** Reads the recipe that follows the colon of a table's row. `taken` hears each of {@link recipeForms} that is met. */
export const readRecipe = (
  tokens: readonly Token[],
  colon: Token,
  report: Report,
  taken: (form: keyof typeof recipeForms) => void,
): Recipe => new RecipeReader(parted(tokens, report), colon, report, taken).read();
