/**
 * Slits of no width: where a crossing is rounded to the grid, two edges of one line tilt apart by less than a grid unit, and
 * areas that lie side by side come out with a slit between them. Each corner that lies on another edge, as far as the grid can
 * tell, becomes a corner of that edge too; the edges are then the same, point for point, and a union closes the slit.
 * Cost: n log n in edges.
 */
import { itemAt } from './assert.ts';
import { indexBoxes } from './box-index.ts';
import type { GridPoint, Ring } from './rings.ts';

/** A corner this near to an edge lies on it, grid units: both are rounded. */
const ON_EDGE = 1.5;

interface Edge {
  readonly ring: number;
  readonly from: GridPoint;
  readonly to: GridPoint;
}

/** The same rings with common corners; undefined where no corner lies on another edge. */
export function shareCorners(rings: readonly Ring[]): Ring[] | undefined {
  const edges = rings.flatMap((corners, ring) =>
    corners.map((from, at): Edge => ({ ring, from, to: itemAt(corners, (at + 1) % corners.length) })),
  );
  const index = indexBoxes(
    edges.map(({ from, to }) => ({
      minX: Math.min(from.X, to.X) - ON_EDGE,
      minY: Math.min(from.Y, to.Y) - ON_EDGE,
      maxX: Math.max(from.X, to.X) + ON_EDGE,
      maxY: Math.max(from.Y, to.Y) + ON_EDGE,
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
  const shared: GridPoint[][] = rings.map(() => []);
  edges.forEach(({ ring, from, to }, at) => {
    itemAt(shared, ring).push(from, ...alongEdge(inserted.get(at) ?? [], from, to));
  });
  return shared;
}

/** Whether a corner lies between the ends of an edge, and is neither of them. */
function isOnEdge({ X, Y }: GridPoint, { from, to }: Edge): boolean {
  if ((X === from.X && Y === from.Y) || (X === to.X && Y === to.Y)) return false;
  const [dx, dy] = [to.X - from.X, to.Y - from.Y];
  const long = Math.sqrt(dx * dx + dy * dy);
  const along = (X - from.X) * dx + (Y - from.Y) * dy;
  if (along <= 0 || along >= long * long) return false;
  return Math.abs((X - from.X) * dy - (Y - from.Y) * dx) <= ON_EDGE * long;
}

function alongEdge(corners: readonly GridPoint[], from: GridPoint, to: GridPoint): GridPoint[] {
  const share = ({ X, Y }: GridPoint) => (X - from.X) * (to.X - from.X) + (Y - from.Y) * (to.Y - from.Y);
  return [...corners].sort((a, b) => share(a) - share(b));
}
