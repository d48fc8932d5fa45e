/** Puts something at the end of the list of a key. */
export function putUnder<Key, Item>(lists: Map<Key, Item[]>, key: Key, item: Item): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [item]);
  else list.push(item);
}
