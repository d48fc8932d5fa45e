/**
 * The typed tree of a file.
 *
 * A file is cut into blocks (the statements before the first system, each system, the statements between systems);
 * a block holds statements and lanes. The tree of a statement or a lane depends on its own text alone, so equal texts
 * share one tree. Every node's `pos` counts UTF-16 units in the *joined text* of its statement or lane; only the block
 * list knows where that text stands in the file (see {@link Placed}).
 *
 * Parsing never fails: what cannot be understood is {@link Junk} with a {@link Problem}, and the rest goes on.
 */
import type { Problem } from './findings/finding';
import type { Time } from './time';
import type { NameRole } from './vocabulary/names';

/** A stretch of the joined text. */
export interface Span {
  readonly pos: number;
  readonly len: number;
}

// ─── the file ────────────────────────────────────────────────────────────────────────────────────────────────────

export interface FileTree {
  readonly text: string;
  readonly blocks: readonly Block[];
  /** Offset of the first character of each line of the file. */
  readonly lineStarts: readonly number[];
}

/** What the text of a block says by itself: equal blocks of one file, and of its next version, share one object. */
export interface BlockContents {
  /** `head`: all statements before the first system; `system`: one system with its lanes; `between`: later statements. */
  readonly kind: 'head' | 'system' | 'between';
  /** In a `system` block the first is the `system` statement itself. */
  readonly statements: readonly Placed<StatementTree>[];
  /** Lanes in the order of the text. Outside a `system` block each is a problem already reported. */
  readonly lanes: readonly PlacedLane[];
  /** Problems of the cut itself; their places count from the block's start. */
  readonly problems: readonly Problem[];
}

/** Contents with the place where they stand in the file. */
export interface Block extends BlockContents {
  readonly contents: BlockContents;
  /** Line number of the block's first line, from 0. */
  readonly line: number;
  /** Offset of the block's first character in the file. */
  readonly offset: number;
  readonly length: number;
}

/** A tree and where its text stands. */
export interface Placed<T> {
  readonly tree: T;
  /** For each line of the joined text: its offset from the block's start. */
  readonly starts: readonly number[];
  /** For each line of the joined text: its line number from the block's first line. */
  readonly lines: readonly number[];
}

export interface PlacedLane extends Placed<LaneTree> {
  /** The voice (or `fig`, `text`) named before the opening barline; its place counts from the block's start. */
  readonly name: { readonly text: string; readonly pos: number };
  /** The witness of a witness lane (`dessus L | …`). */
  readonly witness?: { readonly text: string; readonly pos: number };
  /**
   * The opening barline with what belongs to it (see `opening` of its tree); its place and theirs count from the block's
   * start.
   */
  readonly open: Barline;
}

// ─── statements ──────────────────────────────────────────────────────────────────────────────────────────────────

export interface StatementTree {
  /** The statement's lines without their indentation, joined by line feeds; blank and comment lines left out. */
  readonly text: string;
  /** Offset in `text` of each joined line. */
  readonly joints: readonly number[];
  readonly statement: Statement;
  readonly problems: readonly Problem[];
}

/** A statement: `keyword arguments clauses`, with rows on lines of their own. What may stand where is the vocabulary's. */
export interface Statement extends Span {
  readonly kind: 'statement';
  /** As typed; a keyword that the vocabulary does not know is a problem and has no arguments. */
  readonly keyword: string;
  readonly args: readonly Argument[];
  readonly clauses: readonly Clause[];
  readonly rows: readonly Row[];
}

/** A named part of a statement, a `system` head or a change: `takes K,L`, `lines 5`, `meter cut-C = 2/2`, `upper C1` (name `clef`). */
export interface Clause extends Span {
  readonly name: string;
  readonly args: readonly Argument[];
}

/** A line of a statement that is a table: a fifth of a temperament, a sign's row in a table, a manual of an instrument. */
export interface Row extends Span {
  readonly kind: 'manual' | 'fifth' | 'sign' | 'clause';
  readonly args: readonly Argument[];
  readonly clauses: readonly Clause[];
  /** Of a `sign` row. */
  readonly recipe?: Recipe;
}

