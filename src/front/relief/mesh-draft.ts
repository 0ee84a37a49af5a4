/** A mesh while it grows: corners on a lattice in plan, triangles by corner number, the stage of each. */
import type { Lattice } from './lattice.ts';

export interface MeshDraft {
  readonly lattice: Lattice;
  /** Places taken so far; the arrays behind are longer. */
  vertexCount: number;
  triangleCount: number;
  /** Whole steps of the lattice. */
  xs: Float64Array;
  ys: Float64Array;
  /** mm up: 0 at the as-received surface, negative in the metal. */
  zs: Float64Array;
  /** Three vertex numbers a triangle, counter-clockwise seen from outside. */
  corners: Uint32Array;
  stages: Uint8Array;
}

const FIRST_ROOM = 1024;

export function emptyDraft(lattice: Lattice): MeshDraft {
  return {
    lattice,
    vertexCount: 0,
    triangleCount: 0,
    xs: new Float64Array(FIRST_ROOM),
    ys: new Float64Array(FIRST_ROOM),
    zs: new Float64Array(FIRST_ROOM),
    corners: new Uint32Array(3 * FIRST_ROOM),
    stages: new Uint8Array(FIRST_ROOM),
  };
}

/** A corner at the place of the lattice nearest to one of the drawing, mm. */
export function addVertex(draft: MeshDraft, x: number, y: number, z: number): number {
  const { origin, perMm } = draft.lattice;
  return addCorner(draft, Math.round((x - origin.x) * perMm), Math.round((y - origin.y) * perMm), z);
}

/** A corner at a place of the lattice. */
export function addCorner(draft: MeshDraft, x: number, y: number, z: number): number {
  const vertex = draft.vertexCount++;
  if (vertex === draft.xs.length) {
    draft.xs = widened(draft.xs, new Float64Array(2 * vertex));
    draft.ys = widened(draft.ys, new Float64Array(2 * vertex));
    draft.zs = widened(draft.zs, new Float64Array(2 * vertex));
  }
  draft.xs[vertex] = x;
  draft.ys[vertex] = y;
  draft.zs[vertex] = z;
  return vertex;
}

export function addTriangle(
  draft: MeshDraft,
  [a, b, c]: readonly [a: number, b: number, c: number],
  stage: number,
): void {
  const triangle = draft.triangleCount++;
  if (triangle === draft.stages.length) {
    draft.corners = widened(draft.corners, new Uint32Array(6 * triangle));
    draft.stages = widened(draft.stages, new Uint8Array(2 * triangle));
  }
  draft.corners[3 * triangle] = a;
  draft.corners[3 * triangle + 1] = b;
  draft.corners[3 * triangle + 2] = c;
  draft.stages[triangle] = stage;
}

function widened<Room extends Float64Array | Uint32Array | Uint8Array>(from: Room, to: Room): Room {
  to.set(from);
  return to;
}

/** Twice the area of a triangle in plan, in squared steps: exact. Positive when it runs counter-clockwise. */
export function doubleArea(
  { xs, ys }: { readonly xs: ArrayLike<number>; readonly ys: ArrayLike<number> },
  a: number,
  b: number,
  c: number,
): number {
  const ax = xs[a] as number;
  const ay = ys[a] as number;
  return (
    ((xs[b] as number) - ax) * ((ys[c] as number) - ay) - ((xs[c] as number) - ax) * ((ys[b] as number) - ay)
  );
}

/** Whether two corners stand on one place of the lattice. */
export function isSamePlace({ xs, ys }: MeshDraft, a: number, b: number): boolean {
  return xs[a] === xs[b] && ys[a] === ys[b];
}
