/**
 * Where borders touch in a point, each gets its own vertex there: a mesh with one vertex for both could be wound through
 * it in more than one way, and its edges there could not be told apart.
 */

import { itemAt } from '#geometry/assert.ts';
import { atan2 } from '#maths/arc-tangent.ts';
import { addVertex, type MeshDraft } from './mesh-draft.ts';

/** A run of vertices whose ends may still be replaced. */
interface Run {
  readonly vertices: number[];
}

/**
 * Gives copies of a shared vertex to the borders that pass through it, by turning as sharply left as they can. A vertex
 * is left alone where the two borders of a floor pass it differently, or where `isFixed` says so.
 */
export function partTouching(
  draft: MeshDraft,
  withFloor: readonly Run[],
  withoutFloor: readonly Run[],
  isFixed: (vertex: number) => boolean,
): void {
  const outer = runsByVertex(withFloor);
  const inner = withFloor === withoutFloor ? outer : runsByVertex(withoutFloor);
  for (const [vertex, here] of new Map([...outer, ...inner])) {
    if (here.leaving.length < 2 || isFixed(vertex)) continue;
    const there = here === outer.get(vertex) ? inner.get(vertex) : outer.get(vertex);
    if (there !== undefined && there !== here && !isSame(here, there)) continue;
    partAt(draft, vertex, here);
  }
}

interface Meeting {
  readonly arriving: Run[];
  readonly leaving: Run[];
}

function runsByVertex(runs: readonly Run[]): Map<number, Meeting> {
  const byVertex = new Map<number, Meeting>();
  const meetingAt = (vertex: number): Meeting => {
    let meeting = byVertex.get(vertex);
    if (meeting === undefined) {
      meeting = { arriving: [], leaving: [] };
      byVertex.set(vertex, meeting);
    }
    return meeting;
  };
  for (const run of runs) {
    meetingAt(itemAt(run.vertices, 0)).leaving.push(run);
    meetingAt(itemAt(run.vertices, run.vertices.length - 1)).arriving.push(run);
  }
  return byVertex;
}

function isSame(a: Meeting, b: Meeting): boolean {
  return (
    a.leaving.length === b.leaving.length &&
    a.leaving.every((run) => b.leaving.includes(run)) &&
    a.arriving.every((run) => b.arriving.includes(run))
  );
}

function partAt(draft: MeshDraft, vertex: number, { arriving, leaving }: Meeting): void {
  const free = [...leaving];
  arriving.forEach((run, i) => {
    const before = itemAt(run.vertices, run.vertices.length - 2);
    const turns = free.map((other) => turnAt(draft, before, vertex, itemAt(other.vertices, 1)));
    const sharpest = turns.indexOf(Math.max(...turns));
    const [next] = free.splice(sharpest, 1);
    if (i === 0 || next === undefined) return;
    const copy = addVertex(
      draft,
      itemAt(draft.xs, vertex),
      itemAt(draft.ys, vertex),
      itemAt(draft.zs, vertex),
    );
    run.vertices[run.vertices.length - 1] = copy;
    next.vertices[0] = copy;
  });
}

/** Turn from arriving to leaving, left positive, in radians. */
export function turnAt({ xs, ys }: MeshDraft, before: number, at: number, after: number): number {
  const ux = itemAt(xs, at) - itemAt(xs, before);
  const uy = itemAt(ys, at) - itemAt(ys, before);
  const vx = itemAt(xs, after) - itemAt(xs, at);
  const vy = itemAt(ys, after) - itemAt(ys, at);
  return atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}