export type Argument =
  /** What it stands for, and whether the statement gives it or cites it, is the vocabulary's word. */
  | ({ readonly kind: 'name'; readonly text: string; readonly role: NameRole; readonly declares: boolean } & Span)
  | ({ readonly kind: 'word' | 'string'; readonly text: string } & Span)
  | ({ readonly kind: 'number'; readonly value: number; readonly text: string } & Span)
  | ({ readonly kind: 'names'; readonly names: readonly NamePart[]; readonly role: NameRole } & Span)
  | ({ readonly kind: 'value'; readonly form: ValueForm } & Span)
  /** A pitch in a statement: `g1`, `bb`, `eb4`; without octave where a pitch class is meant. */
  | ({ readonly kind: 'pitch'; readonly spelling: Spelling } & Span)
  /** `1/4`, `2/2`, `3:2`: two whole numbers; `sign` "+", "-" or "". */
  | ({ readonly kind: 'ratio'; readonly sign: '' | '+' | '-'; readonly n: number; readonly d: number } & Span)
  /** `F4`, `F4+C6`. */
  | ({ readonly kind: 'clef'; readonly clefs: readonly Clef[] } & Span)
  /** `120,340,1800,410`. */
  | ({ readonly kind: 'region'; readonly numbers: readonly number[] } & Span)
  /** A fifth or split key: `g#-eb`, `d#/eb`, `c4-g4`. */
  | ({ readonly kind: 'pair'; readonly first: Spelling; readonly second: Spelling } & Span);

export interface NamePart extends Span {
  readonly text: string;
}

export interface Clef {
  readonly letter: 'G' | 'C' | 'F';
  /** Line counted from the bottom, 1 the lowest. */
  readonly line: number;
}

/** How a sign is played, as written in a `table` row: phrases parted by commas. */
export interface Recipe extends Span {
  readonly start?: 'on beat' | 'before beat';
  /** Set by `unresolved "reason"`: the table names the sign but gives no notes. */
  readonly unresolved?: string;
  /** `extends zz`: begins with what that row gives. */
  readonly extends?: string;
  readonly phrases: readonly RecipePhrase[];
}

export interface RecipePhrase extends Span {
  readonly kind: 'steps' | 'hold' | 'rest' | 'spread';
  /** Of `steps`: the steps from the written note in their order. */
  readonly steps: readonly RecipeStep[];
  /** `(+1 0) repeated`. */
  readonly repeated: boolean;
  /** Of `spread`: from the lowest note up or from the highest down; with the notes between those of a third, if `filled`. */
  readonly spread?: { readonly direction: 'up' | 'down'; readonly filled: boolean };
  /** `-1 leaned`: as long as an appoggiatura or the lean of a trill in this place. */
  readonly leaned?: true;
  /** `for 1/2` or `hold 1/4`: a share of the value. */
  readonly share?: { readonly n: number; readonly d: number };
  /** `at 11 a second`, `at 8 a pulse`, `at 32` (a note value). */
  readonly speed?: { readonly kind: 'second' | 'pulse' | 'value'; readonly number: number };
}

export interface RecipeStep extends Span {
  /** Diatonic steps from the written note. */
  readonly step: number;
  readonly accidental?: AccidentalSign;
}

// ─── lanes ───────────────────────────────────────────────────────────────────────────────────────────────────────

export type LaneKind = 'lane' | 'fig' | 'text';

export interface LaneTree {
  readonly kind: LaneKind;
  /**
   * What stands after the opening barline, the lines joined by line feeds. A line that continues the lane begins in it
   * with its own opening barline.
   */
  readonly text: string;
  /** Offset in `text` of each joined line. */
  readonly joints: readonly number[];
  /**
   * What belongs to the opening barline besides itself: marks and annotations glued to it, and the barline that begins the
   * next line where nothing stands between the two.
   */
  readonly opening: { readonly suffixes: readonly Suffix[]; readonly again?: Barline };
  /** Bars as typed: each ends with its barline, except perhaps the last. */
  readonly segments: readonly Segment[];
  readonly problems: readonly Problem[];
}

export interface Segment extends Span {
  readonly items: readonly Item[];
  /** The barline that ends the segment; absent where the lane ends without one. */
  readonly bar?: Barline;
  /** Something in it was not understood; its sum means nothing. */
  readonly broken: boolean;
}

export type Item =
  | ValueItem
  | EventItem
  | SpanItem
  | OptionsItem
  | ChangeItem
  | WordsItem
  | BeamItem
  | LostItem
  | OmitItem
  | Barline
  | FiguresItem
  | SyllableItem
  | Junk;

/** A value typed before the events that it holds for. */
export interface ValueItem extends Span {
  readonly kind: 'value';
  readonly form: ValueForm;
}

