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

/** Up to as many edges, columns of corners are cheaper than a tree (measured). */
const FEW_EDGES = 1000;

/** The same area without its slits; the same polygons where it has none. */
export function closeSlits(polygons: readonly GridPolygon[]): readonly GridPolygon[] {
  const shared = shareCorners(polygons);
  return shared === undefined ? polygons : linkEdges(withoutOpposites(shared));
}

/** All edges with common corners; undefined where no corner lies on another edge. */
function shareCorners(polygons: readonly GridPolygon[]): Edge[] | undefined {
  const edges = polygons.flatMap((corners, polygon) =>
    corners.map(
      (from, at): Edge => ({ polygon, from, to: itemAt(corners, at + 1 < corners.length ? at + 1 : 0) }),
    ),
  );
  const inserted = new Map<number, number[]>();
  const take = (at: number, corner: number): void => {
    if (!isOnEdge(itemAt(edges, corner).from, itemAt(edges, at))) return;
    const others = inserted.get(at);
    if (others === undefined) inserted.set(at, [corner]);
    else others.push(corner);
  };
  if (edges.length <= FEW_EDGES) takeNearInColumns(edges, take);
  else takeNearByBox(edges, take);
  if (inserted.size === 0) return undefined;
  return edges.flatMap((edge, at) => {
    const corners = (inserted.get(at) ?? [])
      .sort((a, b) => a - b)
      .map((corner) => itemAt(edges, corner).from);
    const stops = [...alongEdge(corners, edge), edge.to];
    let { from } = edge;
    return stops.flatMap((to): Edge[] => {
      const part = { polygon: edge.polygon, from, to };
      from = to;
      return part.from.X === to.X && part.from.Y === to.Y ? [] : [part];
    });
  });
}

/** Called for each edge with the number of each edge whose first corner lies in its box. */
type TakeNear = (edge: number, corner: number) => void;

function takeNearByBox(edges: readonly Edge[], take: TakeNear): void {
  const index = indexBoxes(
    edges.map(({ from, to }) => ({
      minX: Math.min(from.X, to.X) - ON_GRID_EDGE,
      minY: Math.min(from.Y, to.Y) - ON_GRID_EDGE,
      maxX: Math.max(from.X, to.X) + ON_GRID_EDGE,
      maxY: Math.max(from.Y, to.Y) + ON_GRID_EDGE,
    })),
  );
  edges.forEach(({ from }, corner) => {
    index.around(from.X, from.Y, (at) => take(at, corner));
  });
}

/** Corners in as many columns from left to right; each edge sees those of its own columns. */
function takeNearInColumns(edges: readonly Edge[], take: TakeNear): void {
  const { length: count } = edges;
  const places = Float64Array.from(edges, ({ from }) => from.X);
  const heights = Float64Array.from(edges, ({ from }) => from.Y);
  const first = places.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY);
  const last = places.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY);
  const perUnit = (count - 1) / Math.max(1, last - first);
  const columnOf = (place: number): number =>
    Math.floor((Math.min(last, Math.max(first, place)) - first) * perUnit);
  const { starts, order } = sortedInto(count, Int32Array.from(places, columnOf));
  edges.forEach(({ from, to }, at) => {
    const [left, right] = from.X < to.X ? [from.X, to.X] : [to.X, from.X];
    const [low, high] = from.Y < to.Y ? [from.Y, to.Y] : [to.Y, from.Y];
    const end = starts[columnOf(right + ON_GRID_EDGE) + 1] ?? count;
    for (let turn = starts[columnOf(left - ON_GRID_EDGE)] ?? count; turn < end; turn++) {
      const corner = order[turn] ?? 0;
      const height = heights[corner] ?? 0;
      if (height < low - ON_GRID_EDGE || height > high + ON_GRID_EDGE) continue;
      const place = places[corner] ?? 0;
      if (place >= left - ON_GRID_EDGE && place <= right + ON_GRID_EDGE) take(at, corner);
    }
  });
}

/** Numbers by the column that each is in, and where each column starts among them. */
function sortedInto(
  columns: number,
  columnOf: Int32Array,
): { readonly starts: Int32Array; readonly order: Int32Array } {
  const starts = new Int32Array(columns + 1);
  for (const column of columnOf) starts[column + 1] = (starts[column + 1] ?? 0) + 1;
  for (let column = 1; column <= columns; column++)
    starts[column] = (starts[column] ?? 0) + (starts[column - 1] ?? 0);
  const next = starts.slice();
  const order = new Int32Array(columnOf.length);
  columnOf.forEach((column, number) => {
    const place = next[column] ?? 0;
    order[place] = number;
    next[column] = place + 1;
  });
  return { starts, order };
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
