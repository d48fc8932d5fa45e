/** What comes from another by `from`. */

/** So many names of a circle are told. */
const MOST_TOLD = 10;

/** The names from which the way leads back to themselves, each with the names passed on it: "b, c, a". */
export function circlesOf(parents: ReadonlyMap<string, string | undefined>): ReadonlyMap<string, string> {
  const circles = new Map<string, string>();
  /** By name the start of the walk on which it was first passed. */
  const passed = new Map<string, string>();
  for (const start of parents.keys()) {
    let at: string | undefined = start;
    for (; at !== undefined && !passed.has(at); at = parents.get(at)) passed.set(at, start);
    if (at === undefined || passed.get(at) !== start) continue;
    for (; at !== undefined && !circles.has(at); at = parents.get(at)) circles.set(at, wayBack(at, parents));
  }
  return circles;
}

/** The names passed from one on a circle back to itself; of a long way the first. */
function wayBack(name: string, parents: ReadonlyMap<string, string | undefined>): string {
  const way: string[] = [];
  for (let at = parents.get(name); at !== undefined; at = parents.get(at)) {
    if (way.length === MOST_TOLD) return `${way.join(', ')} …`;
    way.push(at);
    if (at === name) break;
  }
  return way.join(', ');
}
