/** What comes from another by `from`. */

/** So many names of a circle are told. */
const MOST_TOLD = 10;

/** Names of which each comes from the next, and the last from the first. */
type Circle = readonly string[];

/** The names from which the way leads back to themselves, each with its circle, which is one list for all that are on it. */
export function circlesOf(parents: ReadonlyMap<string, string | undefined>): ReadonlyMap<string, Circle> {
  const circles = new Map<string, Circle>();
  /** By name the start of the walk on which it was first passed. */
  const passed = new Map<string, string>();
  for (const start of parents.keys()) {
    let at: string | undefined = start;
    for (; at !== undefined && !passed.has(at); at = parents.get(at)) passed.set(at, start);
    if (at === undefined || passed.get(at) !== start) continue;
    const circle: string[] = [];
    for (; at !== undefined && !circles.has(at); at = parents.get(at)) {
      circles.set(at, circle);
      circle.push(at);
    }
  }
  return circles;
}

/** One name of each circle, the first of those given, with the names passed from it back to itself: "b, c, a". */
export function waysRound(circles: ReadonlyMap<string, Circle>, names: Iterable<string>): ReadonlyMap<string, string> {
  const ways = new Map<string, string>();
  const told = new Set<Circle>();
  for (const name of names) {
    const circle = circles.get(name);
    if (circle === undefined || told.has(circle)) continue;
    told.add(circle);
    ways.set(name, wayBack(name, circle));
  }
  return ways;
}

/** The names passed from one on a circle back to itself; of a long way the first. */
function wayBack(name: string, circle: Circle): string {
  const next = circle.indexOf(name) + 1;
  const way = [...circle.slice(next), ...circle.slice(0, next)];
  return way.length > MOST_TOLD ? `${way.slice(0, MOST_TOLD).join(', ')} …` : way.join(', ');
}
