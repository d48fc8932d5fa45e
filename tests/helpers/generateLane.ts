/** One voice through a system, written note by note so that every bar has its exact length. */
import type { Chance } from './chance';

/** Time is counted in hundred-and-twenty-eighths of a semibreve. */
export const SEMIBREVE = 128;
/** No event is shorter than a demisemiquaver, so that whatever is left of a bar can be filled. */
const GRAIN = 4;

interface Value {
  readonly text: string;
  readonly units: number;
}

const withDots = (base: string, units: number): Value[] =>
  [0, 1, 2].map((dots) => ({ text: base + '.'.repeat(dots), units: 2 * units - units / 2 ** dots }));

/** Values without a proportion, the plain crotchet first. */
const values: readonly Value[] = [
  ...[4, 8, 2, 16, 1, 32].flatMap((base) => withDots(`${base}`, SEMIBREVE / base)),
  { text: 'B', units: 2 * SEMIBREVE },
].filter(({ units }) => units % GRAIN === 0);

const letters = ['c', 'd', 'e', 'f', 'g', 'a', 'b'] as const;

/** A pitch by its diatonic step: octave · 7 + letter. */
interface Pitch {
  readonly step: number;
  /** As written: `#`, `b(n)` … */
  readonly sign: string;
}

/** e6: no chord reaches beyond the keyboard. */
const HIGHEST = 44;

const letterOf = (step: number): string => letters[step % 7] ?? 'c';
const octaveOf = (step: number): number => Math.floor(step / 7);

/** What is in force where the next sign is typed. */
interface TypingState {
  value: string | undefined;
  octave: number | undefined;
}

/** What a voice carries from system to system. */
export interface VoiceCarry {
  step: number;
  /** The last event is tied to the next, which takes up all its pitches. */
  tied: readonly Pitch[] | undefined;
  /** Curves begun and not ended. */
  curves: number;
  /** Time of the last event that stands over the barline. */
  over: number;
}

export const freshCarry = (step: number): VoiceCarry => ({ step, tied: undefined, curves: 0, over: 0 });

/** What a passage may hold. */
export interface Allowed {
  /** Names of witnesses, for options; none where options have no place. */
  readonly witnesses: readonly string[];
  /** Places made here are written down. */
  readonly places: string[];
  /** Spans, options and tuplets. */
  readonly brackets: boolean;
  /** Ties and curves that go on after the passage. */
  readonly open: boolean;
}

/** How much a passage writes of what sub-lanes count. */
export interface Counts {
  /** Notes, chords, rests and lone `=`. */
  figures: number;
  /** Notes not tied to the one before. */
  syllables: number;
}

export interface BarTask {
  /** Units that the bar, or this part of it, takes. */
  readonly units: number;
  /** No system end or beginning cuts it: it may be filled by `rbar` or `__`. */
  readonly whole: boolean;
  /** Nothing stands over its end: no tie, no curve, no note that runs on. */
  readonly closed: boolean;
  /** Units of the next bar in the same system, for a note that runs on into it; 0 where there is none. */
  readonly next: number;
}

const signNames = ['zz', 'pince', 'zs', 'cb', 'ca', 's', 'ss', 'x', 'plus', 'turn', 'zl', 'zhb'] as const;

export class LaneWriter {
  readonly counts: Counts = { figures: 0, syllables: 0 };
  private state: TypingState = { value: undefined, octave: undefined };
  private pieces: string[] = [];
  /** The last event can be repeated by a lone `=`. */
  private repeatable = false;
  private inBrackets = false;
  private lastStep = 0;
  private moved = false;

  constructor(
    private readonly chance: Chance,
    readonly carry: VoiceCarry,
    private readonly range: { readonly low: number; readonly high: number },
    private allowed: Allowed,
    /** Where another stave lies. */
    private readonly neighbour: 'up' | 'down' | undefined,
  ) {}

  /** Value and octave are typed afresh, as after an empty bar. */
  refresh(): void {
    this.state = { value: undefined, octave: undefined };
  }

  /** The text of a bar without its barline. */
  bar(task: BarTask): string {
    this.pieces = [];
    const { tied, over } = this.carry;
    this.carry.over = 0;
    const units = task.units - over;
    const quiet = tied === undefined && over === 0 && (this.carry.curves === 0 || !task.closed);
    if (units > 0 && task.whole && quiet && this.chance.happens(6)) this.filler();
    else this.events(units, task);
    return this.pieces.join(' ');
  }

  private filler(): void {
    const isRest = this.chance.happens(60);
    this.put(isRest ? 'rbar' : '__');
    this.repeatable = false;
    if (isRest) this.counts.figures++;
  }

  private put(text: string): void {
    this.pieces.push(text);
  }

  // ─── time ────────────────────────────────────────────────────────────────────────────────────────────────────────

