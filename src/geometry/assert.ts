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
