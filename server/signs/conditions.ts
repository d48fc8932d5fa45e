/** Where a row of a table fits: what its `when` asks of a note. */
import { compare, divide, equal, type Time, time } from '../../grammar/time';
import type { ValueForm } from '../../grammar/tree';
import { type Clock, endOf, secondsOf } from '../score/clock';
import type { PerformedEvent, SoundingPitch } from '../score/performance';
import type { BorneSign } from './bearing';
import { degreeOf } from './degrees';
import type { Moment, Passage } from './passage';

/** The pitch of a moment that is nearest to another. */
export function nearestPitch(moment: Moment | undefined, to: SoundingPitch): SoundingPitch | undefined {
  const pitches = (moment?.events ?? []).flatMap(({ pitch }) => pitch ?? []);
  const distance = (pitch: SoundingPitch): number => Math.abs(degreeOf(pitch) - degreeOf(to));
  return pitches.reduce<SoundingPitch | undefined>(
    (best, pitch) => (best === undefined || distance(pitch) < distance(best) ? pitch : best),
    undefined,
  );
}

/** Degrees by which the note of a moment lies above another; undefined of a rest. */
function height(moment: Moment | undefined, pitch: SoundingPitch | undefined): number | undefined {
  const other = pitch && nearestPitch(moment, pitch);
  return other && pitch && degreeOf(other) - degreeOf(pitch);
}

interface Asked {
  readonly passage: Passage;
  readonly event: PerformedEvent;
  /** What bears the sign, of several tied notes. */
  readonly sign: Pick<BorneSign, 'written'>;
}

const drawnValue = ({ sign }: Asked): ValueForm | undefined => sign.written.placed.event.value;
const before = ({ passage, event }: Asked): number => height(passage.before(event), event.pitch) ?? 0;
const after = ({ passage, event }: Asked): number => height(passage.after(event), event.pitch) ?? 0;

/** Whether the note before is the upper neighbour and a curve leads from it. */
export const isSlurredFromAbove = (passage: Passage, event: PerformedEvent): boolean =>
  height(passage.before(event), event.pitch) === 1 && passage.isSlurredTo(event);

const conditions: Readonly<Record<string, (asked: Asked) => boolean>> = {
  rising: (asked) => before(asked) < 0,
  falling: (asked) => before(asked) > 0,
  dotted: (asked) => (drawnValue(asked)?.dots ?? 0) > 0,
  short: (asked) => {
    const value = drawnValue(asked)?.duration;
    return value !== undefined && compare(value, time(1, 8)) <= 0;
  },
  'before rest': ({ passage, event }) => passage.after(event)?.events[0]?.kind === 'rest',
  'before higher': (asked) => after(asked) > 0,
  'before lower': (asked) => after(asked) < 0,
  'before rising third': (asked) => after(asked) === 2,
  'before falling third': (asked) => after(asked) === -2,
  'slurred from above': ({ passage, event }) => isSlurredFromAbove(passage, event),
};

/** Whether a condition holds; a word that is none, which is a finding elsewhere, never does. */
export const holds = (condition: string, asked: Asked): boolean =>
  Object.hasOwn(conditions, condition) && conditions[condition]?.(asked) === true;

/** The dots with which a note sounds: none of tied notes, none where a practice of rhythm makes a silence of its dot. */
export function soundingDots({ from, duration, altered }: PerformedEvent): number {
  const { value, duration: written } = from[0].placed.event;
  const dots = from.length > 1 ? 0 : (value?.dots ?? 0);
  const isSilent = altered?.by.includes('overdot') === true && compare(duration, undotted(written, dots)) <= 0;
  return isSilent ? 0 : dots;
}

/** What is left of a duration without its dots. */
export const undotted = (duration: Time, dots: number): Time => divide(duration, time(2 ** (dots + 1) - 1, 2 ** dots));

/** Every condition that rows can name. */
export const conditionNames: readonly string[] = Object.keys(conditions);

/** The last short note before a barline, or a short one after a dot. */
export function isUpbeat(passage: Passage, event: PerformedEvent, clock: Clock): boolean {
  const { event: written, bar } = event.from[0].placed;
  const value = written.value?.duration;
  if (value === undefined || compare(value, time(1, 8)) > 0) return false;
  const lively = secondsOf(clock, time(1, 4)) <= 1;
  const before = passage.before(event)?.events[0]?.from[0].placed.event.value;
  return (lively && equal(endOf(event), endOf(bar))) || (before?.dots ?? 0) > 0;
}