  /** Events and groups that fill so many units. */
  private events(units: number, task: BarTask): void {
    let left = units;
    while (left > 0) {
      // Where curves must end, an event that can end them comes last.
      const room = task.closed ? left - GRAIN : left;
      const group = this.allowed.brackets && this.carry.tied === undefined && room > 0 ? this.group(room) : 0;
      if (group > 0) left -= group;
      else left -= this.single(left, task);
    }
  }

  private fitting(left: number): Value {
    const fit = values.filter(({ units }) => units <= left);
    // What cannot be divided further is left to the smallest value.
    return this.chance.pick(fit as [Value, ...Value[]]) ?? { text: '32', units: GRAIN };
  }

  private typeValue(text: string): void {
    if (this.state.value === text) return;
    this.put(text);
    this.state.value = text;
  }

  private single(left: number, task: BarTask): number {
    const value = this.fitting(left);
    const isLast = value.units === left && !this.inBrackets;
    if (isLast && this.runsOn(left, task)) return left;
    this.decorateBefore();
    this.typeValue(value.text);
    const mayTie = !this.inBrackets && (!isLast || (this.allowed.open && !task.closed));
    this.event(mayTie, isLast && task.closed);
    if (!isLast && value.units <= 16 && !this.inBrackets && this.chance.happens(8)) this.beam(left - value.units);
    return value.units;
  }

  /** ` & ` or ` , ` before another short note. */
  private beam(left: number): void {
    if (left < 16 || this.carry.tied !== undefined) return;
    this.put(this.chance.pick(['&', ',']));
    const text = left >= 16 ? '8' : '16';
    this.typeValue(text);
  }

  /** A note longer than its bar, with no tie drawn. */
  private runsOn(left: number, { whole, closed, next }: BarTask): boolean {
    if (closed || !whole || next === 0 || this.carry.tied !== undefined || !this.chance.happens(4)) return false;
    const longer = values.find(({ units }) => units > left && units - left <= next - GRAIN && units <= 2 * left);
    if (longer === undefined) return false;
    const dot = longer.text.endsWith('.') && this.chance.happens(30) ? '(dot)' : '';
    this.typeValue(longer.text);
    this.put(`${this.note(this.pitch())}'through${dot}`);
    this.count();
    this.repeatable = false;
    this.carry.over = longer.units - left;
    return true;
  }

  // ─── events ──────────────────────────────────────────────────────────────────────────────────────────────────────

  private count(isTied = false): void {
    this.counts.figures++;
    if (!isTied) this.counts.syllables++;
  }

  private event(mayTie: boolean, isEnd: boolean): void {
    const { tied } = this.carry;
    if (tied !== undefined) this.tiedEvent(tied, mayTie, isEnd);
    else if (this.chance.happens(8) && !(isEnd && this.carry.curves > 0)) this.silence();
    else this.struck(mayTie, isEnd);
  }

  private tiedEvent(pitches: readonly Pitch[], mayTie: boolean, isEnd: boolean): void {
    this.carry.tied = undefined;
    if (this.repeatable && this.chance.happens(40)) this.put(`=${this.suffixes(false)}${this.curve(isEnd)}`);
    else {
      const again = mayTie && this.chance.happens(20);
      // The written accidental is carried by the tie.
      this.chord(
        pitches.map(({ step }) => ({ step, sign: '' })),
        again ? '=' : '',
        isEnd,
      );
      if (again) this.carry.tied = pitches;
    }
    this.count(true);
    this.repeatable = true;
  }

  private silence(): void {
    const isRest = this.chance.happens(70);
    this.put(`${isRest ? 'r' : '_'}${this.chance.happens(10) ? "'fermata" : ''}`);
    if (isRest) this.counts.figures++;
    this.repeatable = false;
  }

  private struck(mayTie: boolean, isEnd: boolean): void {
    const pitches = this.chance.happens(15) ? this.chordPitches() : [this.pitch()];
    const ties = mayTie && this.chance.happens(12);
    const form = ties ? this.chance.pick(['=', '=', '=', '[=]', '=?'] as const) : '';
    this.chord(pitches, form, isEnd);
    this.count();
    this.repeatable = true;
    if (ties) this.carry.tied = pitches;
  }

  private pitch(): Pitch {
    const { low, high } = this.range;
    const moved = this.carry.step + this.chance.pick([1, -1, 0, 2, -2, 3, -4, 5, -7, 7] as const);
    this.carry.step = moved < low ? low : Math.min(moved, high);
    const sign = this.chance.happens(12) ? this.chance.pick(['#', 'b', 'n', '[#]', '(n)', '[b]', '#(#)'] as const) : '';
    return { step: this.carry.step, sign: sign === '#(#)' ? '(#)' : sign };
  }

