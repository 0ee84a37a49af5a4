/**
 * Contour segments joined end to start. Ends within SAME_NODE of each other are one node; segments that lead nowhere (slivers left
 * by crossings at tiny angles) are taken out, so that every node left has as many segments leaving as arriving. Where that
 * takes out more than slivers the border has a gap, and its place is given.
 */

import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import type { Point } from '#geometry/point.ts';
import { LOST_BORDER, SAME_NODE } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import type { ContourSegment } from './contour-segments.ts';
import { pointOfCurve } from './offset-curve.ts';

/** With no more ends than this, comparing all of them is cheaper than sorting. */
const FEW = 96;

export interface Nodes {
  readonly segments: readonly ContourSegment[];
  /** Node numbers by segment. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Place of each node. */
  readonly xs: number[];
  readonly ys: number[];
}

/** One node for each place where segments meet. */
export function nodesOf(segments: readonly ContourSegment[]): Nodes {
  const count = segments.length;
  const x = new Float64Array(2 * count);
  const y = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    const { ax, ay, bx, by } = itemAt(segments, i);
    x[2 * i] = ax;
    y[2 * i] = ay;
    x[2 * i + 1] = bx;
    y[2 * i + 1] = by;
  }
  const xs: number[] = [];
  const ys: number[] = [];
  const node = new Int32Array(2 * count).fill(-1);
  const order = 2 * count <= FEW ? undefined : Int32Array.from(x, (_, i) => i);
  order?.sort((a, b) => (x[a] as number) - (x[b] as number));
  for (let i = 0; i < node.length; i++) {
    const end = order?.[i] ?? i;
    if (node[end] !== -1) continue;
    const here = xs.length;
    const hereX = x[end] as number;
    const hereY = y[end] as number;
    xs.push(hereX);
    ys.push(hereY);
    for (let k = i; k < node.length; k++) {
      const other = order?.[k] ?? k;
      const apart = (x[other] as number) - hereX;
      if (apart > SAME_NODE && order !== undefined) break;
      if (Math.abs(apart) > SAME_NODE || Math.abs((y[other] as number) - hereY) > SAME_NODE) continue;
      if (node[other] === -1) node[other] = here;
    }
  }
  const starts = new Int32Array(count);
  const ends = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    starts[i] = itemAt(node, 2 * i);
    ends[i] = itemAt(node, 2 * i + 1);
  }
  return { segments, starts, ends, xs, ys };
}

export interface LiveSegments {
  /** Numbers of the segments that are part of a closed way. */
  readonly live: number[];
  /** Where a border that should close does not; undefined where all close. */
  readonly gap: Point | undefined;
}

/**
 * Those of the wanted segments that are part of a closed way. Segments that
 * run against each other between the same nodes enclose nothing and are taken out first.
 */
export function liveSegments(nodes: Nodes, wanted: readonly number[]): LiveSegments {
  const arriving = new Int32Array(nodes.xs.length);
  const leaving = new Int32Array(nodes.xs.length);
  let live = withoutTwins(nodes, wanted);
  const all = live;
  for (const segment of live) {
    const start = itemAt(nodes.starts, segment);
    const end = itemAt(nodes.ends, segment);
    leaving[start] = itemAt(leaving, start) + 1;
    arriving[end] = itemAt(arriving, end) + 1;
  }
  for (;;) {
    const kept = live.filter((segment) => {
      const start = itemAt(nodes.starts, segment);
      const end = itemAt(nodes.ends, segment);
      if (itemAt(arriving, start) > 0 && itemAt(leaving, end) > 0) return true;
      leaving[start] = itemAt(leaving, start) - 1;
      arriving[end] = itemAt(arriving, end) - 1;
      return false;
    });
    if (kept.length === live.length) break;
    live = kept;
  }
  const isUneven = (node: number) => itemAt(arriving, node) !== itemAt(leaving, node);
  return { live, gap: gapIn(nodes, { all, live }, isUneven) };
}

/** A place where more than a sliver was taken out, or where a way goes on less or more often than it comes. */
function gapIn(
  { segments, starts, ends, xs, ys }: Nodes,
  { all, live }: { all: readonly number[]; live: readonly number[] },
  isUneven: (node: number) => boolean,
): Point | undefined {
  if (all.length > live.length) {
    const kept = new Set(live);
    const lost = all.filter((segment) => !kept.has(segment)).map((segment) => itemAt(segments, segment));
    const first = lost[0];
    if (first !== undefined && lost.reduce((sum, segment) => sum + lengthOf(segment), 0) > LOST_BORDER)
      return { x: first.ax, y: first.ay };
  }
  for (const segment of live) {
    for (const node of [itemAt(starts, segment), itemAt(ends, segment)])
      if (isUneven(node)) return { x: itemAt(xs, node), y: itemAt(ys, node) };
  }
  return undefined;
}

function lengthOf({ curve, from, to }: ContourSegment): number {
  const { length, sweep } = curve.feature;
  return (to - from) * (curve.radius === 0 ? length : curve.radius * Math.abs(sweep));
}

/** Leaves out segments without length, and pairs of segments that lie on each other: both if they run against each other, else one. */
function withoutTwins(nodes: Nodes, wanted: readonly number[]): number[] {
  const { starts, ends, segments } = nodes;
  const count = nodes.xs.length;
  const byEnds = new Map<number, number>();
  const dropped = new Set<number>();
  for (const segment of wanted) {
    const start = itemAt(starts, segment);
    const end = itemAt(ends, segment);
    if (start === end) {
      dropped.add(segment);
      continue;
    }
    const same = byEnds.get(start * count + end);
    const opposite = byEnds.get(end * count + start);
    if (same !== undefined && isTwin(itemAt(segments, same), itemAt(segments, segment))) dropped.add(segment);
    else if (opposite !== undefined && isTwin(itemAt(segments, opposite), itemAt(segments, segment))) {
      dropped.add(segment).add(opposite);
      byEnds.delete(end * count + start);
    } else byEnds.set(start * count + end, segment);
  }
  return dropped.size === 0 ? [...wanted] : wanted.filter((segment) => !dropped.has(segment));
}

function isTwin(a: ContourSegment, b: ContourSegment): boolean {
  const [ax, ay] = pointOfCurve(a.curve, (a.from + a.to) / 2);
  const [bx, by] = pointOfCurve(b.curve, (b.from + b.to) / 2);
  return hypot(ax - bx, ay - by) <= 2 * SAME_NODE;
}

/** How many separate borders the wanted segments make. */
export function countBorders(nodes: Nodes, wanted: (segment: ContourSegment) => boolean): number {
  const { live } = liveSegments(
    nodes,
    nodes.segments.flatMap((segment, i) => (wanted(segment) ? [i] : [])),
  );
  const sets = disjointSets(nodes.xs.length);
  for (const segment of live) sets.unite(itemAt(nodes.starts, segment), itemAt(nodes.ends, segment));
  return new Set(live.map((segment) => sets.find(itemAt(nodes.starts, segment)))).size;
}
