/** Stretches of time in which a practice moves what some voice strikes, and the performed time that they make. */
import { add, compare, divide, equal, multiply, subtract, type Time } from '../../grammar/time';
import type { Stroke } from './lines';
import type { Acting } from './ruling';

/** A written moment and when it comes. */
export interface Knot {
  readonly written: Time;
  readonly performed: Time;
}

/** A stretch of one voice. Its ends stay, so that what one note loses its neighbour gains; between knots time runs evenly. */
export interface Stretch {
  readonly voice: number;
  readonly knots: readonly [Knot, ...Knot[]];
  /** Performed: when the note that stands at its beginning falls silent, if it does before its time is over. */
  readonly silentFrom?: Time;
  readonly acting: Acting;
  /** Where it is told. */
  readonly stroke: Stroke;
}

export const fixed = (at: Time): Knot => ({ written: at, performed: at });

export const startOf = ({ knots }: Stretch): Time => knots[0].written;
export const endOf = ({ knots }: Stretch): Time => (knots.at(-1) ?? knots[0]).written;

/** What moves together: all of it or nothing. */
export type Together = readonly Stretch[];

/** Whether it moves anything. */
export const moves = ({ knots, silentFrom }: Stretch): boolean =>
  silentFrom !== undefined || knots.some(({ written, performed }) => !equal(written, performed));

/** Performed time: stretches of each voice, none over another. */
export class PerformedTime {
  private readonly byVoice = new Map<number, Stretch[]>();

  /** Takes what moves together; where something that was taken before lies over it, answers that and takes nothing. */
  take(together: Together): Stretch | undefined {
    for (const stretch of together) {
      const over = this.over(stretch);
      if (over !== undefined) return over;
    }
    for (const stretch of together) {
      const own = this.byVoice.get(stretch.voice) ?? [];
      own.splice(placeIn(own, startOf(stretch)), 0, stretch);
      this.byVoice.set(stretch.voice, own);
    }
    return undefined;
  }

  /** The stretches of a voice before and after a moment; what begins then comes after. */
  private beside(voice: number, at: Time): readonly [Stretch | undefined, Stretch | undefined] {
    const own = this.byVoice.get(voice) ?? [];
    const index = placeIn(own, at);
    return [own[index - 1], own[index]];
  }

  private over(stretch: Stretch): Stretch | undefined {
    const [before, after] = this.beside(stretch.voice, startOf(stretch));
    if (before !== undefined && compare(endOf(before), startOf(stretch)) > 0) return before;
    return after !== undefined && compare(startOf(after), endOf(stretch)) < 0 ? after : undefined;
  }

  /** Whether anything in a voice is moved from one written moment to another, both included. */
  reaches(voice: number, from: Time, to: Time): boolean {
    const [before, after] = this.beside(voice, from);
    if (before !== undefined && compare(endOf(before), from) > 0) return true;
    return after !== undefined && compare(startOf(after), to) <= 0;
  }

  /** The stretch of a voice within which a written moment lies, its own beginning included. */
  around(voice: number, written: Time): Stretch | undefined {
    const [before, after] = this.beside(voice, written);
    const stretch = after !== undefined && equal(startOf(after), written) ? after : before;
    return stretch !== undefined && compare(written, endOf(stretch)) < 0 ? stretch : undefined;
  }

  /** When a written moment of a voice comes. */
  at(voice: number, written: Time): Time {
    const stretch = this.around(voice, written);
    return stretch === undefined ? written : between(stretch.knots, written);
  }
}

/** The place of the first stretch that begins at a moment or later. */
function placeIn(stretches: readonly Stretch[], at: Time): number {
  let [low, high] = [0, stretches.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const stretch = stretches[middle];
    if (stretch !== undefined && compare(startOf(stretch), at) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
}

function between(knots: readonly Knot[], written: Time): Time {
  const index = knots.findIndex((knot) => compare(knot.written, written) >= 0);
  const [before, after] = [knots[index - 1], knots[index]];
  if (after === undefined) return written;
  if (before === undefined || equal(after.written, written)) return after.performed;
  const share = divide(subtract(written, before.written), subtract(after.written, before.written));
  return add(before.performed, multiply(share, subtract(after.performed, before.performed)));
}