  private chordPitches(): Pitch[] {
    const root = this.pitch();
    const above = this.chance.pick<readonly number[]>([[2], [4], [2, 4], [7], [2, 4, 7]]);
    return [root, ...above.map((step) => ({ step: root.step + step, sign: '' })).filter(({ step }) => step <= HIGHEST)];
  }

  private note({ step, sign }: Pitch): string {
    const octave = octaveOf(step);
    // A leap of a seventh without a digit looks like a slip.
    const isLeap = Math.abs(step - this.lastStep) > 5;
    const isTyped = this.state.octave !== octave || isLeap || this.chance.happens(5);
    this.state.octave = octave;
    this.lastStep = step;
    return `${letterOf(step)}${sign}${isTyped ? octave : ''}`;
  }

  private chord(pitches: readonly Pitch[], tie: string, isEnd: boolean): void {
    const isChord = pitches.length > 1;
    const members = pitches.map((pitch, i) => {
      const last = i === pitches.length - 1;
      const doubt = tie === '' && this.chance.happens(2) ? '?' : '';
      return `${this.note(pitch)}${doubt}${tie}${this.suffixes(isChord)}${last ? this.curve(isEnd) : ''}`;
    });
    this.put(members.join('-'));
  }

  /** Signs, fingers and annotations at a note. */
  private suffixes(isChord: boolean): string {
    let text = '';
    if (this.chance.happens(10)) text += this.sign(isChord);
    if (this.chance.happens(6)) text += this.chance.pick(["'3", "'4-5", "'1", "'dot", "'stroke", "'fermata"] as const);
    if (this.chance.happens(3))
      text += this.chance.pick(['*n1', '*"blotted"', '*"two strokes, ""paler"" ink"'] as const);
    return text;
  }

  private sign(isChord: boolean): string {
    const name = isChord && this.chance.happens(20) ? 'arp' : this.chance.pick(signNames);
    const form = this.chance.pick([
      '',
      '',
      '',
      '[]',
      '?',
      '(above)',
      '(from L)',
      ':french',
      ':!plain',
      '?(below):K',
    ] as const);
    const sign = form === '[]' ? `'[${name}]` : `'${name}${form}`;
    return sign + (form === '' && this.chance.happens(10) ? "'#" : '');
  }

  /** Ends curves, all of them at an end; perhaps begins one. */
  private curve(isEnd: boolean): string {
    if (isEnd || this.inBrackets) {
      const ends = this.inBrackets ? 0 : this.carry.curves;
      if (!this.inBrackets) this.carry.curves = 0;
      return "'.".repeat(ends);
    }
    if (this.carry.curves > 0 && this.chance.happens(40)) {
      this.carry.curves--;
      return "'.";
    }
    if (this.carry.curves < 2 && this.chance.happens(6)) {
      this.carry.curves++;
      return "'u";
    }
    return this.chance.happens(1) ? this.chance.pick(["'u~", "'.~"] as const) : '';
  }

  private decorateBefore(): void {
    if (this.chance.happens(3))
      this.put(this.chance.pick(['"Gravement"', '(below "tr.")', '(above "a ""2""")'] as const));
    if (this.carry.tied === undefined && this.chance.happens(4)) this.smallNotes();
    if (this.chance.happens(2)) this.put(this.chance.pick(['(stems up)', '(stems down)'] as const));
    if (!this.inBrackets && this.neighbour !== undefined && this.chance.happens(2)) this.move(this.neighbour);
  }

  /** To the stave above or below and back. */
  private move(neighbour: 'up' | 'down'): void {
    this.put(this.moved ? '(home)' : `(${neighbour})`);
    this.moved = !this.moved;
  }

  /** Afterwards value and octave are as before the bracket. */
  private smallNotes(): void {
    const before = { ...this.state };
    const { step } = this.carry;
    const value = this.chance.pick(['16', '8', '32'] as const);
    const notes = Array.from({ length: this.chance.between(1, 3) }, () => this.note(this.pitch()));
    this.put(`{small ${value} ${notes.join(' ')}}`);
    this.state = before;
    this.carry.step = step;
    this.repeatable = false;
  }

  // ─── groups ──────────────────────────────────────────────────────────────────────────────────────────────────────

  /** A tuplet, a span or options at most so long; the units that it takes, or 0. */
  private group(left: number): number {
    if (!this.chance.happens(9)) return 0;
    return this.chance.pick([this.tuplet, this.triplets, this.span, this.options, this.lost] as const).call(this, left);
  }

