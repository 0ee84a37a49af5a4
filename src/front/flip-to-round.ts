/**
 * Edge flips that make triangles as round as their vertices allow (Lawson's flips to the Delaunay triangulation inside
 * fixed borders): between two contours that keeps triangles from lying flat along one of them.
 */
import { itemAt } from '#geometry/assert.ts';

/** Flips inner edges in place until every pair of triangles is locally round. @param flat x, y of the vertices */
export function flipToRound(flat: Float64Array, triangles: number[]): void {
  const twins = twinEdges(triangles, flat.length / 2);
  const waiting: number[] = [];
  for (let edge = 0; edge < triangles.length; edge++) if (itemAt(twins, edge) > edge) waiting.push(edge);
  // Lawson's flips end after at most n² steps; far fewer here. The cap only guards against rounding.
  let left = 20 * triangles.length + 100;
  while (left-- > 0) {
    const edge = waiting.pop();
    if (edge === undefined) return;
    const twin = itemAt(twins, edge);
    if (twin < 0 || !isBetterFlipped(flat, triangles, edge, twin)) continue;
    flip(triangles, twins, edge, twin);
    waiting.push(edge, nextEdge(edge), previousEdge(edge), twin, nextEdge(twin), previousEdge(twin));
  }
}

function nextEdge(edge: number): number {
  return edge % 3 === 2 ? edge - 2 : edge + 1;
}

function previousEdge(edge: number): number {
  return edge % 3 === 0 ? edge + 2 : edge - 1;
}

/** By edge (numbered by its first corner's place): the edge that runs the other way, -1 on the border. */
function twinEdges(triangles: readonly number[], count: number): Int32Array {
  const twins = new Int32Array(triangles.length).fill(-1);
  const byEnds = new Map<number, number>();
  for (let edge = 0; edge < triangles.length; edge++) {
    const from = itemAt(triangles, edge);
    const to = itemAt(triangles, nextEdge(edge));
    const twin = byEnds.get(to * count + from);
    if (twin === undefined) byEnds.set(from * count + to, edge);
    else {
      twins[edge] = twin;
      twins[twin] = edge;
      byEnds.delete(to * count + from);
    }
  }
  return twins;
}

/** Corners: a → b is the edge, c opposite in its triangle, d opposite in the twin's. */
function isBetterFlipped(
  flat: Float64Array,
  triangles: readonly number[],
  edge: number,
  twin: number,
): boolean {
  const a = itemAt(triangles, edge);
  const b = itemAt(triangles, nextEdge(edge));
  const c = itemAt(triangles, previousEdge(edge));
  const d = itemAt(triangles, previousEdge(twin));
  // Both triangles after the flip must keep their way round, or the flip would fold the patch.
  if (turn(flat, c, d, b) <= 0 || turn(flat, d, c, a) <= 0) return false;
  return inCircle(flat, a, b, c, d) > 0;
}

function turn(flat: Float64Array, a: number, b: number, c: number): number {
  const ax = flat[2 * a] as number;
  const ay = flat[2 * a + 1] as number;
  return (
    ((flat[2 * b] as number) - ax) * ((flat[2 * c + 1] as number) - ay) -
    ((flat[2 * c] as number) - ax) * ((flat[2 * b + 1] as number) - ay)
  );
}

/** Positive when d lies inside the circle through a, b, c; ties, to rounding, count as outside. */
function inCircle(flat: Float64Array, a: number, b: number, c: number, d: number): number {
  const dx = flat[2 * d] as number;
  const dy = flat[2 * d + 1] as number;
  const ax = (flat[2 * a] as number) - dx;
  const ay = (flat[2 * a + 1] as number) - dy;
  const bx = (flat[2 * b] as number) - dx;
  const by = (flat[2 * b + 1] as number) - dy;
  const cx = (flat[2 * c] as number) - dx;
  const cy = (flat[2 * c + 1] as number) - dy;
  const a2 = ax * ax + ay * ay;
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  const value = a2 * (bx * cy - by * cx) + b2 * (cx * ay - cy * ax) + c2 * (ax * by - ay * bx);
  return value - 1e-12 * (a2 + b2 + c2) * (a2 + b2 + c2);
}

function flip(triangles: number[], twins: Int32Array, edge: number, twin: number): void {
  const c = itemAt(triangles, previousEdge(edge));
  const d = itemAt(triangles, previousEdge(twin));
  const besideC = previousEdge(edge);
  const besideD = previousEdge(twin);
  const outerC = itemAt(twins, besideC);
  const outerD = itemAt(twins, besideD);
  // Edge a → b becomes d → b, and twin b → a becomes c → a; the new edge between c and d takes the old places beside them.
  triangles[edge] = d;
  triangles[twin] = c;
  link(twins, edge, outerD);
  link(twins, twin, outerC);
  link(twins, besideC, besideD);
}

function link(twins: Int32Array, a: number, b: number): void {
  twins[a] = b;
  if (b >= 0) twins[b] = a;
}
