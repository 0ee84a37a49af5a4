/**
 * Corners added to a triangulation where edges leave the front: at their middles, since between two contours a crest may stand
 * or a valley run that neither shows. Edges given stay as they are. Each edge cut makes four triangles of two, all of them
 * the same way round as before, so that the ground stays tiled.
 */
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { next, previous, type Triangulation } from './constrained-triangles.ts';

export interface CrestRules {
  /** By point, in steps of the lattice. */
  readonly xs: number[];
  readonly ys: number[];
  /** mm to a step. */
  readonly step: number;
  readonly heightOf: (point: number) => number;
  /** Whether the front passes a place, in steps, at a height within the tolerance. */
  readonly isNear: (place: Point, height: number) => boolean;
  /** Adds a point at a place of the lattice, with the height of the front there. */
  readonly add: (x: number, y: number) => number;
  readonly isKept: (triangle: number) => boolean;
  /** Whether an edge between points of one height needs no look: land and floors. */
  readonly isFlat: (height: number) => boolean;
  /** mm */
  readonly tolerance: number;
}

type Net = {
  readonly [Part in 'triangles' | 'twins' | 'tags']: ArrayLike<number>;
};

export interface RefinedTriangles extends Net {
  /** By triangle: the one of the triangulation that it is part of. */
  readonly partOf: number[];
}

type Growing = { readonly [Part in keyof RefinedTriangles]: number[] };

/** Corners added for each that there was, at most: only a guard, for crests need far fewer. */
const MOST_ADDED = 4;

export function refineCrests(net: Triangulation, rules: CrestRules): RefinedTriangles {
  const { triangles, twins, tags } = net;
  const waiting: number[] = [];
  for (let edge = 0; edge < triangles.length; edge++) {
    if (itemAt(twins, edge) > edge && rules.isKept(Math.floor(edge / 3)) && isOff(net, edge, rules))
      waiting.push(edge);
  }
  const given = { triangles, twins, tags, partOf: Array.from({ length: triangles.length / 3 }, (_, i) => i) };
  if (waiting.length === 0 && !isAnyOff(given, rules)) return given;
  const refined: Growing = {
    ...given,
    triangles: Array.from(triangles),
    twins: Array.from(twins),
    tags: Array.from(tags),
  };
  let left = MOST_ADDED * rules.xs.length + 100;
  const cutWaiting = (): void => {
    for (let edge = waiting.pop(); edge !== undefined && left > 0; edge = waiting.pop()) {
      if (!isOff(refined, edge, rules)) continue;
      const point = pointWithin(middleOf(refined, edge, rules), sidesOf(refined, edge), refined, rules);
      if (point === undefined) continue;
      left--;
      waiting.push(...cutEdge(refined, edge, point));
    }
  };
  cutWaiting();
  // A crest may end in a triangle without crossing one of its edges.
  for (let first = 0; first < refined.triangles.length && left > 0; first += 3) {
    if (!isOfWalls(refined, first, rules)) continue;
    const place = centroidOff(refined, first, rules);
    const point = place && pointWithin(place, [first, first + 1, first + 2], refined, rules);
    if (point === undefined) continue;
    left--;
    waiting.push(...cutTriangle(refined, first, point));
    cutWaiting();
    // What it keeps may be off still.
    first -= 3;
  }
  return refined;
}

/** Whether the middle of an edge that may be cut is off the front by more than the tolerance. */
function isOff(net: Net, edge: number, rules: CrestRules): boolean {
  const { triangles, twins, tags } = net;
  const { xs, ys, tolerance, step } = rules;
  if (tags[edge] !== 0 || itemAt(twins, edge) < 0) return false;
  const a = itemAt(triangles, edge);
  const b = itemAt(triangles, next(edge));
  const [za, zb] = [rules.heightOf(a), rules.heightOf(b)];
  if (za === zb && rules.isFlat(za)) return false;
  const ux = itemAt(xs, b) - itemAt(xs, a);
  const uy = itemAt(ys, b) - itemAt(ys, a);
  // However deep the front is there, it is no farther off than the edge's ends.
  if (Math.sqrt(ux * ux + uy * uy) * step <= 2 * tolerance) return false;
  return !rules.isNear(middleOf(net, edge, rules), (za + zb) / 2);
}

function middleOf({ triangles }: Net, edge: number, { xs, ys }: CrestRules): Point {
  const a = itemAt(triangles, edge);
  const b = itemAt(triangles, next(edge));
  return { x: (itemAt(xs, a) + itemAt(xs, b)) / 2, y: (itemAt(ys, a) + itemAt(ys, b)) / 2 };
}

