/** Promises the code makes to itself. A broken one is a bug, so it throws; what the engineer can correct is a finding instead. */

/** Throws when a condition that must always hold does not. */
export function assert(condition: boolean, whatMustHold: string): asserts condition {
  if (!condition) throw new Error(`broken promise: ${whatMustHold}`);
}

/** The item at `index`, which must exist. */
export function itemAt<Item>(list: ArrayLike<Item>, index: number): Item {
  const item = list[index];
  if (item === undefined) throw new Error(`broken promise: item ${index} of ${list.length} exists`);
  return item;
}

/** The value of `key`, which must exist. */
export function valueAt<Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value {
  const value = map.get(key);
  if (value === undefined) throw new Error(`broken promise: ${String(key)} of ${map.size} exists`);
  return value;
}