/** A written value: a base, dots and perhaps a proportion. */
export interface ValueForm {
  readonly text: string;
  /** 8 long (`Mx`, maxima), 4 (`L`), 2 (`B`), 1, then 1/2 … 1/128, in semibreves. */
  readonly base: Time;
  readonly dots: number;
  /** `x` is 3 in 2; `x5in4` 5 in 4. */
  readonly proportion?: { readonly n: number; readonly m: number; readonly drawn: boolean };
  readonly doubtful: boolean;
  /** The whole: base, dots and proportion; undefined where the duration is impossible (reported). */
  readonly duration: Time | undefined;
}

export type EventWhat = 'note' | 'rest' | 'barRest' | 'gap' | 'barGap' | 'repeat';

/** A note or chord, a rest `r`, a whole-bar rest `rbar`, a gap `_` or `__`, or a lone `=`. */
export interface EventItem extends Span {
  readonly kind: 'event';
  readonly what: EventWhat;
  /** Of a note: its members from first typed to last, one for a single note. Empty otherwise. */
  readonly members: readonly Member[];
  /** Of a lone `=`: its forms. */
  readonly tie?: TieForm;
  /** Marks and annotations of a rest, gap or lone `=`; those of notes stand at their members. */
  readonly suffixes: readonly Suffix[];
  /** What is written of it, kept once for all events that are written alike: its places count from the event's beginning. */
  readonly written: {
    readonly what: EventWhat;
    readonly members: readonly Member[];
    readonly suffixes: readonly Suffix[];
    readonly tie: TieForm | undefined;
    /** Something of it may be limited to readings, be annotated or stand on another stave. Most events say nothing of the kind. */
    readonly mayCite: boolean;
  };
}

export interface Member extends Span {
  readonly spelling: Spelling;
  /** `c2-(up)f4`: the stave to which this and the following members move. */
  readonly stave?: 'up' | 'down' | 'home';
  readonly tie?: TieForm;
  readonly suffixes: readonly Suffix[];
}

export type AccidentalSign = '#' | '##' | 'b' | 'bb' | 'n';

/** A written note: what the source draws. Interned, so equal spellings are one object. */
export interface Spelling {
  readonly text: string;
  readonly letter: 'a' | 'b' | 'c' | 'd' | 'e' | 'f' | 'g';
  readonly accidental?: AccidentalSign;
  /** `f[#]`: the editor's accidental. */
  readonly editors?: AccidentalSign;
  /** `f(#)`: cautionary in the source. */
  readonly cautionary?: AccidentalSign;
  /** Scientific octave, c4 the middle C; absent where the last one typed holds. */
  readonly octave?: number;
  readonly doubtful: boolean;
}

/** `=`, `[=]`, `=?`, `=:L`, `=:!plain`. Interned. */
export interface TieForm {
  readonly text: string;
  readonly editors: boolean;
  readonly doubtful: boolean;
  readonly readings?: Readings;
}

/** `:french,K` or `:!plain`: only in, or not in, these readings or witnesses. */
export interface Readings {
  readonly not: boolean;
  readonly names: readonly string[];
}

export type Suffix = Mark | Annotation;

export interface Mark extends Span {
  readonly kind: 'mark';
  readonly form: MarkForm;
}

/**
 * - `sign`: the name of a sign shape, of a table's row, or unknown (resolved later, with the file's tables);
 * - `finger`: `'3`, `'4-5`; `accidental`: `'#` above the note or the sign before it;
 * - `curveStart` `'u`, `'line`; `curveEnd` `'.`;
 * - `other`: `through fermata dot stroke renvoi fin`; `weight`: `'w2`.
 */
export type MarkType = 'sign' | 'finger' | 'accidental' | 'curveStart' | 'curveEnd' | 'other' | 'weight';

/** A mark without its place. Interned by its text. */
export interface MarkForm {
  readonly text: string;
  readonly type: MarkType;
  /** The name as typed; `.` for a curve's end, the sign for an accidental, the digits for fingers. */
  readonly name: string;
  readonly fingers?: readonly number[];
  readonly accidental?: AccidentalSign;
  /** `'.c3`: the curve begun on that pitch. */
  readonly begunOn?: Spelling;
  /** `'u~`, `'.~`: the other end is not shown. */
  readonly openEnded: boolean;
  readonly weight?: number;
  readonly editors: boolean;
  readonly doubtful: boolean;
  /** `+`: one sign across lanes at this moment. */
  readonly linked: boolean;
  readonly parameters: readonly string[];
  readonly readings?: Readings;
}

/** `*"text"` or `*n7`. */
export interface Annotation extends Span {
  readonly kind: 'annotation';
  /** Of `*"text"`. */
  readonly text?: string;
  /** Of `*n7`: the name of a `note` statement. */
  readonly ref?: string;
}

