/** A practice of rhythm: what a reading, or the whole file, says of how time is played. */
import type { Time } from '../../grammar/time';
import type { FileSource } from '../score/score';

export type PracticeWord = How['word'];

/** What is done. */
export type How = Overdot | Inegal | Assimilate | { readonly word: 'snap' | 'upbeats' | 'hemiola' | 'literal' };

export interface Overdot {
  readonly word: 'overdot';
  /** As if dotted twice, or so that what follows is as short as the shortest figure of the section. */
  readonly amount: 'double' | 'shortest';
  /** Whether the note sounds through the dot. */
  readonly dot: 'held' | 'silent';
}

export interface Inegal {
  readonly word: 'inegal';
  /** The value of which pairs are unequal; undefined: the meter says it. */
  readonly value: Time | undefined;
  readonly ratio: { readonly long: number; readonly short: number };
  /** Only pairs that move by step, from the note before on. */
  readonly stepwise: boolean;
  readonly longFirst: boolean;
}

export interface Assimilate {
  readonly word: 'assimilate';
  readonly to: 'triplet' | 'duple' | 'literal';
}

/** A practice as it is stated, for a passage or for all. */
export interface Practice {
  readonly how: How;
  /** As typed: `overdot shortest in A`. */
  readonly text: string;
  readonly section: string | undefined;
  readonly voice: string | undefined;
  /** 0: the reading itself says so, 1 the one on which it is built, and so on; the file comes last. */
  readonly distance: number;
  readonly source: FileSource;
}

/** Every ratio of the facts lies between these: 1 is equal; 3 what a dot would give (Engramelle 1775 for marches). */
export const RATIOS = { least: 1, most: 3 } as const;

/** What a practice does where it says no more than its word. */
export const USUAL = {
  overdot: { word: 'overdot', amount: 'double', dot: 'held' },
  inegal: { word: 'inegal', value: undefined, ratio: { long: 3, short: 2 }, stepwise: false, longFirst: true },
  assimilate: { word: 'assimilate', to: 'triplet' },
  snap: { word: 'snap' },
  upbeats: { word: 'upbeats' },
  hemiola: { word: 'hemiola' },
  literal: { word: 'literal' },
} as const satisfies { readonly [Word in PracticeWord]: How & { readonly word: Word } };
