/**
 * Slits of no width: where a crossing is rounded to the grid, two edges of one line tilt apart by less than a grid unit, and
 * areas that lie side by side come out with a slit between them. Each corner that lies on another edge, as far as the grid can
 * tell, becomes a corner of that edge too; edges that then run against each other, point for point, bound nothing and are
 * taken out, and the rest is linked again. Cost: n log n in edges.
 */

import { itemAt } from '#geometry/assert.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { ON_GRID_EDGE } from '#geometry/tolerances.ts';
import type { GridPoint, GridPolygon } from './grid-polygon.ts';

interface Edge {
  readonly polygon: number;
  readonly from: GridPoint;
  readonly to: GridPoint;
}

/** The same area without its slits; the same polygons where it has none. */
export function closeSlits(polygons: readonly GridPolygon[]): readonly GridPolygon[] {
  const shared = shareCorners(polygons);
  return shared === undefined ? polygons : linkEdges(withoutOpposites(shared));
}

/** All edges with common corners; undefined where no corner lies on another edge. */
function shareCorners(polygons: readonly GridPolygon[]): Edge[] | undefined {
  const edges = polygons.flatMap((corners, polygon) =>
    corners.map((from, at): Edge => ({ polygon, from, to: itemAt(corners, (at + 1) % corners.length) })),
  );
  const index = indexBoxes(
    edges.map(({ from, to }) => ({
      minX: Math.min(from.X, to.X) - ON_GRID_EDGE,
      minY: Math.min(from.Y, to.Y) - ON_GRID_EDGE,
      maxX: Math.max(from.X, to.X) + ON_GRID_EDGE,
      maxY: Math.max(from.Y, to.Y) + ON_GRID_EDGE,
    })),
  );
  const inserted = new Map<number, GridPoint[]>();
  for (const { from: corner } of edges) {
    const { X, Y } = corner;
    for (const at of index.meeting({ minX: X, minY: Y, maxX: X, maxY: Y })) {
      if (!isOnEdge(corner, itemAt(edges, at))) continue;
      const others = inserted.get(at);
      if (others === undefined) inserted.set(at, [corner]);
      else others.push(corner);
    }
  }
  if (inserted.size === 0) return undefined;
  return edges.flatMap((edge, at) => {
    const stops = [...alongEdge(inserted.get(at) ?? [], edge), edge.to];
    let { from } = edge;
    return stops.flatMap((to): Edge[] => {
      const part = { polygon: edge.polygon, from, to };
      from = to;
      return part.from.X === to.X && part.from.Y === to.Y ? [] : [part];
    });
  });
}

/** Edges that run against each other cancel, one for one. */
function withoutOpposites(edges: readonly Edge[]): Edge[] {
  const waiting = new Map<string, number[]>();
  const gone = new Set<number>();
  edges.forEach(({ from, to }, at) => {
    const against = waiting.get(keyOf(to, from))?.pop();
    if (against !== undefined) {
      gone.add(against).add(at);
      return;
    }
    const key = keyOf(from, to);
    const others = waiting.get(key);
    if (others === undefined) waiting.set(key, [at]);
    else others.push(at);
  });
  return edges.filter((_, at) => !gone.has(at));
}

/** Closed polygons of all edges; which way on is taken where several leave a corner makes no difference to whoever splits polygons there. */
function linkEdges(edges: readonly Edge[]): GridPolygon[] {
  const leaving = new Map<string, Edge[]>();
  for (const edge of edges) {
    const key = cornerKey(edge.from);
    const others = leaving.get(key);
    if (others === undefined) leaving.set(key, [edge]);
    else others.push(edge);
  }
  const polygons: GridPolygon[] = [];
  for (const first of edges) {
    const polygon: GridPoint[] = [];
    for (let at = first.from, next = take(leaving, at); next !== undefined; next = take(leaving, at)) {
      polygon.push(at);
      at = next.to;
    }
    if (polygon.length > 2) polygons.push(polygon);
  }
  return polygons;
}

function take(leaving: ReadonlyMap<string, Edge[]>, corner: GridPoint): Edge | undefined {
  return leaving.get(cornerKey(corner))?.pop();
}

function keyOf(from: GridPoint, to: GridPoint): string {
  return `${cornerKey(from)} ${cornerKey(to)}`;
}

function cornerKey({ X, Y }: GridPoint): string {
  return `${X} ${Y}`;
}

/** Whether a corner lies between the ends of an edge, and is neither of them. */
function isOnEdge({ X, Y }: GridPoint, { from, to }: Edge): boolean {
  if ((X === from.X && Y === from.Y) || (X === to.X && Y === to.Y)) return false;
  const [dx, dy] = [to.X - from.X, to.Y - from.Y];
  const long = Math.sqrt(dx * dx + dy * dy);
  const along = (X - from.X) * dx + (Y - from.Y) * dy;
  if (along <= 0 || along >= long * long) return false;
  return Math.abs((X - from.X) * dy - (Y - from.Y) * dx) <= ON_GRID_EDGE * long;
}

function alongEdge(corners: readonly GridPoint[], { from, to }: Edge): GridPoint[] {
  const share = ({ X, Y }: GridPoint) => (X - from.X) * (to.X - from.X) + (Y - from.Y) * (to.Y - from.Y);
  return [...corners].sort((a, b) => share(a) - share(b));
}
