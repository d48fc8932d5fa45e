/** Puts something at the end of the list of a key. */
export function putUnder<Key, Item>(lists: Map<Key, Item[]>, key: Key, item: Item): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [item]);
  else list.push(item);
}

/** Items by their keys, in their order. */
export function grouped<Key, Item>(items: readonly Item[], keyOf: (item: Item) => Key): Map<Key, Item[]> {
  const lists = new Map<Key, Item[]>();
  for (const item of items) putUnder(lists, keyOf(item), item);
  return lists;
}

/** A list with one more at its end, and no room for others: for lists that stay for long. */
export const andOne = <T>(list: readonly T[], one: T): readonly T[] => (list.length === 0 ? [one] : list.concat([one]));
