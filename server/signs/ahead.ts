/** What comes after a note, as far as it tells how a trill on it begins and ends. Common practice, unless a source is named. */
import {
  compare,
  divide,
  equal,
  isZero,
  multiply,
  subtract,
  type Time,
  time,
  toNumber,
  ZERO,
} from '../../grammar/time';
import { type Clock, endOf, secondsOf } from '../score/clock';
import { type PerformedEvent, performedOnset } from '../score/performance';
import { isSpecial } from '../score/score';
import { isUpbeat, soundingDots, undotted } from './conditions';
import { degreeOf, intervalClass } from './degrees';
import { extreme, MOMENT, type Passage } from './passage';
import type { Place } from './place';

const highest = (passage: Passage, event: PerformedEvent | undefined): PerformedEvent | undefined =>
  event && extreme(passage.after(event), 'highest');

const isStepFrom = (a: PerformedEvent, b: PerformedEvent): boolean =>
  a.pitch !== undefined && b.pitch !== undefined && Math.abs(degreeOf(a.pitch) - degreeOf(b.pitch)) === 1;

/** Whether a short note a step away follows that is struck again as the next: the anticipation of that. */
function isAnticipated(passage: Passage, event: PerformedEvent): boolean {
  const next = highest(passage, event);
  const goal = highest(passage, next);
  if (next?.pitch === undefined || goal?.pitch?.midi !== next.pitch.midi || !isStepFrom(event, next)) return false;
  return compare(next.duration, divide(event.duration, time(2))) <= 0 && compare(next.duration, goal.duration) < 0;
}

/** Whether a note is tied on while the bass goes to another note. */
function isTiedOverMovingBass(passage: Passage, event: PerformedEvent): boolean {
  const [, tied] = event.from;
  const last = event.from.at(-1)?.placed;
  if (tied === undefined || last === undefined) return false;
  const before = passage.bassUnder(event, subtract(performedOnset(event, 1), MOMENT), event.from[0].placed.bar);
  const after = passage.bassUnder(event, subtract(endOf(event), MOMENT), last.bar);
  return before !== undefined && after !== undefined && before !== after;
}

/**
 * Whether a note, or its anticipation after it, goes to the final of a full close: by step, while the bass falls a fifth or
 * rises a fourth, to a note after which comes a rest, a double bar, or nothing.
 */
function isBeforeClose(passage: Passage, event: PerformedEvent): boolean {
  const next = highest(passage, event);
  const final = isAnticipated(passage, event) ? highest(passage, next) : next;
  if (final === undefined || !isStepFrom(event, final) || !isClosing(passage, final)) return false;
  const dominant = passage.bassUnder(event, subtract(endOf(event), MOMENT))?.pitch;
  const tonic = passage.bassUnder(final, final.onset)?.pitch;
  return dominant !== undefined && tonic !== undefined && intervalClass(tonic, dominant) === FOURTH;
}

/** Semitones by which the tonic lies above its dominant. */
const FOURTH = 5;

function isClosing(passage: Passage, final: PerformedEvent): boolean {
  const { bar } = final.from.at(-1)?.placed ?? final.from[0].placed;
  const next = passage.after(final)?.events[0];
  const endsBar = equal(endOf(final), endOf(bar)) && isSpecial(bar.closing);
  return next === undefined || next.kind === 'rest' || endsBar;
}

/**
 * When a trill comes to its stop: with a note of another voice that begins then, if one does soon before or after (Frescobaldi
 * 1615, from memory: the trill is free of the other hand, but it makes a stop).
 */
function alignedStop(passage: Passage, event: PerformedEvent, stop: Time): Time {
  const [end, usual] = [endOf(event), toNumber(stop)];
  const tolerance = toNumber(event.duration) / 8;
  const beside = passage
    .soundingIn(
      event.from[0].placed.bar,
      event.onset,
      end,
      ({ voice, onset }) => voice !== event.voice && compare(onset, event.onset) > 0,
    )
    .map(({ onset }) => subtract(end, onset))
    .filter((length) => Math.abs(toNumber(length) - usual) <= tolerance);
  const distance = (length: Time): number => Math.abs(toNumber(length) - usual);
  return beside.reduce((best, one) => (distance(one) < distance(best) ? one : best), beside[0] ?? stop);
}

