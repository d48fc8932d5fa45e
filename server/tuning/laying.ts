/**
 * The order in which a temperament is laid by ear: from the fork an octave down, then by fifths and fourths within the octave
 * from f3 on (the usual bearings, common practice), with thirds that prove what has been laid, then by octaves outwards.
 */
import { midiOf, type Pitch, pitchText } from '../../grammar/vocabulary/pitches';
import {
  type Direction,
  directionOf,
  FIFTH,
  FOURTH,
  type IntervalKind,
  MAJOR_THIRD,
  MINOR_SIXTH,
  OCTAVE,
} from './beats';
import { placeOf } from './fifths';
import { NOTES } from './temperament';
import { frequencyOf, intervalOf, pitchFrom, placesIn, sounding, type Tuning } from './tuning';

export interface Step {
  /** The note that is tuned, or `undefined` where what was laid is proved. */
  readonly tunes: Pitch | undefined;
  readonly kind: IntervalKind;
  readonly low: Pitch;
  readonly high: Pitch;
  /** From the lower note: `f3-a3`. */
  readonly interval: string;
  /** A second, without sign. */
  readonly beats: number;
  readonly direction: Direction;
  /** Cents by which the interval is wider than pure. */
  readonly width: number;
}

/** The lowest key of the octave in which a temperament is laid. */
export const BEARINGS = 53;
const FORK: Pitch = { letter: 'a', alteration: 0, octave: 4 };
const PLACE_OF_A = placeOf(FORK);
/** Quicker beats are a roughness that nobody counts. */
const COUNTABLE = 12;

function stepOf(tuning: Tuning, kind: IntervalKind, low: Pitch, high: Pitch, tunes: Pitch | undefined): Step {
  const { width, beats } = intervalOf(tuning, kind, low, high);
  const interval = `${pitchText(low)}-${pitchText(high)}`;
  return { tunes, kind, low, high, interval, beats: Math.abs(beats), direction: directionOf(beats), width };
}

const inBearings = (place: number): Pitch => pitchFrom(BEARINGS, place);

interface Joining {
  /** On the line of fifths. */
  readonly places: number;
  readonly upwards: IntervalKind;
  /** What completes the octave. */
  readonly downwards: IntervalKind;
}

const BY_FIFTH: Joining = { places: 1, upwards: FIFTH, downwards: FOURTH };
const BY_THIRD: Joining = { places: 4, upwards: MAJOR_THIRD, downwards: MINOR_SIXTH };

/** A fifth or a third, or what completes the octave where its upper note lies below in the bearings. */
function joining(tuning: Tuning, lower: number, upper: number, tunes: Pitch | undefined, kinds = BY_FIFTH): Step {
  const [a, b] = [inBearings(lower), inBearings(upper)];
  return midiOf(a) < midiOf(b)
    ? stepOf(tuning, kinds.upwards, a, b, tunes)
    : stepOf(tuning, kinds.downwards, b, a, tunes);
}

/** Sets a note from one that is laid: by a fifth if it can be, else by a third; undefined where neither is there. */
function setting(tuning: Tuning, place: number, laid: ReadonlySet<number>): Step | undefined {
  for (const kinds of [BY_FIFTH, BY_THIRD]) {
    const from = [place - kinds.places, place + kinds.places].find((one) => laid.has(one));
    if (from === undefined) continue;
    const [lower, upper] = [Math.min(place, from), Math.max(place, from)];
    return joining(tuning, lower, upper, inBearings(place), kinds);
  }
  return undefined;
}

/** Notes in the order in which they are laid after a: downwards by fifths, then upwards, then those of divided keys. */
function order(tuning: Tuning): readonly number[] {
  const { first } = tuning.temperament;
  const a = sounding(tuning, PLACE_OF_A);
  const down = Array.from({ length: a - first }, (_, i) => a - 1 - i);
  const up = Array.from({ length: first + NOTES - 1 - a }, (_, i) => a + 1 + i);
  return [...down, ...up, ...[...tuning.more].sort((one, other) => Math.abs(one - a) - Math.abs(other - a))];
}

/** Steps of the bearings, each note with the thirds that it completes. */
export function layBearings(tuning: Tuning): readonly Step[] {
  const steps: Step[] = [octaveBelowFork(tuning)];
  const laid = new Set([sounding(tuning, PLACE_OF_A)]);
  for (const place of order(tuning)) {
    const set = setting(tuning, place, laid);
    if (set === undefined) continue;
    steps.push(set);
    laid.add(place);
    // A third by which the note was set proves nothing.
    steps.push(...thirdsWith(tuning, place, laid).filter(({ interval }) => interval !== set.interval));
  }
  steps.push(closing(tuning));
  return steps;
}

const octaveBelowFork = (tuning: Tuning): Step => {
  const below = inBearings(sounding(tuning, PLACE_OF_A));
  return stepOf(tuning, OCTAVE, below, { ...below, octave: below.octave + 1 }, below);
};

/** The fifth that nobody tunes: what all others have left. */
function closing(tuning: Tuning): Step {
  const { first } = tuning.temperament;
  return joining(tuning, first + NOTES - 1, first, undefined);
}

/** Major thirds of the bearings that a new note completes, as far as their beats can be counted. */
function thirdsWith(tuning: Tuning, place: number, laid: ReadonlySet<number>): Step[] {
  return [
    [place, place + MAJOR_THIRD.places],
    [place - MAJOR_THIRD.places, place],
  ].flatMap(([lower = 0, upper = 0]) => {
    if (!laid.has(lower) || !laid.has(upper)) return [];
    const [low, high] = [inBearings(lower), inBearings(upper)];
    if (midiOf(low) > midiOf(high)) return [];
    const step = stepOf(tuning, MAJOR_THIRD, low, high, undefined);
    return step.beats <= COUNTABLE ? [step] : [];
  });
}

// ─── retuning ────────────────────────────────────────────────────────────────────────────────────────────────────

/** A string that moves from one tuning to another. */
export interface Retuned {
  /** What its key gives before and after: of one key `ab` and `g#`. */
  readonly from: number;
  readonly to: number;
  /** Cents by which it rises. */
  readonly cents: number;
}

/** A tenth of a cent is less than any tuner's hand can do. */
const SAME = 0.1;

/** What moves where one tuning follows another, by keys of the octave from c; a pitch of another a moves everything. */
export function retunings(before: Tuning, after: Tuning): readonly Retuned[] {
  return placesIn(after).flatMap((to): Retuned[] => {
    const from = sounding(before, to);
    const pitch = inBearings(to);
    const old = { ...inBearings(from) };
    const cents = 1200 * Math.log2(frequencyOf(after, pitch) / frequencyOf(before, old));
    return Math.abs(cents) < SAME ? [] : [{ from, to, cents }];
  });
}

/** How one note is set from a neighbour that stays, or else from the note before it in the laying. */
export function layAgain(tuning: Tuning, moved: readonly Retuned[]): readonly Step[] {
  const wanted = new Set(moved.map(({ to }) => to));
  return layBearings(tuning).filter(({ tunes }) => tunes !== undefined && wanted.has(placeOf(tunes)));
}
