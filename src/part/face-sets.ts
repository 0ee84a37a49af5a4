/**
 * Sets of faces that unite and come apart again in the reverse order, each with its area and members. The smaller set hangs under
 * the larger, without shortcuts, so that one step undoes a union. Cost: log of the count a call.
 */
import { itemAt } from '#geometry/assert.ts';

export interface FaceSets {
  /** The face that stands for the set. */
  readonly find: (face: number) => number;
  readonly unite: (a: number, b: number) => void;
  /** Sum of its faces' areas, the outside's included; the set is given by the face that stands for it. */
  readonly areaOf: (set: number) => number;
  readonly membersOf: (set: number) => Iterable<number>;
  /** How far it has come; `undoTo` takes apart what was united since. */
  readonly mark: () => number;
  readonly undoTo: (mark: number) => void;
}

export function faceSets(faceAreas: readonly number[]): FaceSets {
  const parent = faceAreas.map((_, face) => face);
  const counts = faceAreas.map(() => 1);
  const areas = [...faceAreas];
  /** The next member of the same set: a ring, so that changing over two steps joins two rings, and parts them again. */
  const next = faceAreas.map((_, face) => face);
  const unions: { readonly under: number; readonly over: number; readonly area: number }[] = [];

  const find = (face: number): number => {
    let at = face;
    for (let above = itemAt(parent, at); above !== at; above = itemAt(parent, at)) at = above;
    return at;
  };
  const changeOver = (a: number, b: number): void => {
    const after = itemAt(next, a);
    next[a] = itemAt(next, b);
    next[b] = after;
  };
  return {
    find,
    unite: (a, b) => {
      const setA = find(a);
      const setB = find(b);
      if (setA === setB) return;
      const isSmaller = itemAt(counts, setA) < itemAt(counts, setB);
      const [under, over] = isSmaller ? [setA, setB] : [setB, setA];
      unions.push({ under, over, area: itemAt(areas, over) });
      parent[under] = over;
      counts[over] = itemAt(counts, over) + itemAt(counts, under);
      areas[over] = itemAt(areas, over) + itemAt(areas, under);
      changeOver(under, over);
    },
    areaOf: (set) => itemAt(areas, set),
    *membersOf(set) {
      let at = set;
      do {
        yield at;
        at = itemAt(next, at);
      } while (at !== set);
    },
    mark: () => unions.length,
    undoTo: (mark) => {
      for (let last = unions.length > mark ? unions.pop() : undefined; last !== undefined; ) {
        const { under, over, area } = last;
        parent[under] = under;
        counts[over] = itemAt(counts, over) - itemAt(counts, under);
        areas[over] = area;
        changeOver(under, over);
        last = unions.length > mark ? unions.pop() : undefined;
      }
    },
  };
}
