/**
 * Slots shared out to as few templates as can be found, none with two that are too near to each other: the colouring of a
 * graph, vertex by vertex, always the one next whose neighbours already have the most colours (D. Brélaz, New methods to
 * color the vertices of a graph, Communications of the ACM 22 (1979), 251-256; the rule is quoted from memory). The result
 * need not be least, so a number is found beside it that no sharing can go under: slots that are all near to each other.
 */
import { itemAt } from '#geometry/assert.ts';

export interface Sharing {
  /** Template of each slot, from 0. */
  readonly templates: readonly number[];
  readonly count: number;
  /** No sharing does with fewer. */
  readonly least: number;
}

export function shareOut(slots: number, pairs: readonly (readonly [number, number])[]): Sharing {
  const near: Set<number>[] = Array.from({ length: slots }, () => new Set());
  for (const [a, b] of pairs) {
    itemAt(near, a).add(b);
    itemAt(near, b).add(a);
  }
  const templates: number[] = Array.from({ length: slots }, () => 0);
  for (const group of groupsOf(near)) {
    if (group.length > 1) colorGroup(group, near, templates);
  }
  return {
    templates,
    count: slots === 0 ? 0 : Math.max(...templates.map((each) => each + 1)),
    least: slots === 0 ? 0 : largestFound(near),
  };
}

/** Slots that hang together, each group ascending. */
function groupsOf(near: readonly ReadonlySet<number>[]): number[][] {
  const seen = new Set<number>();
  const groups: number[][] = [];
  for (const start of near.keys()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const group = [start];
    for (const at of group) {
      for (const next of itemAt(near, at)) {
        if (seen.has(next)) continue;
        seen.add(next);
        group.push(next);
      }
    }
    groups.push(group.sort((a, b) => a - b));
  }
  return groups;
}

function colorGroup(
  group: readonly number[],
  near: readonly ReadonlySet<number>[],
  templates: number[],
): void {
  const left = new Set(group);
  const taken = new Map(group.map((slot) => [slot, new Set<number>()]));
  const weight = (slot: number): number =>
    (taken.get(slot)?.size ?? 0) * near.length + itemAt(near, slot).size;
  while (left.size > 0) {
    let next = -1;
    let most = -1;
    for (const slot of left) {
      if (weight(slot) <= most) continue;
      most = weight(slot);
      next = slot;
    }
    const used = taken.get(next) ?? new Set();
    let color = 0;
    while (used.has(color)) color++;
    templates[next] = color;
    left.delete(next);
    for (const other of itemAt(near, next)) taken.get(other)?.add(color);
  }
}

/** Size of the largest set of slots found that are all near to each other: grown from each slot, most neighbours first. */
function largestFound(near: readonly ReadonlySet<number>[]): number {
  let largest = 1;
  for (const [start, neighbours] of near.entries()) {
    if (neighbours.size < largest) continue;
    const set = [start];
    const byNeighbours = [...neighbours].sort((a, b) => itemAt(near, b).size - itemAt(near, a).size || a - b);
    for (const slot of byNeighbours) {
      if (set.every((member) => itemAt(near, member).has(slot))) set.push(slot);
    }
    largest = Math.max(largest, set.length);
  }
  return largest;
}
