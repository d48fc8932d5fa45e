/**
 * What the declarations of a file and its includes say and a system can see.
 */
import type { Span, Statement, ValueForm } from '../../grammar/tree';
import type { AccidentalPractice } from './choice';
import type { PlacedProblem, Tempo } from './score';

/** Where a declaration stands: undefined file means the file itself. */
export interface Declared extends Span {
  readonly file: string | undefined;
  readonly block: number;
  readonly statement: number;
}

export interface Environment {
  readonly title: string | undefined;
  readonly staves: readonly StaveDeclaration[];
  readonly voices: readonly VoiceDeclaration[];
  readonly sources: readonly SourceDeclaration[];
  readonly readings: readonly ReadingDeclaration[];
  readonly accidentals: AccidentalPractice;
  readonly beaming: readonly { readonly value: ValueForm; readonly by: number }[];
  readonly tempo: Tempo | undefined;
  readonly pitch: number | undefined;
  readonly compass: { readonly low: number; readonly high: number } | undefined;
  /** File-level `signs`. */
  readonly signs: string | undefined;
  /** Sign names of the tables that the file defines or includes: name to shapes, by table. */
  readonly tables: readonly {
    readonly name: string;
    readonly from: string | undefined;
    readonly rows: readonly { readonly name: string; readonly shapes: readonly string[] }[];
  }[];
  /** Names of annotations, places and links, editors: for look-ups and checks. */
  readonly notes: ReadonlyMap<string, Declared & { readonly text: string | undefined }>;
  readonly editors: ReadonlyMap<string, Declared & { readonly name: string }>;
  /** The statements that made this, in order. */
  readonly statements: readonly { readonly statement: Statement; readonly declared: Declared }[];
  readonly problems: readonly PlacedProblem[];
}

export interface StaveDeclaration extends Declared {
  readonly name: string;
  /** Number of lines, 4 to 8; 5 where the declaration does not say. */
  readonly lines: number;
}

export interface VoiceDeclaration extends Declared {
  readonly name: string;
  /** Index of its stave. */
  readonly stave: number;
  readonly stems: 'up' | 'down' | undefined;
}

export interface SourceDeclaration extends Declared {
  readonly name: string;
  readonly description: string;
  /** `hand K.2 "paler ink"`: layers of this source. */
  readonly hands: readonly { readonly layer: number; readonly description: string }[];
}

export interface ReadingDeclaration extends Declared {
  readonly name: string;
  readonly description: string;
  readonly from: string | undefined;
  readonly takes: readonly string[];
  readonly at: ReadonlyMap<string, string>;
  readonly accidentals: AccidentalPractice | undefined;
  readonly signs: string | undefined;
  readonly order: readonly string[] | undefined;
}
