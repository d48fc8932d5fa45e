/**
 * What a sign table is: a treatise's signs, what it calls them and how it plays them, each with where that is known from.
 *
 * A table is data. Its recipes are written as a user's table in a score writes them, and one machine plays both.
 */

/**
 * How sure something is: `confirmed` by a text that states it; from `memory` and to be defended; `likely`, from memory
 * too; `doubtful`, for lack of a facsimile.
 */
export type Confidence = 'confirmed' | 'memory' | 'likely' | 'doubtful';

export const certainties: Readonly<Record<Confidence, string>> = {
  confirmed: 'confirmed by a text',
  memory: 'from memory',
  likely: 'likely',
  doubtful: 'doubtful',
};

/** A citation beside the word for how sure its row is: that it is from memory is said once. */
export const citedBeside = (played: Confidence | undefined, citation: string): string =>
  played === 'memory' ? citation.replace(/, from memory\b/, '') : citation;

/** Where a row fits, in the words of a table's `when`. */
export type Condition =
  | 'rising'
  | 'falling'
  | 'dotted'
  | 'short'
  | 'before rest'
  | 'before higher'
  | 'before lower'
  | 'before rising third'
  | 'before falling third'
  | 'slurred from above';

/** Another way to play a sign, and who speaks for it. */
export interface Rival {
  /** Typed in round brackets after the sign, it chooses this reading: `'ss(shake_upper)`. */
  readonly name: string;
  readonly recipe: string;
  readonly advocates: string;
}

export interface SignRow {
  /** What may be typed for the sign; the first is the row's own. */
  readonly names: readonly [string, ...string[]];
  /** Short names of the shapes: one, or a set typed together. */
  readonly shapes: readonly string[];
  /** The name as the table prints it, or the modern description. */
  readonly label: string;
  /** How sure it is that the table draws this sign under this name. */
  readonly drawn: Confidence;
  /** What must be known of a sign that the book itself does not show. */
  readonly note?: string;
  /** All of them must fit; none means everywhere. */
  readonly when?: readonly Condition[];
  /** What is typed after the colon of a table's row. */
  readonly recipe: string;
  /** How sure it is that the table plays it so. */
  readonly played: Confidence;
  readonly citation: string;
  /** Other readings of the same sign, none of them chosen silently. */
  readonly rivals?: readonly Rival[];
}

/** Something that a treatise says of all its signs or small notes, and where. */
export interface Rule {
  readonly citation: string;
}

/** What each rule says. */
const RULES = {
  passing: 'Small notes between falling thirds pass in the time of the note before.',
  dotted: 'Of a dotted note an appoggiatura has two of three parts.',
  whole: 'Before a note tied on an appoggiatura takes the whole note, and the note the time after it.',
  beforeRest: 'Before a rest an appoggiatura takes the whole note, and the note the time of the rest.',
  slowStart: 'Trills begin more slowly than they end.',
} as const;

type RuleName = keyof typeof RULES;

export interface SignTable extends Readonly<Partial<Record<RuleName, Rule>>> {
  /** Author and year: `anglebert-1689`. */
  readonly table: string;
  readonly title: string;
  /** The table whose rows it takes over. */
  readonly from?: string;
  /** In the order of the source, as far as it is known. */
  readonly rows: readonly SignRow[];
  /** What is known to stand in the source and has no row. */
  readonly missing?: string;
}

/** The rules of a table, each with what it says. */
export const rulesOf = (table: SignTable): readonly (Rule & { readonly says: string })[] =>
  (Object.keys(RULES) as RuleName[]).flatMap((name) => {
    const rule = table[name];
    return rule === undefined ? [] : [{ ...rule, says: RULES[name] }];
  });