/** A third or sixth away, or an octave more than that: degrees from one note to the other, within an octave. */
const PARALLEL: ReadonlySet<number> = new Set([2, 5]);

/** The highest of the notes that are trilled in thirds or sixths with this one, itself perhaps: the others go with it. */
function leaderOf(passage: Passage, event: PerformedEvent, signed: Bearers): PerformedEvent {
  const together = passage
    .beginningAt(event.from[0].placed.bar, event.onset)
    .filter((other) => other !== event && signed.has(other) && isParallel(event, other));
  return together.reduce((best, one) => ((one.pitch?.midi ?? 0) > (best.pitch?.midi ?? 0) ? one : best), event);
}

/** Whether a note lies a third or sixth above another and is as long. */
function isParallel(event: PerformedEvent, above: PerformedEvent): boolean {
  if (above.pitch === undefined || event.pitch === undefined) return false;
  const degrees = degreeOf(above.pitch) - degreeOf(event.pitch);
  return degrees > 0 && PARALLEL.has(degrees % 7) && equal(above.duration, event.duration);
}

const TWO_THIRDS = time(2, 3);

/** Whether performance has made a short note after a dot much shorter than it is written: a dot stretched, no unequal pair. */
export function isSnapped(passage: Passage, event: PerformedEvent): boolean {
  const { event: written } = event.from[0].placed;
  if (event.from.length > 1 || compare(event.duration, multiply(written.duration, TWO_THIRDS)) > 0) return false;
  const before = passage.before(event)?.events[0]?.from[0].placed.event.value;
  return (before?.dots ?? 0) > 0;
}

/** Seconds from which a trill before a close leans on its first note. */
const CADENCE = 0.7;

/** The notes that bear signs. */
export type Bearers = Pick<ReadonlySet<PerformedEvent>, 'has'>;

/** What is ahead of a trill; of any other sign it does not matter. */
export type Ahead = Pick<Place, 'stop' | 'anticipated' | 'cadential' | 'upbeat'>;

/**
 * What is ahead of a trill. One in thirds or sixths with a higher one goes as that does.
 *
 * @param length what it has of its note, which may be less than the whole
 * @param signed the notes that bear signs
 * @param leans a plain trill leans before a close, for the table has no other that does
 */
export function aheadOf(
  passage: Passage,
  event: PerformedEvent,
  length: Time,
  clock: Clock,
  signed: Bearers,
  leans: boolean,
): Ahead {
  const leader = leaderOf(passage, event, signed);
  return {
    stop: stopOf(passage, leader, length, clock),
    anticipated: isAnticipated(passage, leader),
    cadential: leans && secondsOf(clock, length) >= CADENCE && isBeforeClose(passage, leader),
    upbeat: isUpbeat(passage, leader, clock),
  };
}

/** What is ahead of a sign that is no trill. */
export const NOTHING_AHEAD: Ahead = { stop: ZERO, anticipated: false, cadential: false, upbeat: false };

/** Seconds from which a trill comes to a stop, and from which the stop is longer. */
const STOP = { from: 0.6, longer: 2 } as const;

/**
 * How long a trill stands on its note in the end: the dot of a dotted one; a third before an anticipation; none where the note
 * is tied on over another bass; else a quarter of a long note, a third of a very long one.
 */
function stopOf(passage: Passage, event: PerformedEvent, length: Time, clock: Clock): Time {
  const dot = dotIn(event);
  const lasts = secondsOf(clock, length);
  if (isTiedOverMovingBass(passage, event)) return ZERO;
  if (!isZero(dot)) return multiply(length, divide(dot, event.duration));
  if (isAnticipated(passage, event)) return divide(length, time(3));
  if (lasts < STOP.from) return ZERO;
  return alignedStop(passage, event, divide(length, time(lasts > STOP.longer ? 3 : 4)));
}

/** The part of a dotted note that its dot has; of one that performance has stretched half of the dot, stretched too. */
function dotIn(event: PerformedEvent): Time {
  const dots = soundingDots(event);
  if (dots === 0) return ZERO;
  const { duration: written } = event.from[0].placed.event;
  const base = undotted(written, dots);
  const stretched = compare(event.duration, written) > 0;
  return stretched
    ? divide(subtract(event.duration, base), time(2))
    : divide(event.duration, divide(written, subtract(written, base)));
}