function isAnyOff(net: RefinedTriangles, rules: CrestRules): boolean {
  for (let first = 0; first < net.triangles.length; first += 3) {
    if (isOfWalls(net, first, rules) && centroidOff(net, first, rules) !== undefined) return true;
  }
  return false;
}

/** Whether a triangle is to be looked at: kept, and not of land or floor all over. */
function isOfWalls({ triangles, partOf }: RefinedTriangles, first: number, rules: CrestRules): boolean {
  if (!rules.isKept(itemAt(partOf, first / 3))) return false;
  const height = rules.heightOf(itemAt(triangles, first));
  const isLevel = [first + 1, first + 2].every(
    (corner) => rules.heightOf(itemAt(triangles, corner)) === height,
  );
  return !(isLevel && rules.isFlat(height));
}

/** The triangle's middle, where it is off the front by more than the tolerance. */
function centroidOff({ triangles }: Net, first: number, rules: CrestRules): Point | undefined {
  const { xs, ys } = rules;
  const corners = [first, first + 1, first + 2].map((corner) => itemAt(triangles, corner));
  const third = (values: (point: number) => number): number =>
    corners.reduce((sum, point) => sum + values(point), 0) / 3;
  const x = third((point) => itemAt(xs, point));
  const y = third((point) => itemAt(ys, point));
  return rules.isNear({ x, y }, third(rules.heightOf)) ? undefined : { x, y };
}

function sidesOf({ twins }: Net, edge: number): number[] {
  const twin = itemAt(twins, edge);
  return [next(edge), previous(edge), next(twin), previous(twin)];
}

/** A new point on the lattice at a place, if it lies to the left of all the sides: else triangles would turn over. */
function pointWithin(
  { x, y }: Point,
  sides: readonly number[],
  { triangles }: Net,
  { xs, ys, add }: CrestRules,
): number | undefined {
  const [nearX, nearY] = [Math.round(x), Math.round(y)];
  const isWithin = sides.every((side) => {
    const [from, to] = [itemAt(triangles, side), itemAt(triangles, next(side))];
    const [ax, ay] = [itemAt(xs, from), itemAt(ys, from)];
    return (itemAt(xs, to) - ax) * (nearY - ay) - (nearX - ax) * (itemAt(ys, to) - ay) > 0;
  });
  return isWithin ? add(x, y) : undefined;
}

/** Cuts the edge at a point; gives the edges to look at again. */
function cutEdge(refined: Growing, edge: number, point: number): number[] {
  const { triangles, twins, tags, partOf } = refined;
  const twin = itemAt(twins, edge);
  const halves = [edge, twin].map((side) => {
    // The triangle keeps its half at the side's start; a new one takes the other.
    const forward = next(side);
    const end = itemAt(triangles, forward);
    const apex = itemAt(triangles, previous(side));
    const outer = itemAt(twins, forward);
    const made = triangles.length;
    triangles.push(point, end, apex);
    tags.push(0, itemAt(tags, forward), 0);
    twins.push(-1, outer, forward);
    partOf.push(itemAt(partOf, Math.floor(side / 3)));
    if (outer >= 0) twins[outer] = made + 1;
    triangles[forward] = point;
    tags[forward] = 0;
    twins[forward] = made + 2;
    return { side, made };
  });
  const [here, there] = halves;
  if (here === undefined || there === undefined) return [];
  // Each old half now ends at the point, and meets the new half of the other side.
  twins[here.side] = there.made;
  twins[there.made] = here.side;
  twins[there.side] = here.made;
  twins[here.made] = there.side;
  const { side, made } = here;
  return [side, there.side, next(side), next(there.side), made + 1, there.made + 1];
}

/** Cuts a triangle in three; gives the edges to look at. */
function cutTriangle({ triangles, twins, tags, partOf }: Growing, first: number, point: number): number[] {
  const second = first + 1;
  const third = first + 2;
  const [b, c] = [itemAt(triangles, second), itemAt(triangles, third)];
  const a = itemAt(triangles, first);
  const part = itemAt(partOf, first / 3);
  // The triangle keeps its first side; two new ones take the others.
  const made = triangles.length;
  const last = made + 3;
  triangles.push(b, c, point, c, a, point);
  tags.push(itemAt(tags, second), 0, 0, itemAt(tags, third), 0, 0);
  twins.push(itemAt(twins, second), last + 2, second, itemAt(twins, third), third, made + 1);
  partOf.push(part, part);
  for (const outer of [made, last]) {
    const twin = itemAt(twins, outer);
    if (twin >= 0) twins[twin] = outer;
  }
  triangles[third] = point;
  tags[second] = 0;
  tags[third] = 0;
  twins[second] = made + 2;
  twins[third] = last + 1;
  return [first, made, last, second, third, made + 1];
}
