/** Whether two lists hold the very same things in the same order. */
export function areSame<Item>(a: readonly Item[], b: readonly Item[]): boolean {
  return a.length === b.length && a.every((item, at) => item === b[at]);
}
