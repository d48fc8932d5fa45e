/** Musical time in seconds: what tempi make of it. */
import { subtract, type Time, toNumber } from '../../grammar/time';
import { type Clock, type From, lastBegun } from '../score/clock';

interface Stretch {
  readonly onset: Time;
  readonly seconds: number;
  readonly perSecond: number;
}

/** The seconds of a piece, from its beginning. */
export class Seconds {
  private readonly stretches: readonly Stretch[];

  /** @param tempi the first from the beginning */
  constructor(tempi: readonly From<Clock>[]) {
    const stretches: Stretch[] = [];
    for (const { onset, what } of tempi) {
      const last = stretches.at(-1);
      const seconds = last === undefined ? 0 : secondsIn(last, onset);
      stretches.push({ onset, seconds, perSecond: toNumber(what.perSecond) });
    }
    this.stretches = stretches;
  }

  at(moment: Time): number {
    const stretch = lastBegun(this.stretches, moment) ?? this.stretches[0];
    return stretch === undefined ? 0 : secondsIn(stretch, moment);
  }
}

const secondsIn = ({ onset, seconds, perSecond }: Stretch, moment: Time): number =>
  seconds + toNumber(subtract(moment, onset)) / perSecond;
