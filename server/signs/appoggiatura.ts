/** How long an appoggiatura lasts: half of a note of two parts, two thirds of a dotted one, less where it would do harm. */
import { add, compare, latest, type Time, time } from '../../grammar/time';
import { type Clock, endOf, partOf, secondsOf } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import { degreeOf } from './degrees';
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
}

/** The time that an appoggiatura takes from its note; the rules of Türk, Klavierschule, ch. III, and Quantz, Versuch, VIII. */
export function appoggiaturaOf(leaning: Leaning): Time {
  const { event, length, clock } = leaning;
  const dotted = (event.from[0].placed.event.value?.dots ?? 0) > 0 && event.from.length === 1;
  const usual = dotted ? share(length, 2, 3) : share(length, 1, 2);
  if (!isHarmful(leaning, usual)) return usual;
  return latest(share(length, 1, 4), partOf(clock, length, SHORTEST, 2));
}

const isHarmful = (leaning: Leaning, usual: Time): boolean =>
  isQuick(leaning) ||
  isInFigure(leaning) ||
  basseMoves(leaning, usual) ||
  makesConsecutives(leaning) ||
  resolvesIntoDissonance(leaning);

function isQuick({ event, clock }: Leaning): boolean {
  const value = event.from[0].placed.event.value?.duration;
  if (value === undefined || compare(value, time(1, 8)) > 0) return false;
  return 60 / secondsOf(clock, time(1, 4)) > QUICK;
}

/** Before a repeated note, a leap, or in a triplet. */
function isInFigure({ passage, event }: Leaning): boolean {
  if (event.from[0].placed.event.tuplets.length > 0) return true;
  const next = extreme(passage.after(event), 'highest');
  if (next?.pitch === undefined || event.pitch === undefined) return false;
  const distance = Math.abs(degreeOf(next.pitch) - degreeOf(event.pitch));
  return distance === 0 || distance > 2;
}

/** The lowest voice that sounds with the note. */
function bassAt({ passage, event }: Leaning, at: Time): PerformedEvent | undefined {
  const { bar } = event.from[0].placed;
  const sounding = passage.soundingIn(bar, at, add(at, time(1, 4096))).filter(({ voice }) => voice !== event.voice);
  return extreme({ onset: at, events: sounding }, 'lowest');
}

/** The bass has another note before the appoggiatura has resolved. */
function basseMoves(leaning: Leaning, usual: Time): boolean {
  const { passage, event, onset } = leaning;
  const bass = bassAt(leaning, onset);
  if (bass === undefined) return false;
  const resolution = add(onset, usual);
  const next = extreme(passage.after(bass), 'lowest');
  return next !== undefined && event !== bass && compare(next.onset, onset) > 0 && compare(next.onset, resolution) < 0;
}

const intervalClass = (above: SoundingPitch, below: SoundingPitch): number =>
  (((above.midi - below.midi) % 12) + 12) % 12;
const PERFECT: ReadonlySet<number> = new Set([0, 7]);
const CONSONANT: ReadonlySet<number> = new Set([0, 3, 4, 7, 8, 9]);

/** The small note goes with the bass from one fifth or octave to another. */
function makesConsecutives(leaning: Leaning): boolean {
  const { passage, event, onset, small } = leaning;
  const [bass, before] = [bassAt(leaning, onset), extreme(passage.before(event), 'highest')];
  if (bass?.pitch === undefined || before?.pitch === undefined || compare(bass.onset, onset) !== 0) return false;
  const bassBefore = extreme(passage.before(bass), 'lowest');
  if (bassBefore?.pitch === undefined || compare(endOf(bassBefore), onset) < 0) return false;
  const [was, is] = [intervalClass(before.pitch, bassBefore.pitch), intervalClass(small, bass.pitch)];
  return PERFECT.has(is) && was === is && bass.pitch.midi !== bassBefore.pitch.midi;
}

/** It agrees with the bass and its main note does not. */
function resolvesIntoDissonance(leaning: Leaning): boolean {
  const { event, onset, small } = leaning;
  const bass = bassAt(leaning, onset)?.pitch;
  if (bass === undefined || event.pitch === undefined) return false;
  return CONSONANT.has(intervalClass(small, bass)) && !CONSONANT.has(intervalClass(event.pitch, bass));
}

/** Whether a small note lies between two notes that fall by a third. */
export function isPassing(passage: Passage, event: PerformedEvent, small: SoundingPitch): boolean {
  const before = extreme(passage.before(event), 'highest')?.pitch;
  if (before === undefined || event.pitch === undefined) return false;
  const [from, to] = [degreeOf(before), degreeOf(event.pitch)];
  return from - to === 2 && degreeOf(small) === from - 1;
}
