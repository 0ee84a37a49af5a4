/**
 * Ear clipping leaves out vertices that lie on a straight line with their neighbours: no area is lost, but the edges there
 * no longer pair up. Mending adds triangles without area that take each left-out vertex in again.
 */
import { itemAt } from '#geometry/assert.ts';

/**
 * Triangles whose edges are exactly the rings' edges, each once, and inner edges, each once in either direction.
 * @param flat x, y of the vertices; rings lie one after the other, `ringStarts` says where each begins
 * @param triangles vertex numbers by three, in either direction
 */
export function mendEdges(
  flat: Float64Array,
  ringStarts: readonly number[],
  triangles: readonly number[],
): number[] {
  const count = flat.length / 2;
  const next = new Int32Array(count);
  ringStarts.forEach((start, r) => {
    const end = ringStarts[r + 1] ?? count;
    for (let i = start; i < end; i++) next[i] = i + 1 < end ? i + 1 : start;
  });
  const turned = runAlongRings(next, triangles);
  /** Edges still without their partner: u·count + v stands for u → v. */
  const open = new Set<number>();
  const meet = (u: number, v: number): void => {
    if (!open.delete(v * count + u)) open.add(u * count + v);
  };
  // The rings as seen from outside the patch: a patch that fits leaves nothing open.
  next.forEach((to, from) => {
    meet(to, from);
  });
  for (let i = 0; i < turned.length; i += 3) {
    const a = itemAt(turned, i);
    const b = itemAt(turned, i + 1);
    const c = itemAt(turned, i + 2);
    meet(a, b);
    meet(b, c);
    meet(c, a);
  }
  if (open.size > 0) turned.push(...fans(open, count));
  return turned;
}

/** The triangles turned so that they run along the rings' edges: a ring too thin to have a sure area still has a direction. */
function runAlongRings(next: Int32Array, triangles: readonly number[]): number[] {
  let along = 0;
  for (let i = 0; i < triangles.length; i++) {
    const from = itemAt(triangles, i);
    const to = itemAt(triangles, i % 3 === 2 ? i - 2 : i + 1);
    if (next[from] === to) along++;
    else if (next[to] === from) along--;
  }
  return along < 0 ? [...triangles].reverse() : [...triangles];
}

/** Triangles that close the open edges: a fan over each closed way that runs against them. */
function fans(open: ReadonlySet<number>, count: number): number[] {
  const next = new Map<number, number[]>();
  for (const edge of open) {
    const u = Math.floor(edge / count);
    const v = edge % count;
    const list = next.get(v);
    if (list === undefined) next.set(v, [u]);
    else list.push(u);
  }
  const triangles: number[] = [];
  for (const start of next.keys()) {
    for (;;) {
      const way = [start];
      for (let at = next.get(start)?.pop(); at !== undefined && at !== start; at = next.get(at)?.pop())
        way.push(at);
      if (way.length < 2) break;
      for (let i = 1; i + 1 < way.length; i++) triangles.push(start, itemAt(way, i), itemAt(way, i + 1));
    }
  }
  return triangles;
}
