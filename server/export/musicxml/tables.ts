/** MusicXML's words for what the notation writes. */
import type { AccidentalSign, BarlineShape, SpanWord } from '../../../grammar/tree';

/** MusicXML 4.0, simple type `accidental-value`. */
export const ACCIDENTALS: Readonly<Record<AccidentalSign, string>> = {
  '#': 'sharp',
  '##': 'double-sharp',
  b: 'flat',
  bb: 'flat-flat',
  n: 'natural',
};

/** Semitones that a sign of the signature adds. */
export const ALTERS: Readonly<Record<AccidentalSign, number>> = { '#': 1, '##': 2, b: -1, bb: -2, n: 0 };

/** What a barline draws at the end of its bar, and whether the bars before or after it are repeated. */
export interface BarlineLook {
  /** `bar-style` where the barline closes a bar; undefined for the plain one. */
  readonly right: string | undefined;
  /** `bar-style` where it opens a bar. */
  readonly left: string | undefined;
  readonly backward: boolean;
  readonly forward: boolean;
}

export const BARLINES: Readonly<Record<BarlineShape, BarlineLook>> = {
  '|': { right: undefined, left: undefined, backward: false, forward: false },
  '||': { right: 'light-light', left: 'light-light', backward: false, forward: false },
  '|||': { right: 'light-heavy', left: 'heavy-light', backward: false, forward: false },
  ':||': { right: 'light-heavy', left: undefined, backward: true, forward: false },
  '||:': { right: undefined, left: 'heavy-light', backward: false, forward: true },
  ':||:': { right: 'light-heavy', left: 'heavy-light', backward: true, forward: true },
};

/** So many things of one kind that overlap can be told apart (MusicXML 4.0, simple type `number-level`). */
export const NUMBER_LEVELS = 16;

/** How the state of a passage is called in the `level` of its notes; `by` where a source or hand is named. */
export const LEVELS: Readonly<Partial<Record<SpanWord, { readonly plain: string; readonly by: string }>>> = {
  unclear: { plain: 'unclear in the source', by: 'unclear in' },
  supplied: { plain: 'supplied by the editor', by: 'supplied from' },
  deleted: { plain: 'deleted in the source', by: 'deleted in' },
  added: { plain: 'added in the source', by: 'added in' },
};