  private within(units: number): string {
    const outer = { pieces: this.pieces, inBrackets: this.inBrackets, allowed: this.allowed };
    this.pieces = [];
    this.inBrackets = true;
    this.allowed = { ...this.allowed, open: false, brackets: this.chance.happens(20), witnesses: [] };
    this.repeatable = false;
    this.events(units, { units, whole: false, closed: false, next: 0 });
    const text = this.pieces.join(' ');
    this.pieces = outer.pieces;
    this.inBrackets = outer.inBrackets;
    this.allowed = outer.allowed;
    this.repeatable = false;
    return text;
  }

  private tuplet(left: number): number {
    const unit = this.chance.pick([16, 32, 8] as const);
    const [n, m] = this.chance.pick<readonly [number, number]>([
      [3, 2],
      [5, 4],
      [6, 4],
      [2, 3],
    ]);
    if (m * unit > left) return 0;
    this.state.value = undefined;
    const outer = this.allowed;
    this.allowed = { ...outer, brackets: false };
    const inner = this.plain(n * unit);
    this.allowed = outer;
    this.put(`{${n}in${m} ${inner}}${this.chance.happens(5) ? '*n1' : ''}`);
    return m * unit;
  }

  /** Like {@link within}, and no bracket in it. */
  private plain(units: number): string {
    const outer = { pieces: this.pieces, inBrackets: this.inBrackets };
    this.pieces = [];
    this.inBrackets = true;
    this.repeatable = false;
    this.events(units, { units, whole: false, closed: false, next: 0 });
    const text = this.pieces.join(' ');
    Object.assign(this, outer);
    this.repeatable = false;
    return text;
  }

  /** Three notes of a triplet without its figure. */
  private triplets(left: number): number {
    const [text, units] = this.chance.pick<readonly [string, number]>([
      ['8x', 32],
      ['16x', 16],
      ['4x', 64],
    ]);
    if (units > left) return 0;
    this.typeValue(text);
    for (let i = 0; i < 3; i++) {
      this.put(this.note(this.pitch()) + this.suffixes(false));
      this.count();
    }
    this.repeatable = true;
    return units;
  }

  private span(left: number): number {
    const units = this.part(left);
    const head = this.chance.pick([
      'unclear',
      'supplied',
      'overdot',
      'inegal 2:1:french',
      'inegal',
      'literal',
      'snap:!plain',
      'black',
      'lig',
      'added:K.2',
      'deleted',
      'assimilate',
    ] as const);
    this.put(`{${head} ${this.within(units)}}${this.chance.happens(10) ? '*"so in both"' : ''}`);
    return units;
  }

  private options(left: number): number {
    const [first = '', second = ''] = this.allowed.witnesses;
    if (second === '') return 0;
    const units = this.part(left);
    const labels = this.chance.pick([
      [first, second],
      [first, `${second}?`],
      ['sic', 'corr'],
      [`${first}.2`, second],
    ] as const);
    const before = { state: { ...this.state }, lastStep: this.lastStep };
    const main = this.within(units);
    // Sub-lanes are counted against the first option; each begins from the state before the bracket.
    const counted = { ...this.counts };
    Object.assign(this, before);
    const other = this.within(units);
    Object.assign(this.counts, counted);
    this.put(`<${this.place()}${labels[0]}: ${main} ; ${labels[1]}: ${other}>${this.chance.happens(10) ? '*n1' : ''}`);
    this.refresh();
    return units;
  }

  /** Whether nothing leads into what comes next. */
  get isAtRest(): boolean {
    return this.carry.tied === undefined && this.carry.over === 0 && this.allowed.witnesses.length > 1;
  }

  /** Two bars as options that hold the barline between them; `counted` hears when the first is counted. */
  twoBars(first: number, second: number, counted: () => void): [string, string] {
    const [one = '', other = ''] = this.allowed.witnesses;
    const before = { state: { ...this.state }, lastStep: this.lastStep };
    const main = this.within(first);
    counted();
    const mainSecond = this.within(second);
    const counts = { ...this.counts };
    Object.assign(this, before);
    const else1 = this.within(first);
    const else2 = this.within(second);
    Object.assign(this.counts, counts);
    this.refresh();
    return [`<${this.place()}${one}: ${main}`, `${mainSecond} ; ${other}: ${else1} | ${else2}>`];
  }

  private place(): string {
    if (!this.chance.happens(40)) return '';
    const name = `v${this.allowed.places.length + 1}`;
    this.allowed.places.push(name);
    return `${name}${this.chance.happens(30) ? '*n1' : ''} `;
  }

  private lost(left: number): number {
    if (!this.chance.happens(20)) return 0;
    const value = this.fitting(left);
    this.put(`lost ${value.text}`);
    this.repeatable = false;
    return value.units;
  }

  /** Some or all of what is left, so that the rest can be filled. */
  private part(left: number): number {
    const fit = [16, 32, 64, 8, 48, 96].filter((units) => units <= left);
    return fit.length === 0 ? left : this.chance.pick(fit as [number, ...number[]]);
  }
}
