/** Puts elements that follow one another into what encloses them: tuplets, beams, passages. */
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
  const firm = all.filter(({ enclosure }) => !mayCross(enclosure));
  const isCrossing = (one: Interval): boolean => mayCross(one.enclosure) && firm.some((other) => overlaps(one, other));
  const kept = all.filter((one) => !isCrossing(one)).sort(outermostFirst);
  return {
    elements: wrapped(items, 0, items.length - 1, kept),
    crossing: all.filter(isCrossing).map(({ enclosure }) => enclosure.of),
  };
}

function intervalsOf(items: readonly Item[]): readonly Interval[] {
  const found: Interval[] = [];
  for (const [index, { within }] of items.entries()) {
    for (const enclosure of within) {
      const known = found.find((one) => one.enclosure.of === enclosure.of && one.enclosure.system === enclosure.system);
      if (known === undefined) found.push({ enclosure, from: index, to: index });
      else known.to = index;
    }
  }
  return found;
}

/** Neither holds the other, and they have items in common. */
const overlaps = (a: Interval, b: Interval): boolean =>
  a.from <= b.to && b.from <= a.to && !holds(a, b) && !holds(b, a);

const holds = (a: Interval, b: Interval): boolean => a.from <= b.from && a.to >= b.to;

const outermostFirst = (a: Interval, b: Interval): number =>
  a.from - b.from || b.to - a.to || a.enclosure.rank - b.enclosure.rank;

/** The elements of the items `from` to `to`, within the intervals that lie there. */
function wrapped(items: readonly Item[], from: number, to: number, inside: readonly Interval[]): readonly XmlElement[] {
  const elements: XmlElement[] = [];
  let rest = inside;
  for (let at = from; at <= to; ) {
    const [next, ...others] = rest;
    if (next === undefined || next.from > at) {
      elements.push(...(items[at]?.elements ?? []));
      at += 1;
      continue;
    }
    const own = others.filter((one) => holds(next, one));
    elements.push(next.enclosure.wrap(wrapped(items, next.from, next.to, own)));
    rest = others.filter((one) => one.from > next.to);
    at = next.to + 1;
  }
  return elements;
}
