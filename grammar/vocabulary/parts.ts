/**
 * What the vocabulary of statements is made of: parts in their order, as data.
 *
 * A driver reads a statement by these tables, completion and hover look them up, and the reference prints them.
 */
import type { Row } from '../tree';
import type { NameRole } from './names';

/** What a writer fills in freely. */
export type Take =
  | 'name'
  /** `K,L.2`: labels parted by commas. */
  | 'names'
  /** `cb+ca`: shapes typed together. */
  | 'shapes'
  | 'string'
  | 'whole'
  | 'decimal'
  | 'value'
  /** A pitch with its octave: `c5`. */
  | 'pitch'
  /** A sign of a signature: `bb`, `f#4`, `en`. */
  | 'keySign'
  | 'pitchOfA'
  | 'meter'
  /** `2/2`: the length of a bar. */
  | 'barLength'
  /** `3:2`: two notes' shares. */
  | 'shares'
  /** `1/4`: a part of a comma. */
  | 'commaPart'
  /** `-1/4`: a part of a comma by which a fifth is narrow (`-`) or wide (`+`). */
  | 'tempering'
  | 'clef'
  | 'region'
  /** `g1-d6`. */
  | 'compass'
  /** `g#-eb`, `c4-g4`. */
  | 'fifth'
  /** `d#/eb`. */
  | 'splitKey';

interface Placing {
  /** The word or sign that stands before it (`at`, `=`). That of an optional part is kept as a `word` argument if it is a word. */
  readonly after?: string;
  readonly optional?: boolean;
  /** May stand several times in a row. */
  readonly repeat?: boolean;
}

export interface FreePart extends Placing {
  readonly kind: 'free';
  /** Names the part in the vocabulary's paths. */
  readonly id: string;
  readonly take: Take;
  /** What is expected, in the trade's words: "the name of a stave". */
  readonly what: string;
  /** Of names: what they stand for. */
  readonly role?: NameRole;
  /** The statement gives this name; elsewhere it is only cited. */
  readonly declares?: boolean;
  /** Of numbers: the least and the greatest. */
  readonly range?: { readonly low: number; readonly high: number };
}

export interface WordEntry {
  readonly describe: string;
  /** What follows this word. */
  readonly follow?: readonly Part[];
}

/** One word of a closed list; a key may be several words (`before rest`). The first is what is meant where it is left out. */
export interface WordsPart extends Placing {
  readonly kind: 'words';
  readonly what: string;
  readonly words: Readonly<Record<string, WordEntry>>;
}

/** One of several sequences, known by what its first part accepts. */
export interface EitherPart extends Placing {
  readonly kind: 'either';
  readonly what: string;
  readonly forms: readonly (readonly Part[])[];
}

export type Part = FreePart | WordsPart | EitherPart;

export interface ClauseEntry {
  readonly describe: string;
  readonly parts: readonly Part[];
  /** May stand several times in one statement. */
  readonly repeats?: boolean;
  /** How the clause begins if not by its own name: a sign, a clef, or a stave's name before a clef. */
  readonly opens?: ':' | 'clef' | 'staveAndClef';
}

export type Clauses = Readonly<Record<string, ClauseEntry>>;

export interface RowEntry {
  readonly kind: Row['kind'];
  readonly describe: string;
  /** The word with which the row begins, where it is not known by its first part. */
  readonly word?: string;
  readonly parts: readonly Part[];
  readonly clauses: Clauses;
  /** A colon and a recipe end the row. */
  readonly recipe?: boolean;
}

export interface StatementEntry {
  readonly describe: string;
  readonly parts: readonly Part[];
  readonly clauses: Clauses;
  readonly rows?: RowEntry;
  /** May stand several times in a file. */
  readonly repeats?: boolean;
}

export interface ChangeEntry {
  readonly describe: string;
  readonly parts: readonly Part[];
  readonly clauses: Clauses;
}

export const free = (id: string, take: Take, what: string, more: Partial<FreePart> = {}): FreePart => ({
  kind: 'free',
  id,
  take,
  what,
  ...more,
});

/** A name that the statement gives. */
export const given = (role: NameRole, what: string, more: Partial<FreePart> = {}): FreePart =>
  free(role, 'name', what, { role, declares: true, ...more });

/** A name given elsewhere. */
export const cited = (role: NameRole, what: string, more: Partial<FreePart> = {}): FreePart =>
  free(role, 'name', what, { role, ...more });

export const words = (
  what: string,
  list: Readonly<Record<string, string | WordEntry>>,
  placing: Placing = {},
): WordsPart => ({
  kind: 'words',
  what,
  words: Object.fromEntries(
    Object.entries(list).map(([word, entry]) => [word, typeof entry === 'string' ? { describe: entry } : entry]),
  ),
  ...placing,
});

export const either = (what: string, forms: readonly (readonly Part[])[], placing: Placing = {}): EitherPart => ({
  kind: 'either',
  what,
  forms,
  ...placing,
});
