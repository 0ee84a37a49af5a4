/**
 * Triangles of points on a lattice, with given edges among theirs: Delaunay's triangulation, into which each edge that is not
 * in it is brought by turning the edges that it crosses (S. W. Sloan, A fast algorithm for generating constrained Delaunay
 * triangulations, Computers & Structures 47 (1993)).
 * Coordinates are whole numbers under 2^25, so that every turn is exact in plain numbers, and nothing can fold.
 * Edges may cross neither each other nor a point.
 */

import Delaunator from 'delaunator';
import { assert } from '#geometry/assert.ts';
import { SAME_WHOLE_SUM } from '#geometry/tolerances.ts';
import { doubleArea } from './mesh-draft.ts';

export interface LatticePoints {
  readonly xs: ArrayLike<number>;
  readonly ys: ArrayLike<number>;
}

export interface Triangulation {
  /** Point numbers by three, each triangle counter-clockwise. */
  readonly triangles: Uint32Array;
  /** By corner: the half-edge from it to its triangle's next corner has its partner there; -1 on the hull. */
  readonly twins: Int32Array;
  /** By half-edge: the tag of the edge given, 0 for others. */
  readonly tags: Uint8Array;
}

export interface LatticeEdges {
  readonly starts: ArrayLike<number>;
  readonly ends: ArrayLike<number>;
  /** Not 0. */
  readonly tags: ArrayLike<number>;
}

/** No two points may be the same, and no edge may end on the hull. */
export function constrainedTriangles({ xs, ys }: LatticePoints, edges: LatticeEdges): Triangulation {
  const count = xs.length;
  const coordinates = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    coordinates[2 * i] = xs[i] as number;
    // Delaunator's triangles run clockwise where y is up.
    coordinates[2 * i + 1] = -(ys[i] as number);
  }
  const { triangles, halfedges } = new Delaunator(coordinates);
  const outgoing = new Int32Array(count).fill(-1);
  for (let edge = 0; edge < triangles.length; edge++) outgoing[triangles[edge] as number] = edge;
  assert(
    outgoing.every((edge) => edge >= 0),
    'every point is a corner',
  );
  const net: Net = { xs, ys, triangles, twins: halfedges, outgoing, tags: new Uint8Array(triangles.length) };
  const turned: number[] = [];
  for (let i = 0; i < edges.starts.length; i++) {
    const start = edges.starts[i] as number;
    const end = edges.ends[i] as number;
    let edge = edgeBetween(net, start, end);
    if (edge < 0) {
      bringIn(net, start, end, turned);
      edge = edgeBetween(net, start, end);
      assert(edge >= 0, 'an edge can be brought in');
    }
    const tag = edges.tags[i] as number;
    net.tags[edge] = tag;
    net.tags[net.twins[edge] as number] = tag;
  }
  makeRound(net, turned);
  return { triangles, twins: halfedges, tags: net.tags };
}

interface Net extends LatticePoints {
  readonly triangles: Uint32Array;
  readonly twins: Int32Array;
  /** By point: a half-edge that starts there. */
  readonly outgoing: Int32Array;
  readonly tags: Uint8Array;
}

/** The edges of a triangle after and before one. */
export function next(edge: number): number {
  return edge % 3 === 2 ? edge - 2 : edge + 1;
}

export function previous(edge: number): number {
  return edge % 3 === 0 ? edge + 2 : edge - 1;
}

/** The half-edge from one point to another; -1 where there is none. */
function edgeBetween({ triangles, twins, outgoing }: Net, start: number, end: number): number {
  const first = outgoing[start] as number;
  let edge = first;
  do {
    if (triangles[next(edge)] === end) return edge;
    edge = twins[previous(edge)] as number;
  } while (edge !== first && edge >= 0);
  if (edge === first) return -1;
  // The hull is in the way: round the other way.
  for (let twin = twins[first] as number; twin >= 0; twin = twins[edge] as number) {
    edge = next(twin);
    if (triangles[next(edge)] === end) return edge;
  }
  return -1;
}

/** Turns edges until there is one from start to end. Half-edges that were turned are added to `turned`. */
function bringIn(net: Net, start: number, end: number, turned: number[]): void {
  const { triangles } = net;
  const crossing = crossedEdges(net, start, end);
  // Sloan's loop ends: each turn takes away a crossing or waits for a neighbour's. The cap only guards against a bug.
  let left = 50 * crossing.length * crossing.length + 1000;
  while (crossing.length > 0) {
    assert(left-- > 0, 'turning edges comes to an end');
    const [from, to] = crossing.shift() as [number, number];
    const edge = edgeBetween(net, from, to);
    const a = triangles[previous(edge)] as number;
    const b = triangles[previous(net.twins[edge] as number)] as number;
    if (doubleArea(net, a, b, to) <= 0 || doubleArea(net, b, a, from) <= 0) {
      crossing.push([from, to]);
      continue;
    }
    flip(net, edge);
    const isEnd = a === start || a === end || b === start || b === end;
    if (!isEnd && doubleArea(net, start, end, a) > 0 !== doubleArea(net, start, end, b) > 0)
      crossing.push([a, b]);
    else turned.push(a, b);
  }
}

