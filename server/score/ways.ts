/** What comes from another by `from`. */

/** The names passed on the way from a name back to itself; undefined where the way ends or circles without it. */
export function wayBack(name: string, parents: ReadonlyMap<string, string | undefined>): string[] | undefined {
  const way: string[] = [];
  const passed = new Set<string>();
  for (let at = parents.get(name); at !== undefined && !passed.has(at); at = parents.get(at)) {
    way.push(at);
    if (at === name) return way;
    passed.add(at);
  }
  return undefined;
}
