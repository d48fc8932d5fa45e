/** How long an appoggiatura lasts: half of its note, by some tables two thirds of a dotted one, less where it would do harm. */
import { modulo } from '../../grammar/modulo';
import { add, compare, latest, type Time, time } from '../../grammar/time';
import { type Clock, partOf, secondsOf } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import { isUpbeat, soundingDots } from './conditions';
import { degreeOf, intervalClass } from './degrees';
import { extreme, type Passage } from './passage';
import { share } from './place';

/** A short one lasts a quarter of the note, but so many seconds. Common practice. */
const SHORTEST = 0.09;
/** Crotchets a minute above which a quaver has but a short one. Common practice. */
const QUICK = 80;

export interface Leaning {
  readonly passage: Passage;
  readonly event: PerformedEvent;
  /** From where to where the main note has time. */
  readonly onset: Time;
  readonly length: Time;
  readonly clock: Clock;
  /** The note that leans. */
  readonly small: SoundingPitch;
  /** By the rule of the table it has two thirds of a dotted note. */
  readonly longDotted: boolean;
}

/**
 * The time that an appoggiatura takes from its note; the rules of Türk, Klavierschule, ch. III, and Quantz, Versuch, VIII.
 *
 * @param whole as much of the note as a rule of the table gives it here, where no harm is done by that
 */
export function appoggiaturaOf(leaning: Leaning, whole?: Time): Time {
  const { event, length, clock } = leaning;
  const usual = leaning.longDotted && soundingDots(event) > 0 ? share(length, 2, 3) : share(length, 1, 2);
  const fitting = [...(whole === undefined ? [] : [whole]), usual].find((one) => !isHarmful(leaning, one));
  return fitting ?? latest(share(length, 1, 4), partOf(clock, length, SHORTEST, 2));
}

/** Whether an appoggiatura that lasts so long would do harm. */
export const isHarmful = (leaning: Leaning, lasts: Time): boolean =>
  isQuick(leaning) ||
  isInFigure(leaning) ||
  basseMoves(leaning, lasts) ||
  makesConsecutives(leaning) ||
  resolvesIntoDissonance(leaning);

function isQuick({ event, clock }: Leaning): boolean {
  const value = event.from[0].placed.event.value?.duration;
  if (clock.unmeasured || value === undefined || compare(value, time(1, 8)) > 0) return false;
  return 60 / secondsOf(clock, time(1, 4)) > QUICK;
}

/** In a triplet, on an upbeat, or before a repeated note, a leap or a triplet. */
function isInFigure({ passage, event, clock }: Leaning): boolean {
  const next = extreme(passage.after(event), 'highest');
  if (isUpbeat(passage, event, clock)) return true;
  if ([event, next].some((note) => (note?.from[0].placed.event.tuplets.length ?? 0) > 0)) return true;
  if (next?.pitch === undefined || event.pitch === undefined) return false;
  const distance = Math.abs(degreeOf(next.pitch) - degreeOf(event.pitch));
  return distance === 0 || distance > 2;
}

/** The bass has another note before the appoggiatura has resolved. */
function basseMoves({ passage, event, onset }: Leaning, lasts: Time): boolean {
  const bass = passage.bassUnder(event, onset);
  if (bass === undefined) return false;
  const resolution = add(onset, lasts);
  const next = extreme(passage.after(bass), 'lowest');
  return next !== undefined && event !== bass && compare(next.onset, onset) > 0 && compare(next.onset, resolution) < 0;
}

/** Degrees and semitones of unisons, fifths, thirds and sixths, octaves left out: a diminished fourth is no third. */
const PERFECT: ReadonlySet<string> = new Set(['0 0', '4 7']);
const CONSONANT: ReadonlySet<string> = new Set([...PERFECT, '2 3', '2 4', '5 8', '5 9']);

/** The small note goes with another voice that moves at its onset from one fifth or octave to another. */
function makesConsecutives({ passage, event, onset, small }: Leaning): boolean {
  const before = extreme(passage.before(event), 'highest')?.pitch;
  const others = passage.beginningAt(event.from[0].placed.bar, onset).filter(({ voice }) => voice !== event.voice);
  return before !== undefined && others.some((other) => isConsecutive(passage, before, small, other));
}

function isConsecutive(passage: Passage, before: SoundingPitch, small: SoundingPitch, other: PerformedEvent): boolean {
  const left = extreme(passage.before(other), 'lowest')?.pitch;
  if (other.pitch === undefined || left === undefined || left.midi === other.pitch.midi) return false;
  const [was, is] = [between(before, left), between(small, other.pitch)];
  return PERFECT.has(is) && was === is;
}

/** The interval of two voices, whichever lies higher: degrees and semitones, octaves left out. */
function between(a: SoundingPitch, b: SoundingPitch): string {
  const [above, below] = a.midi >= b.midi ? [a, b] : [b, a];
  const degrees = degreeOf(above) - degreeOf(below);
  return `${modulo(degrees, 7)} ${intervalClass(above, below)}`;
}

/** It agrees with the bass and its main note does not. */
function resolvesIntoDissonance({ passage, event, onset, small }: Leaning): boolean {
  const bass = passage.bassUnder(event, onset)?.pitch;
  if (bass === undefined || event.pitch === undefined) return false;
  return CONSONANT.has(between(small, bass)) && !CONSONANT.has(between(event.pitch, bass));
}

/** Whether a small note lies between two notes that fall by a third. */
export function isPassing(passage: Passage, event: PerformedEvent, small: SoundingPitch): boolean {
  const before = extreme(passage.before(event), 'highest')?.pitch;
  if (before === undefined || event.pitch === undefined) return false;
  const [from, to] = [degreeOf(before), degreeOf(event.pitch)];
  return from - to === 2 && degreeOf(small) === from - 1;
}