/** Ends of the edges that a straight way crosses, in its order. */
function crossedEdges(net: Net, start: number, end: number): [number, number][] {
  const { triangles, twins, outgoing } = net;
  const first = outgoing[start] as number;
  let edge = first;
  for (;;) {
    const right = triangles[next(edge)] as number;
    const left = triangles[previous(edge)] as number;
    if (doubleArea(net, start, end, right) < 0 && doubleArea(net, start, end, left) > 0) break;
    edge = twins[previous(edge)] as number;
    assert(edge !== first && edge >= 0, 'a way leaves its start through a triangle');
  }
  const crossed: [number, number][] = [];
  let through = next(edge);
  for (;;) {
    crossed.push([triangles[through] as number, triangles[next(through)] as number]);
    const entered = twins[through] as number;
    const apex = triangles[previous(entered)] as number;
    if (apex === end) return crossed;
    const side = doubleArea(net, start, end, apex);
    assert(side !== 0, 'no point lies on an edge');
    through = side > 0 ? next(entered) : previous(entered);
  }
}

/** Turns the edge in the quadrilateral of its two triangles. */
function flip({ triangles, twins, outgoing, tags }: Net, a: number): void {
  const b = twins[a] as number;
  const afterA = next(a);
  const beforeA = previous(a);
  const afterB = next(b);
  const beforeB = previous(b);
  const apexA = triangles[beforeA] as number;
  const apexB = triangles[beforeB] as number;
  const start = triangles[a] as number;
  const end = triangles[b] as number;
  const outerA = twins[beforeA] as number;
  const outerB = twins[beforeB] as number;
  triangles[a] = apexB;
  triangles[b] = apexA;
  link(twins, a, outerB);
  link(twins, b, outerA);
  link(twins, beforeA, beforeB);
  tags[a] = tags[beforeB] as number;
  tags[b] = tags[beforeA] as number;
  tags[beforeA] = 0;
  tags[beforeB] = 0;
  outgoing[apexB] = a;
  outgoing[apexA] = b;
  outgoing[start] = afterB;
  outgoing[end] = afterA;
}

function link(twins: Int32Array, a: number, b: number): void {
  twins[a] = b;
  if (b >= 0) twins[b] = a;
}

/**
 * Turns edges round about those given, by their ends, until triangles are as round as the edges that must stay allow
 * (C. L. Lawson, 1977).
 */
function makeRound(net: Net, ends: readonly number[]): void {
  const { triangles, twins, tags } = net;
  const waiting = [...ends];
  let left = 20 * ends.length + 100;
  while (waiting.length > 0 && left-- > 0) {
    const to = waiting.pop() as number;
    const from = waiting.pop() as number;
    const edge = edgeBetween(net, from, to);
    const twin = edge < 0 ? -1 : (twins[edge] as number);
    if (twin < 0 || tags[edge] !== 0) continue;
    const a = triangles[previous(edge)] as number;
    const b = triangles[previous(twin)] as number;
    if (doubleArea(net, a, b, to) <= 0 || doubleArea(net, b, a, from) <= 0) continue;
    if (!isInCircle(net, [from, to, a], b)) continue;
    flip(net, edge);
    waiting.push(from, a, a, to, to, b, b, from);
  }
}

/** Whether d lies inside the circle through three points, by more than rounding. */
function isInCircle({ xs, ys }: LatticePoints, [a, b, c]: [number, number, number], d: number): boolean {
  const dx = xs[d] as number;
  const dy = ys[d] as number;
  const ax = (xs[a] as number) - dx;
  const ay = (ys[a] as number) - dy;
  const bx = (xs[b] as number) - dx;
  const by = (ys[b] as number) - dy;
  const cx = (xs[c] as number) - dx;
  const cy = (ys[c] as number) - dy;
  const aa = ax * ax + ay * ay;
  const bb = bx * bx + by * by;
  const cc = cx * cx + cy * cy;
  const inside = ax * (by * cc - bb * cy) - ay * (bx * cc - bb * cx) + aa * (bx * cy - by * cx);
  const size =
    Math.abs(ax) * (Math.abs(by) * cc + bb * Math.abs(cy)) +
    Math.abs(ay) * (Math.abs(bx) * cc + bb * Math.abs(cx)) +
    aa * (Math.abs(bx * cy) + Math.abs(by * cx));
  return inside > SAME_WHOLE_SUM * size;
}
