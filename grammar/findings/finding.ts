/**
 * Findings: what an editor of old music is told about a text.
 *
 * A finding is data: a code of the catalogue, the words that fill its sentence, a place. It is made where it is seen,
 * worded in the catalogue alone, and shown alike by editor, command line and JSON.
 */
import type { Span } from '../tree';
import type { FindingCode } from './catalogue';

/** `error`: the text says something impossible; `warning`: probably a slip; `info`: worth knowing; `hint`: counsel. */
export type Level = 'error' | 'warning' | 'info' | 'hint';

/** The words that fill the blanks of a catalogue sentence. */
export type Slots = Readonly<Record<string, string | number>>;

/** A change of text that mends a finding. Places are relative as those of the problem that holds it. */
export interface Fix {
  /** What the change does, in the trade's words: "add the dot". */
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

export interface TextEdit extends Span {
  readonly text: string;
}

/** A finding whose places still count from the start of a statement, lane or block. */
export interface Problem extends Span {
  readonly code: FindingCode;
  readonly slots: Slots;
  readonly fixes?: readonly Fix[];
}

/** A problem at a place; where nothing can be mended it bears no list of fixes. */
export const problemOf = (code: FindingCode, { pos, len }: Span, slots: Slots, fixes: readonly Fix[] = []): Problem =>
  fixes.length === 0 ? { code, pos, len, slots } : { code, pos, len, slots, fixes };

/** A finding with places in a file: offsets from its start, in UTF-16 units. */
export interface Finding {
  readonly code: FindingCode;
  readonly level: Level;
  /** One plain sentence in the trade's words. */
  readonly message: string;
  readonly file: string;
  readonly range: Range;
  readonly related: readonly { readonly message: string; readonly file: string; readonly range: Range }[];
  readonly fixes: readonly AbsoluteFix[];
  /** The readings and witnesses in which it arises, where there are others in which it does not. */
  readonly readings?: readonly string[];
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export interface Position {
  readonly offset: number;
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 units. */
  readonly column: number;
}

export interface AbsoluteFix {
  readonly title: string;
  readonly edits: readonly { readonly offset: number; readonly length: number; readonly text: string }[];
}