/** `{ … }`. */
export interface SpanItem extends Span {
  readonly kind: 'span';
  readonly head: SpanHead;
  readonly items: readonly Item[];
  readonly suffixes: readonly Suffix[];
}

export type SpanWord =
  | 'overdot'
  | 'inegal'
  | 'assimilate'
  | 'snap'
  | 'literal'
  | 'small'
  | 'black'
  | 'void'
  | 'lig'
  | 'unclear'
  | 'supplied'
  | 'deleted'
  | 'added';

/** Interned by its text. */
export interface SpanHead {
  readonly text: string;
  /** Absent of a tuplet and of an unknown word (reported). */
  readonly word?: SpanWord;
  /** `{3in2`: n notes in the time of m; of `black` and `void` their change of time. */
  readonly proportion?: { readonly n: number; readonly m: number };
  /** `{inegal 2:1`: the lengths of the two notes. */
  readonly ratio?: { readonly long: number; readonly short: number };
  readonly readings?: Readings;
}

/** `<K: … ; L: …>`. */
export interface OptionsItem extends Span {
  readonly kind: 'options';
  /** `<v3 K: …>`. */
  readonly place?: NamePart;
  readonly reasons: readonly Annotation[];
  readonly options: readonly Option[];
  readonly suffixes: readonly Suffix[];
}

export interface Option extends Span {
  readonly labels: readonly Label[];
  /** The option is the word `omit` alone: this witness has nothing here, not even time. */
  readonly omit: boolean;
  readonly items: readonly Item[];
}

export interface Label extends Span {
  /** A witness or reading, `sic` or `corr`. */
  readonly name: string;
  /** `K.2` names the second layer (hand) of K. */
  readonly layer?: number;
  readonly doubtful: boolean;
}

/** `(now C3)`, `(up)`, `(section B)` … */
export interface ChangeItem extends Span {
  readonly kind: 'change';
  readonly change: Change;
}

/** Interned by its text; the places of its clauses count from the opening bracket. */
export interface Change {
  readonly text: string;
  readonly word: ChangeWord;
  readonly clauses: readonly Clause[];
  readonly args: readonly Argument[];
}

export type ChangeWord =
  | 'now'
  | 'up'
  | 'down'
  | 'home'
  | 'stems'
  | 'manual'
  | 'custos'
  | 'ending'
  | 'section'
  | 'irregular';

/** Words of the source that stand at the next event. */
export interface WordsItem extends Span {
  readonly kind: 'words';
  readonly text: string;
  readonly place?: 'above' | 'below';
}

/** ` & ` joins the events on either side under one beam, ` , ` parts them. */
export interface BeamItem extends Span {
  readonly kind: 'beam';
  readonly join: boolean;
}

/** `lost 2.` takes that time; `lost ?` the rest of the bar. */
export interface LostItem extends Span {
  readonly kind: 'lost';
  readonly form?: ValueForm;
}

/** `omit`: alone in an option, the witness has nothing here. Anywhere else it is a problem already reported. */
export interface OmitItem extends Span {
  readonly kind: 'omit';
}

export type BarlineShape = '|' | '||' | '|||' | ':||' | '||:' | ':||:';

export interface Barline extends Span {
  readonly kind: 'barline';
  readonly shape: BarlineShape;
  /** `|[]`: the editor's. */
  readonly editors: boolean;
  readonly suffixes: readonly Suffix[];
  /** The barlines that open the continuing lines and are one with this; `shape` is the special one of them. */
  readonly again?: readonly Span[];
}

/** One item of a `fig` lane. */
export interface FiguresItem extends Span {
  readonly kind: 'figures';
  /** `_` nothing drawn, `=` the figures before hold on. */
  readonly what: 'figures' | 'none' | 'hold';
  /** What follows one another within one note (`5,6`), each a stack from the top. */
  readonly columns: readonly (readonly Figure[])[];
}

export interface Figure {
  readonly number?: number;
  readonly accidental?: AccidentalSign;
  /** `b6`: the accidental stands before the figure, not after it. */
  readonly accidentalFirst?: true;
  /** `6+`: a stroke through the figure. */
  readonly stroked: boolean;
  readonly editors: boolean;
}

/** One item of a `text` lane. */
export interface SyllableItem extends Span {
  readonly kind: 'syllable';
  readonly what: 'syllable' | 'none' | 'hold';
  readonly text: string;
  /** `word-`: the word goes on. */
  readonly goesOn: boolean;
}

/** Text that was not understood, kept as it stands. */
export interface Junk extends Span {
  readonly kind: 'junk';
}
