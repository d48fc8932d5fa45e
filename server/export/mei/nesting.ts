/** Puts elements that follow one another into what encloses them: tuplets, beams, passages. */
import { putUnder } from '../../../grammar/lists';
import type { XmlElement } from '../xml';

/** Items with the same object and system are enclosed together, with all that stands between them. */
export interface Enclosure {
  readonly of: object;
  /** Systems of equal text share their objects. */
  readonly system: object;
  /** Of two that enclose the same items the one of lower rank is the outer one. */
  readonly rank: number;
  readonly wrap: (children: readonly XmlElement[]) => XmlElement;
}

export interface Item {
  readonly elements: readonly XmlElement[];
  readonly within: readonly Enclosure[];
}

interface Interval {
  readonly enclosure: Enclosure;
  readonly from: number;
  to: number;
}

export interface Nested {
  readonly elements: readonly XmlElement[];
  /** What could not enclose its items, for it begins or ends inside something else. */
  readonly crossing: readonly object[];
}

/** @param mayCross those that give way where two enclosures overlap in part */
export function nested(items: readonly Item[], mayCross: (enclosure: Enclosure) => boolean): Nested {
  const all = intervalsOf(items);
  const firm = byEnds(all.filter(({ enclosure }) => !mayCross(enclosure)));
  const isCrossing = (one: Interval): boolean => mayCross(one.enclosure) && crosses(one, firm);
  const kept = all.filter((one) => !isCrossing(one)).sort(outermostFirst);
  return {
    elements: new Wrapper(items, kept).wrapped(0, items.length - 1),
    crossing: all.filter(isCrossing).map(({ enclosure }) => enclosure.of),
  };
}

function intervalsOf(items: readonly Item[]): readonly Interval[] {
  const found = new Map<object, Interval[]>();
  for (const [index, { within }] of items.entries()) {
    for (const enclosure of within) {
      const known = found.get(enclosure.of)?.find((one) => one.enclosure.system === enclosure.system);
      if (known === undefined) putUnder(found, enclosure.of, { enclosure, from: index, to: index });
      else known.to = index;
    }
  }
  return [...found.values()].flat();
}

/** Intervals by the items with which they begin, and by those with which they end. */
function byEnds(intervals: readonly Interval[]): ReadonlyMap<number, readonly Interval[]> {
  const found = new Map<number, Interval[]>();
  for (const one of intervals) for (const end of [one.from, one.to]) putUnder(found, end, one);
  return found;
}

/** Whether one of others, by their ends, begins or ends inside an interval and reaches out of it. */
function crosses(one: Interval, others: ReadonlyMap<number, readonly Interval[]>): boolean {
  for (let at = one.from; at <= one.to; at += 1) {
    if (others.get(at)?.some((other) => overlaps(one, other))) return true;
  }
  return false;
}

/** Neither holds the other, and they have items in common. */
const overlaps = (a: Interval, b: Interval): boolean =>
  a.from <= b.to && b.from <= a.to && !holds(a, b) && !holds(b, a);

const holds = (a: Interval, b: Interval): boolean => a.from <= b.from && a.to >= b.to;

const outermostFirst = (a: Interval, b: Interval): number =>
  a.from - b.from || b.to - a.to || a.enclosure.rank - b.enclosure.rank;

/** Puts the elements of items into intervals, which come from the outermost inwards; one that leaves what encloses it is left out. */
class Wrapper {
  /** The first of the intervals that was not looked at yet. */
  private next = 0;

  constructor(
    private readonly items: readonly Item[],
    private readonly intervals: readonly Interval[],
  ) {}

  /** The elements of the items `from` to `to`, within the intervals that lie there. */
  wrapped(from: number, to: number): readonly XmlElement[] {
    const elements: XmlElement[] = [];
    for (let at = from; at <= to; ) {
      const interval = this.nextAt(at, to);
      if (interval === undefined) elements.push(...(this.items[at]?.elements ?? []));
      else elements.push(interval.enclosure.wrap(this.wrapped(interval.from, interval.to)));
      at = (interval?.to ?? at) + 1;
    }
    return elements;
  }

  /** The interval that begins with an item and ends no later than another. */
  private nextAt(at: number, to: number): Interval | undefined {
    for (let one = this.intervals[this.next]; one !== undefined && one.from <= at; one = this.intervals[this.next]) {
      this.next += 1;
      if (one.from === at && one.to <= to) return one;
    }
    return undefined;
  }
}
