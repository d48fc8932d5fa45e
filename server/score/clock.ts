/** How long musical time lasts: what rules that speak of seconds and of notes a second go by. */
import { add, compare, divide, isZero, multiply, type Time, time, toNumber, ZERO } from '../../grammar/time';
import { valuesInWords } from './amounts';
import type { Meter, Piece, Tempo } from './score';
import { changesOf } from './walk';

export interface Clock {
  /** Semibreves a second. */
  readonly perSecond: Time;
  /** No tempo is stated: sixty crotchets a minute are assumed. */
  readonly assumed: boolean;
  /** "63 minims a minute". */
  readonly words: string;
  /** That of a note of music without measure, whose value is but nominal. */
  readonly unmeasured?: boolean;
}

/** Frequencies of a tempo may have three places behind the point. */
const exact = (number: number): Time => time(Math.round(number * 1000), 1000);

/** "63 minims a minute". */
export const tempoInWords = ({ value, perMinute }: Tempo): string => `${perMinute} ${valuesInWords(value)} a minute`;

const clockOf = (tempo: Tempo): Clock => ({
  perSecond: divide(multiply(tempo.value.duration ?? tempo.value.base, exact(tempo.perMinute)), time(60)),
  assumed: false,
  words: tempoInWords(tempo),
});

const CROTCHET = time(1, 4);

/** Sixty crotchets a minute. */
const ASSUMED: Clock = { perSecond: CROTCHET, assumed: true, words: '60 crotchets a minute' };

/** The tempo of the beginning, and how fast all of it is taken. */
export interface Opening {
  readonly tempo: Tempo | undefined;
  /** It is the reading's own and goes before what the first system states. */
  readonly ownTempo: boolean;
  /** By how much all tempi are quicker than they are stated: 1/2 is half as fast. As a rule 1. */
  readonly pace?: Time;
}

/** Seconds that a time lasts; where exactness ends, for comparisons only. */
export const secondsOf = ({ perSecond }: Clock, length: Time): number => toNumber(length) / toNumber(perSecond);

/** A time of so many seconds. */
export const lasting = ({ perSecond }: Clock, seconds: number): Time => multiply(perSecond, exact(seconds));

/** The length of one of `number` notes a second. */
export const oneOf = ({ perSecond }: Clock, number: number): Time => divide(perSecond, exact(number));

/**
 * A whole part of a length that lasts about so many seconds, at most one of `fewest` parts: exact, and of small numbers.
 */
export const partOf = (clock: Clock, length: Time, seconds: number, fewest: number): Time =>
  divide(length, time(Math.max(Math.ceil(fewest), Math.round(secondsOf(clock, length) / seconds), 1)));

/** What holds from a moment on. */
export interface From<What> {
  readonly onset: Time;
  readonly what: What;
}

/** Of a list in the order of time: what begins last at a moment or before it. */
export function lastBegun<One extends { readonly onset: Time }>(list: readonly One[], at: Time): One | undefined {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(list[middle]?.onset ?? at, at) <= 0) low = middle + 1;
    else high = middle;
  }
  return list[low - 1];
}

/** Of a list in the order of time: what is in force at a moment. */
export const inForce = <What>(list: readonly From<What>[], at: Time): What | undefined => lastBegun(list, at)?.what;

/** The tempo of a note of music without measure, and the moments of the source from which and to which it holds. */
export interface FlowingNote {
  readonly onset: Time;
  readonly end: Time;
  readonly clock: Clock;
}

/** Tempo and meter of a piece at every moment. */
export class Clocks {
  private readonly clocks: From<Clock>[] = [];
  private readonly beats: From<Time>[] = [];
  private readonly pace: Time | undefined;

  /**
   * @param isFirst a reading's own tempo is that of the beginning of the first piece, and of no other
   * @param flow in the order of time, at the pace of the opening; as a rule only the tempi that are stated count
   */
  constructor(
    piece: Piece,
    { tempo, ownTempo, pace }: Opening,
    isFirst: boolean,
    private readonly flow: readonly FlowingNote[] = [],
  ) {
    const stated = ownTempo && isFirst;
    this.pace = pace;
    if (tempo !== undefined) this.clocks.push({ onset: time(0), what: clockOf(tempo) });
    for (const { change, onset } of changesOf(piece)) {
      if (change.meter !== undefined) this.beats.push({ onset, what: beatOf(change.meter) });
      if (change.tempo === undefined || (stated && isZero(onset))) continue;
      this.clocks.push({ onset, what: clockOf(change.tempo) });
    }
  }

  at(onset: Time): Clock {
    const flowing = lastBegun(this.flow, onset);
    if (flowing !== undefined && compare(onset, flowing.end) < 0) return flowing.clock;
    const clock = inForce(this.clocks, onset) ?? ASSUMED;
    return this.pace === undefined ? clock : { ...clock, perSecond: multiply(clock.perSecond, this.pace) };
  }

  /** The tempi of the piece; the first holds from the beginning. */
  tempi(): readonly From<Clock>[] {
    const changes = this.clocks.map(({ onset }) => onset);
    const moments = [ZERO, ...changes, ...this.flow.flatMap(({ onset, end }) => [onset, end])].sort(compare);
    return moments.map((onset) => ({ onset, what: this.at(onset) }));
  }

  /** The length of a beat: that of the meter, dotted in 6/4, 6/8, 9/8 and 12/8 (Hotteterre 1719), or a crotchet. */
  beatAt(onset: Time): Time {
    return inForce(this.beats, onset) ?? CROTCHET;
  }
}

const beatOf = ({ beats, beatValue }: Meter): Time => time(isThreefold({ beats }) ? 3 : 1, beatValue);

/** Whether three of the values that a meter counts are one beat. */
export const isThreefold = ({ beats }: Pick<Meter, 'beats'>): boolean => beats > 3 && beats % 3 === 0;

/** The end of something that lasts. */
export const endOf = ({ onset, duration }: { readonly onset: Time; readonly duration: Time }): Time =>
  add(onset, duration);
