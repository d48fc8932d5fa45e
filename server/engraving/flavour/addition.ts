/** What the library cannot draw, or not where it is wanted: we draw it when the library has drawn all else. */

/** Where a sign stands, seen from the notes that bear it. */
export type AdditionPlace = 'after' | 'stem' | 'within' | 'between' | 'tallBefore' | 'tallAfter';

/** Places close to heads and dots, where brackets need room of their own and the next note keeps its distance. */
export const AFTER_HEADS: ReadonlySet<AdditionPlace> = new Set(['after', 'tallAfter']);

interface Addition {
  /** The address of its text. */
  readonly id: string;
  /** Ids of the notes, chords or signs at which it stands. */
  readonly at: readonly string[];
  /** The editor's. */
  readonly enclosed?: boolean;
  /** Doubtful, or in a hand that is not the first. */
  readonly grey?: boolean;
}

export interface AddedGlyph extends Addition {
  readonly kind: 'glyph';
  readonly code: number;
  readonly place: AdditionPlace;
}

/** A small hook at the foot or head of an upright wavy line, which the library draws without. */
export interface AddedHook extends Addition {
  readonly kind: 'hook';
  readonly end: 'foot' | 'head';
}

/** A straight line between two heads. */
export interface AddedLine extends Addition {
  readonly kind: 'line';
  readonly dashed?: boolean;
}

/** Square brackets around notes, from the first to the last. */
export interface AddedBrackets extends Addition {
  readonly kind: 'brackets';
}

/** A curve of free music: it begins at its note and runs on until the music reaches another. */
export interface AddedCurve extends Addition {
  readonly kind: 'curve';
  readonly dashed?: boolean;
}

/** A curve or tie of which one end is not shown: the source has it not, or it lies in music that is not drawn. */
export interface AddedOpenCurve extends Addition {
  readonly kind: 'openCurve';
  readonly dashed?: boolean;
  /** To which side of its note it runs. */
  readonly side: 'left' | 'right';
}

export type AddedSign = AddedGlyph | AddedHook | AddedLine | AddedBrackets | AddedCurve | AddedOpenCurve;
