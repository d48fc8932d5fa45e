/** Proportions: by how much they change time, and values with `x` gathered into tuplets. */
import type { Slots } from '../../../grammar/findings/finding';
import { isPossibleProportion } from '../../../grammar/lanes/forms';
import { andOne } from '../../../grammar/lists';
import { add, compare, divide, latest, multiply, SEMIBREVE, type Time, time, ZERO } from '../../../grammar/time';
import type { SpanItem } from '../../../grammar/tree';
import { isBinary } from '../amounts';
import { type LaneEvent, surround } from '../event';
import type { Tuplet } from '../score';

type Proportion = NonNullable<SpanItem['head']['proportion']>;

/** Values under one proportion that follow one another. */
interface Group {
  readonly events: readonly LaneEvent[];
  readonly proportion: Proportion;
}

/** By how much a proportion changes time; undefined if it cannot be. */
export const scaleOf = (proportion: Proportion | undefined): Time | undefined => {
  if (proportion === undefined) return SEMIBREVE;
  return isPossibleProportion(proportion) ? divide(time(proportion.m), time(proportion.n)) : undefined;
};

/** What the sentence about an incomplete tuplet names. */
export const tupletSlots = ({ n, m }: Proportion): Slots => ({ head: `${n} in ${m}`, n });

const CROTCHET = time(1, 4);
const none: readonly never[] = [];

/**
 * Gathers values with `x` into tuplets: a group is complete when its written values fill N units of a binary value that
 * is no smaller than its largest, or when it fills a crotchet or more (a crotchet and a quaver under one three).
 * @returns the groups that are not complete
 */
export function gatherProportions(events: readonly LaneEvent[]): readonly Group[] {
  if (!events.some(isProportioned)) return none;
  const incomplete: Group[] = [];
  for (const group of groupsIn(events)) if (!setTuplet(group).complete) incomplete.push(group);
  return incomplete;
}

const isProportioned = ({ value }: LaneEvent): boolean => value?.proportion !== undefined;

function groupsIn(all: readonly LaneEvent[]): Group[] {
  const groups: Group[] = [];
  let events: LaneEvent[] = [];
  let open: Proportion | undefined;
  const finish = (): void => {
    if (open !== undefined) groups.push({ events, proportion: open });
    events = [];
    open = undefined;
  };
  for (const event of all) {
    if (event.small !== undefined) continue;
    const { proportion, duration } = event.value ?? {};
    if (open !== undefined && (proportion?.n !== open.n || proportion.m !== open.m)) finish();
    if (proportion === undefined || duration === undefined) continue;
    events.push(event);
    open = proportion;
    if (isWhole(events, proportion)) finish();
  }
  finish();
  return groups;
}

function setTuplet({ events, proportion: { n, m } }: Group): Tuplet {
  const unit = unitOf(events, n);
  const tuplet: Tuplet = { n, m, drawn: false, unit, complete: isBinary(unit), marks: [], annotations: [] };
  surround(events, ({ tuplets }) => ({ tuplets: andOne(tuplets, tuplet) }));
  return tuplet;
}

/** The value of which a group fills n. */
const unitOf = (events: readonly LaneEvent[], n: number): Time =>
  divide(
    events.reduce((total, event) => add(total, writtenTime(event)), ZERO),
    time(n),
  );

function isWhole(events: readonly LaneEvent[], { n, m }: Proportion): boolean {
  const unit = unitOf(events, n);
  if (!isBinary(unit)) return false;
  const largest = events.reduce((most, { value }) => latest(most, value?.base ?? ZERO), ZERO);
  return compare(unit, largest) >= 0 || compare(multiply(unit, time(m)), CROTCHET) >= 0;
}

/** The written value without its proportion. */
function writtenTime({ value }: LaneEvent): Time {
  if (value?.duration === undefined) return ZERO;
  const { proportion } = value;
  return proportion === undefined
    ? value.duration
    : multiply(value.duration, divide(time(proportion.n), time(proportion.m)));
}
