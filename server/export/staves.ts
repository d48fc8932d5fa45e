/** What stands on the staves of a piece, moment by moment: clefs, signatures, meters; and the clefs that an export shows. */
import { compare, isZero, subtract, type Time, ZERO } from '../../grammar/time';
import type { Clef, Spelling } from '../../grammar/tree';
import { lineUnder } from '../../grammar/vocabulary/clefs';
import type { KeySign, Piece, Score, ScoreSystem, StateChange } from '../score/score';
import { changesOf } from '../score/walk';

/** The clefs of the source, or the treble and bass clefs of today. */
export type ClefChoice = 'source' | 'modern';

/** A change with its place: `offset` counts from the start of its bar. */
export interface Moment {
  readonly change: StateChange;
  readonly system: ScoreSystem;
  /** Index in `Piece.bars`. */
  readonly bar: number;
  readonly offset: Time;
}

/** What is in force on each stave; empty where nothing is stated yet. */
export interface State {
  readonly clefs: (readonly Clef[])[];
  readonly keys: (readonly KeySign[])[];
}

const TREBLE: Clef = { letter: 'G', line: 2 };
const BASS: Clef = { letter: 'F', line: 4 };
/** Diatonic position of middle C: staves whose middle line lies there or above read the treble clef. */
const MIDDLE_C = 28;

export class Staves {
  readonly moments: readonly Moment[];
  /** Bars at whose beginning, or inside which, the source draws a meter sign; of the latter the bar after. */
  readonly drawnMeters: ReadonlySet<number>;

  constructor(
    private readonly score: Score,
    piece: Piece,
    readonly clefs: ClefChoice,
  ) {
    this.moments = [...changesOf(piece)].map(({ change, onset, bar, system }) => ({
      change,
      system,
      bar: bar.index,
      offset: subtract(onset, bar.onset),
    }));
    this.drawnMeters = new Set(
      this.moments.filter((m) => m.change.meter !== undefined).map((m) => m.bar + (isZero(m.offset) ? 0 : 1)),
    );
  }

  /** The changes before a moment, or also at it. */
  before(bar: number, offset: Time, alsoAt: boolean): readonly Moment[] {
    return this.moments.filter((m) => {
      if (m.bar !== bar) return m.bar < bar;
      const order = compare(m.offset, offset);
      return order < 0 || (alsoAt && order === 0);
    });
  }

  /** The signature that a stave has before a moment. */
  keyBefore(bar: number, offset: Time, stave: number): readonly KeySign[] {
    const last = this.before(bar, offset, false).findLast(
      ({ change }) => change.key !== undefined && (change.stave === undefined || change.stave === stave),
    );
    return last?.change.key ?? [];
  }

  /** What is in force at the start of a bar, with what takes effect there. */
  stateAt(bar: number): State {
    const { staves } = this.score.environment;
    const state: State = { clefs: staves.map(() => []), keys: staves.map(() => []) };
    for (const { change } of this.before(bar, ZERO, true)) {
      for (const stave of change.stave === undefined ? staves.keys() : [change.stave]) {
        if (change.clefs !== undefined) state.clefs[stave] = change.clefs;
        if (change.key !== undefined) state.keys[stave] = change.key;
      }
    }
    return state;
  }

  /**
   * The clefs to draw where these are in force: of a stave for which none is stated yet its next ones. `isGiven`: the source
   * has none at all and the export gives one.
   */
  shown(inForce: readonly Clef[], stave: number): { readonly clefs: readonly Clef[]; readonly isGiven: boolean } {
    if (this.clefs === 'modern') return { clefs: [this.modern(stave)], isGiven: false };
    if (inForce.length > 0) return { clefs: inForce, isGiven: false };
    const [next] = this.stated(stave);
    return { clefs: next ?? [this.modern(stave)], isGiven: next === undefined };
  }

  private stated(stave: number): readonly (readonly Clef[])[] {
    return this.moments
      .filter(({ change }) => change.stave === stave || change.stave === undefined)
      .flatMap(({ change: { clefs } }) => (clefs === undefined || clefs.length === 0 ? [] : [clefs]));
  }

  /** Treble or bass, by the mean of what the stave's clefs make of its middle line; without clefs, by its place. */
  private modern(stave: number): Clef {
    const { staves } = this.score.environment;
    const middle = ((staves[stave]?.lines ?? 5) + 1) / 2;
    const positions = this.stated(stave).flatMap(([clef]) => (clef === undefined ? [] : [lineUnder(clef, middle)]));
    if (positions.length === 0) return stave > 0 && stave === staves.length - 1 ? BASS : TREBLE;
    const mean = positions.reduce((total, position) => total + position, 0) / positions.length;
    return mean >= MIDDLE_C ? TREBLE : BASS;
  }
}

/** The order of sharps in a signature as it has long been drawn; flats run backwards (common practice). */
const SHARPS: readonly Spelling['letter'][] = ['f', 'c', 'g', 'd', 'a', 'e', 'b'];

/** Fifths of a signature that holds the usual sharps or flats, each once; undefined of any other. */
export function fifthsOf(key: readonly KeySign[]): number | undefined {
  const [first] = key;
  if (first === undefined) return 0;
  const { accidental } = first;
  if (accidental !== '#' && accidental !== 'b') return undefined;
  const usual = accidental === '#' ? SHARPS : [...SHARPS].reverse();
  const wanted = new Set(usual.slice(0, key.length));
  const fits = key.every((sign) => sign.accidental === accidental && wanted.delete(sign.letter));
  return !fits ? undefined : accidental === '#' ? key.length : -key.length;
}
