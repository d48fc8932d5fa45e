/** Beams of the notes that stand for a written one: within its own beam, or by the beat. */
import { compare, divide, subtract, type Time, time, toNumber } from '../../../grammar/time';
import type { Bar, VoiceEvent } from '../../score/score';
import { eventLike } from './events';

const QUAVER = time(1, 8);

/** Numbers of beams and of groups of small notes that nothing else in a system has. */
export class Numbers {
  private next: number;

  constructor(events: readonly VoiceEvent[]) {
    this.next = 1 + events.reduce((most, { beam = 0, small }) => Math.max(most, beam, small?.group ?? 0), 0);
  }

  take(): number {
    return this.next++;
  }
}

const hasFlag = ({ kind, value }: VoiceEvent): boolean =>
  kind === 'note' && value !== undefined && compare(value.base, QUAVER) <= 0;

/** An event with where it stands. */
export interface Timed {
  readonly event: VoiceEvent;
  readonly bar: Bar;
  readonly onset: Time;
}

/** A note and what stands for it are under one beam; what stands for a note without one has a beam for each beat. */
export function beamed(events: readonly Timed[], numbers: Numbers): readonly VoiceEvent[] {
  let beat: string | undefined;
  let beam: number | undefined;
  return events.map((timed) => {
    const { event } = timed;
    if (event.beam !== undefined) return event;
    const here = hasFlag(event) ? beatOf(timed) : undefined;
    if (here === undefined) beam = undefined;
    else if (here !== beat) beam = numbers.take();
    beat = here;
    return beam === undefined ? event : eventLike(event, { beam });
  });
}

/** The beat in which an event begins: a crotchet, dotted in compound times. */
function beatOf({ onset, bar }: Timed): string {
  const { meter } = bar;
  const compound = meter !== undefined && meter.beatValue >= 8 && meter.beats % 3 === 0;
  const beat = compound ? time(3, meter.beatValue) : time(1, 4);
  return `${bar.index} ${Math.floor(toNumber(divide(subtract(onset, bar.onset), beat)))}`;
}

/** Small notes of one group are under one beam. */
export const beamedTogether = (events: readonly VoiceEvent[], numbers: Numbers): readonly VoiceEvent[] => {
  if (events.length < 2 || !events.every(hasFlag)) return events;
  const beam = numbers.take();
  return events.map((event) => eventLike(event, { beam }));
};
