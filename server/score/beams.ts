/** Beams: by the meter or the file's `beaming`, with the signs `&` and `,` of the lane. */
import { compare, divide, multiply, type Time, time } from '../../grammar/time';
import type { ValueForm } from '../../grammar/tree';
import type { Meter } from './score';

/** What beaming asks of an event, in the order of its voice. */
export interface Beamable {
  readonly bar: number;
  /** From the beginning of the bar. */
  readonly inBar: Time;
  readonly value: ValueForm | undefined;
  readonly isNote: boolean;
  /** Group of small notes, which have beams of their own. */
  readonly small: number | undefined;
  readonly sign: 'join' | 'part' | undefined;
}

export interface BeamRule {
  readonly value: ValueForm;
  readonly by: number;
}

const QUAVER = time(1, 8);

const hasFlag = (event: Beamable): boolean =>
  event.isNote && event.value !== undefined && compare(event.value.base, QUAVER) <= 0;

/** The time under one beam: by the rule of the value, else a beat; in cut time and 3/2 a minim, in triple quavers three. */
function spanOf(event: Beamable, meter: Meter | undefined, rules: readonly BeamRule[]): Time {
  const rule = rules.find((one) => event.value !== undefined && compare(one.value.base, event.value.base) === 0);
  if (rule !== undefined) return multiply(rule.value.base, time(rule.by));
  if (meter === undefined) return time(1, 4);
  const compound = meter.beatValue >= 8 && meter.beats % 3 === 0;
  if (compound) return time(3, meter.beatValue);
  return time(1, Math.min(Math.max(meter.beatValue, 2), 4));
}

const floorOf = (t: Time): number => Math.floor(Number(t.n) / Number(t.d));

/**
 * The beam of each event: events of one number stand under one beam; undefined for those without.
 * @param first the first number to use
 */
export function beamsOf(
  events: readonly Beamable[],
  meterOf: (bar: number) => Meter | undefined,
  rules: readonly BeamRule[],
  first: number,
): (number | undefined)[] {
  const beams: (number | undefined)[] = events.map(() => undefined);
  let group: number[] = [];
  let number = first;
  const finish = (): void => {
    if (group.length > 1) {
      for (const index of group) beams[index] = number;
      number++;
    }
    group = [];
  };
  const sameGroup = (before: Beamable, event: Beamable): boolean => {
    if (before.small !== event.small) return false;
    if (event.small !== undefined) return true;
    if (before.bar !== event.bar) return false;
    const span = spanOf(event, meterOf(event.bar), rules);
    return (
      compare(span, spanOf(before, meterOf(event.bar), rules)) === 0 &&
      floorOf(divide(before.inBar, span)) === floorOf(divide(event.inBar, span))
    );
  };
  const main = (small: boolean): void => {
    events.forEach((event, index) => {
      if ((event.small !== undefined) !== small) return;
      const before = events[group.at(-1) ?? -1];
      if (!hasFlag(event)) {
        finish();
        return;
      }
      const goesOn =
        before !== undefined && (event.sign === 'join' || (event.sign !== 'part' && sameGroup(before, event)));
      if (!goesOn) finish();
      group.push(index);
    });
    finish();
  };
  // Small notes do not part the beam of the notes around them.
  main(false);
  main(true);
  return beams;
}
