/** Sets of small numbers that only ever unite; near constant cost a call. */

export interface DisjointSets {
  /** The smallest number of the set that holds `item`, whatever the order in which sets were united. */
  readonly find: (item: number) => number;
  readonly unite: (a: number, b: number) => void;
}

/** `count` sets of one number each. */
export function disjointSets(count: number): DisjointSets {
  const parent = Int32Array.from({ length: count }, (_, item) => item);
  const find = (item: number): number => {
    let at = item;
    let above = parent[at] ?? at;
    while (above !== at) {
      const next = parent[above] ?? above;
      parent[at] = next;
      at = next;
      above = parent[at] ?? at;
    }
    return at;
  };
  const unite = (a: number, b: number): void => {
    const rootA = find(a);
    const rootB = find(b);
    if (rootA !== rootB) parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
  };
  return { find, unite };
}
