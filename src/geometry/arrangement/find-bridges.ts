/**
 * Pieces that border nothing, taken out: dangling ends, and bridges between closed outlines. Both have the same face on
 * either side, which is to say that no closed way leads through them: the bridges of graph theory, found by one
 * depth-first walk (R. E. Tarjan, A note on finding the bridges of a graph, 1974). Cost: linear.
 */
import { itemAt } from '#geometry/assert.ts';

interface Link {
  readonly start: number;
  readonly end: number;
}

/** For each link whether it is a bridge. Places are numbers below `placeCount`. */
export function findBridges(links: readonly Link[], placeCount: number): boolean[] {
  const isBridge = links.map(() => false);
  const walk: Walk = {
    links,
    ...linksByPlace(links, placeCount),
    next: new Int32Array(placeCount),
    entered: new Int32Array(placeCount),
    lowest: new Int32Array(placeCount),
  };
  walk.next.set(walk.first.subarray(0, placeCount));
  for (let root = 0; root < placeCount; root++)
    if (walk.entered[root] === 0) markBridgesFrom(root, walk, isBridge);
  return isBridge;
}

interface Walk {
  readonly links: readonly Link[];
  /** The links of `place` stand in `linkAt` from `first[place]` to `first[place + 1]`; `next` is how far each is tried. */
  readonly first: Int32Array;
  readonly linkAt: Int32Array;
  readonly next: Int32Array;
  /** When the walk came to each place, from 1, and the earliest place that it can get back to without going back. */
  readonly entered: Int32Array;
  readonly lowest: Int32Array;
}

function markBridgesFrom(root: number, walk: Walk, isBridge: boolean[]): void {
  const { entered, lowest } = walk;
  const way = [{ place: root, by: -1 }];
  let clock = 1;
  lowest[root] = entered[root] = clock;
  for (let here = way.at(-1); here !== undefined; here = way.at(-1)) {
    const { place, by } = here;
    const link = tryNextLink(place, walk);
    if (link !== undefined) {
      if (link.number === by) continue;
      if (entered[link.to] === 0) {
        lowest[link.to] = entered[link.to] = ++clock;
        way.push({ place: link.to, by: link.number });
      } else lowest[place] = Math.min(itemAt(lowest, place), itemAt(entered, link.to));
      continue;
    }
    way.pop();
    const above = way.at(-1);
    if (above === undefined) return;
    lowest[above.place] = Math.min(itemAt(lowest, above.place), itemAt(lowest, place));
    if (itemAt(lowest, place) > itemAt(entered, above.place)) isBridge[by] = true;
  }
}

function tryNextLink(
  place: number,
  { links, first, linkAt, next }: Walk,
): { number: number; to: number } | undefined {
  const cursor = itemAt(next, place);
  if (cursor === itemAt(first, place + 1)) return undefined;
  next[place] = cursor + 1;
  const number = itemAt(linkAt, cursor);
  const { start, end } = itemAt(links, number);
  return { number, to: start === place ? end : start };
}

/** The links of every place, as ranges of one list: those of `place` stand from `first[place]` to `first[place + 1]`. */
function linksByPlace(links: readonly Link[], placeCount: number): { first: Int32Array; linkAt: Int32Array } {
  const first = new Int32Array(placeCount + 1);
  for (const { start, end } of links) {
    first[start + 1] = itemAt(first, start + 1) + 1;
    first[end + 1] = itemAt(first, end + 1) + 1;
  }
  for (let place = 0; place < placeCount; place++) {
    first[place + 1] = itemAt(first, place + 1) + itemAt(first, place);
  }
  const fill = first.slice();
  const linkAt = new Int32Array(2 * links.length);
  links.forEach(({ start, end }, number) => {
    for (const place of [start, end]) {
      const at = itemAt(fill, place);
      linkAt[at] = number;
      fill[place] = at + 1;
    }
  });
  return { first, linkAt };
}
