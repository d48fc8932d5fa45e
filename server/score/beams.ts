/** Beams: by the meter or the file's `beaming`, with the signs `&` and `,` of the lane. */
import { add, compare, divide, multiply, subtract, type Time, time, ZERO } from '../../grammar/time';
import type { ValueForm } from '../../grammar/tree';
import type { LaidBar } from './bars';
import type { LaneEvent } from './event';
import type { Meter } from './score';

export interface BeamRule {
  readonly value: ValueForm;
  readonly by: number;
}

const QUAVER = time(1, 8);

const hasFlag = (event: LaneEvent): boolean =>
  event.kind === 'note' && event.value !== undefined && compare(event.value.base, QUAVER) <= 0;

/** The time under one beam: by the rule of the value, else a beat; in cut time and 3/2 a minim, in triple quavers three. */
function spanOf(event: LaneEvent, meter: Meter | undefined, rules: readonly BeamRule[]): Time {
  const rule =
    rules.length === 0
      ? undefined
      : rules.find((one) => event.value !== undefined && compare(one.value.base, event.value.base) === 0);
  if (rule !== undefined) return multiply(rule.value.base, time(rule.by));
  if (meter === undefined) return time(1, 4);
  const compound = meter.beatValue >= 8 && meter.beats % 3 === 0;
  if (compound) return time(3, meter.beatValue);
  return time(1, Math.min(Math.max(meter.beatValue, 2), 4));
}

const floorOf = (t: Time): number => Math.floor(Number(t.n) / Number(t.d));

/** Gathers the notes of a voice under beams. */
class Beamer {
  /** The beam that is being made. */
  private first: LaneEvent | undefined;
  private last: LaneEvent | undefined;
  /** The time under one beam where the last note stands, and how many such have passed in its bar. */
  private span: Time = QUAVER;
  private count = 0;

  constructor(
    private readonly bars: readonly Pick<LaidBar, 'onset' | 'elapsed' | 'meter'>[],
    private readonly rules: readonly BeamRule[],
    public next: number,
  ) {}

  take(event: LaneEvent): void {
    if (!hasFlag(event)) {
      this.finish();
      return;
    }
    const before = this.last;
    const sign = event.beamSign;
    const inSpan = this.goesOnInSpan(before, event);
    if (before === undefined || sign === 'part' || (sign !== 'join' && !inSpan)) this.finish();
    this.first ??= event;
    event.beam = this.next;
    this.last = event;
  }

  /** A note alone has no beam. */
  finish(): void {
    if (this.first === undefined) return;
    if (this.first === this.last) this.first.beam = undefined;
    else this.next++;
    this.first = undefined;
    this.last = undefined;
  }

  private goesOnInSpan(before: LaneEvent | undefined, event: LaneEvent): boolean {
    if (event.small !== undefined) return before?.small?.group === event.small.group;
    const { span, count } = this;
    const sameBar = before !== undefined && before.small === undefined && before.bar === event.bar;
    if (!sameBar || before.value !== event.value) {
      this.span = spanOf(event, this.bars[event.bar]?.meter, this.rules);
    }
    this.count = this.countIn(event, this.span);
    return sameBar && count === this.count && compare(span, this.span) === 0;
  }

  /** How many times of one beam have passed in its bar. */
  private countIn(event: LaneEvent, span: Time): number {
    const bar = this.bars[event.bar];
    const inBar = add(subtract(event.onset, bar?.onset ?? ZERO), bar?.elapsed ?? ZERO);
    return floorOf(divide(inBar, span));
  }
}

/**
 * Tells the events of a voice, in their order, their beams: those of one number stand under one beam.
 * @param bars of the system
 * @param next the first number to use
 * @returns the next number to use
 */
export function setBeams(
  events: readonly LaneEvent[],
  bars: readonly Pick<LaidBar, 'onset' | 'elapsed' | 'meter'>[],
  rules: readonly BeamRule[],
  next: number,
): number {
  const beamer = new Beamer(bars, rules, next);
  let hasSmall = false;
  // Small notes do not part the beam of the notes around them.
  for (const event of events) {
    if (event.small === undefined) beamer.take(event);
    else hasSmall = true;
  }
  beamer.finish();
  if (hasSmall) for (const event of events) if (event.small !== undefined) beamer.take(event);
  beamer.finish();
  return beamer.next;
}
