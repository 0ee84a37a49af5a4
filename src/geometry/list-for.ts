/** The list of a key, begun where there is none yet. */
export function listFor<Key, Item>(lists: Map<Key, Item[]>, key: Key): Item[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}
