/**
 * Faces from the borders that were walked: each cycle becomes simple loops, and each connected part of the linework is
 * laid as holes into the face that it lies in. Cost: near linear, by an index of the outer loops' boxes.
 */

import { assert, itemAt } from '#geometry/assert.ts';
import { boxOfPoints, boxOfSpans } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea } from '#geometry/span.ts';
import type { Face } from './arrangement.ts';
import { loopOfHalves, originOf, type TraceableEdge, type TracedCycle } from './trace-faces.ts';

interface SimpleCycle {
  readonly halves: readonly number[];
  readonly loop: Loop;
  readonly area: number;
}

interface Disc {
  readonly part: number;
  readonly outer: SimpleCycle;
  readonly holes: SimpleCycle[];
}

/** Outside first, then by the least vertex of the outer loop. Loops start at their least vertex, holes follow likewise. */
export function nestCycles(
  cycles: readonly TracedCycle[],
  graph: { edges: readonly TraceableEdge[]; vertices: readonly Point[] },
): Face[] {
  const { edges, vertices } = graph;
  const simple = cycles.map(({ halves }) => simpleCycles(edges, halves));
  const discs: Disc[] = [];
  cycles.forEach(({ part, isOutside }, number) => {
    if (!isOutside) discs.push(discOf(part, itemAt(simple, number)));
  });
  discs.sort((a, b) => compareCycles(edges, a.outer, b.outer));
  const outsideHoles: SimpleCycle[] = [];
  const find = discFinder(discs);
  cycles.forEach(({ part, isOutside }, number) => {
    if (!isOutside) return;
    const holes = find(itemAt(vertices, part), part)?.holes ?? outsideHoles;
    for (const cycle of itemAt(simple, number)) holes.push(cycle);
  });
  const inOrder = (holes: SimpleCycle[]) => holes.sort((a, b) => compareCycles(edges, a, b));
  const outside = faceOf(inOrder(outsideHoles), 0);
  return [
    outside,
    ...discs.map(({ outer, holes }) => {
      const area = holes.reduce((sum, hole) => sum + hole.area, outer.area);
      return faceOf([outer, ...inOrder(holes)], area);
    }),
  ];
}

/** A cycle cut where it comes back to a vertex, so that no loop passes a vertex twice. */
function simpleCycles(edges: readonly TraceableEdge[], halves: readonly number[]): SimpleCycle[] {
  const simple: SimpleCycle[] = [];
  const way: number[] = [];
  const stepAt = new Map<number, number>();
  for (const half of halves) {
    stepAt.set(originOf(edges, half), way.length);
    way.push(half);
    const back = stepAt.get(originOf(edges, half ^ 1));
    if (back === undefined) continue;
    const loop = way.splice(back);
    for (const each of loop) stepAt.delete(originOf(edges, each));
    simple.push(simpleCycleOf(edges, loop));
  }
  assert(way.length === 0, 'a border comes back to where it began');
  return simple;
}

function simpleCycleOf(edges: readonly TraceableEdge[], halves: readonly number[]): SimpleCycle {
  let least = 0;
  halves.forEach((half, at) => {
    if (originOf(edges, half) < originOf(edges, itemAt(halves, least))) least = at;
  });
  const turned = [...halves.slice(least), ...halves.slice(0, least)];
  const loop = loopOfHalves(edges, turned);
  return { halves: turned, loop, area: loopArea(loop) };
}

/** Of the simple of a bounded face the largest is the outer one; others touch it, or each other, at single points. */
function discOf(part: number, simple: readonly SimpleCycle[]): Disc {
  let outer = itemAt(simple, 0);
  for (const cycle of simple) if (cycle.area > outer.area) outer = cycle;
  return { part, outer, holes: simple.filter((cycle) => cycle !== outer) };
}

function compareCycles(edges: readonly TraceableEdge[], a: SimpleCycle, b: SimpleCycle): number {
  const [halfA, halfB] = [itemAt(a.halves, 0), itemAt(b.halves, 0)];
  return originOf(edges, halfA) - originOf(edges, halfB) || halfA - halfB;
}

/** Finds the smallest disc of another part that holds a point. */
function discFinder(discs: readonly Disc[]): (point: Point, part: number) => Disc | undefined {
  const index = indexBoxes(discs.map(({ outer }) => boxOfSpans(outer.loop)));
  return (point, part) => {
    const around = index
      .meeting(boxOfPoints([point]))
      .map((number) => itemAt(discs, number))
      .filter((disc) => disc.part !== part)
      .sort((a, b) => a.outer.area - b.outer.area);
    return around.find((disc) => isInsideLoops([disc.outer.loop], point));
  };
}

function faceOf(simple: readonly SimpleCycle[], area: number): Face {
  return {
    borders: simple.map(({ halves }) => halves.map((half) => ({ edge: half >> 1, forward: half % 2 === 0 }))),
    loops: simple.map(({ loop }) => loop),
    area,
  };
}
