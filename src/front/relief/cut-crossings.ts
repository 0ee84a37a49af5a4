/**
 * Segments on a lattice cut where they cross, and at points that they pass within half a step: what is left crosses nowhere and
 * runs through no point. Crossings are put on the lattice, which bends segments by up to a step and can make them cross
 * others: so it is done again with those that changed, until nothing changes. From the second round on a crossing near an
 * end is that end, or segments at a small angle would creep along each other a step a round.
 */
import Flatbush from 'flatbush';
import { itemAt } from '#geometry/assert.ts';
import { PairIndex } from './pair-index.ts';

export interface LatticeSegments {
  readonly starts: number[];
  readonly ends: number[];
  readonly tags: number[];
}

interface Points {
  readonly xs: ArrayLike<number>;
  readonly ys: ArrayLike<number>;
}

/** The point at a place of the lattice: one that is there already, or a new one. */
export type PointAt = (x: number, y: number) => number;

/** Rounds after which it is given up; four were the most ever seen. */
const MOST_ROUNDS = 24;
/** Steps; a crossing this near to an end may be taken for it in a late round. */
const FARTHEST_SNAP = 64;
export interface CutSegments {
  /** No two alike. Undefined where rounds did not come to an end. */
  readonly segments: LatticeSegments | undefined;
  /** Tags of segments that were cut. */
  readonly cut: readonly number[];
}

/** Tags of segments that lie on each other are joined by `joinTags`; a segment from a point to itself is left out. */
export function cutCrossings(
  points: Points,
  given: LatticeSegments,
  pointAt: PointAt,
  joinTags: (a: number, b: number) => number,
): CutSegments {
  const cut: number[] = [];
  let segments: LatticeSegments = given;
  let changed: Uint8Array | undefined;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const once = withoutDoubles(segments, changed, joinTags);
    const cuts = cutsAmong(points, once.segments, once.changed, { round, pointAt });
    if (cuts.size === 0) return { segments: once.segments, cut };
    const next: LatticeSegments = { starts: [], ends: [], tags: [] };
    const isNew: number[] = [];
    const { starts, ends, tags } = once.segments;
    starts.forEach((start, i) => {
      const at = cuts.get(i);
      const end = itemAt(ends, i);
      const tag = itemAt(tags, i);
      if (at !== undefined) cut.push(tag);
      let from = start;
      for (const to of at === undefined ? [end] : [...alongFrom(points, start, end, at), end]) {
        next.starts.push(from);
        next.ends.push(to);
        next.tags.push(tag);
        isNew.push(at === undefined ? 0 : 1);
        from = to;
      }
    });
    segments = next;
    changed = Uint8Array.from(isNew);
  }
  return { segments: undefined, cut };
}

/** Each segment once, whichever way it runs; one that changed stays one that changed. */
function withoutDoubles(
  { starts, ends, tags }: LatticeSegments,
  changed: Uint8Array | undefined,
  joinTags: (a: number, b: number) => number,
): { segments: LatticeSegments; changed: Uint8Array | undefined } {
  const segments: LatticeSegments = { starts: [], ends: [], tags: [] };
  const index = new PairIndex();
  const kept = changed === undefined ? undefined : new Uint8Array(starts.length);
  for (let i = 0; i < starts.length; i++) {
    const start = starts[i] as number;
    const end = ends[i] as number;
    if (start === end) continue;
    const low = Math.min(start, end);
    const high = Math.max(start, end);
    let at = index.find(low, high);
    if (at < 0) {
      at = index.add(low, high);
      segments.starts.push(low);
      segments.ends.push(high);
      segments.tags.push(tags[i] as number);
    } else segments.tags[at] = joinTags(segments.tags[at] as number, tags[i] as number);
    if (kept !== undefined && changed?.[i] === 1) kept[at] = 1;
  }
  return { segments, changed: kept };
}

/** Points in the order in which a segment passes them. */
function alongFrom({ xs, ys }: Points, start: number, end: number, at: ReadonlySet<number>): number[] {
  const ax = xs[start] as number;
  const ay = ys[start] as number;
  const ux = (xs[end] as number) - ax;
  const uy = (ys[end] as number) - ay;
  const along = (point: number): number =>
    ((xs[point] as number) - ax) * ux + ((ys[point] as number) - ay) * uy;
  return [...at].sort((a, b) => along(a) - along(b) || a - b);
}

interface Round {
  readonly round: number;
  readonly pointAt: PointAt;
}

/** By number of segment: the points where it has to be cut. Only pairs with one that changed are looked at, all in the first round. */
function cutsAmong(
  points: Points,
  { starts, ends }: LatticeSegments,
  changed: Uint8Array | undefined,
  { round, pointAt }: Round,
): Map<number, Set<number>> {
  const { xs, ys } = points;
  const cuts = new Map<number, Set<number>>();
  const count = starts.length;
  if (count === 0) return cuts;
  const tree = new Flatbush(count);
  for (let i = 0; i < count; i++) {
    const [a, b] = [starts[i] as number, ends[i] as number];
    const [ax, ay, bx, by] = [xs[a] as number, ys[a] as number, xs[b] as number, ys[b] as number];
    tree.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }
  tree.finish();
  const cut = (i: number, point: number): void => {
    if (point === starts[i] || point === ends[i]) return;
    const known = cuts.get(i);
    if (known === undefined) cuts.set(i, new Set([point]));
    else known.add(point);
  };
  const meet = (i: number, j: number): void => {
    const [a, b, c, d] = [starts[i], ends[i], starts[j], ends[j]] as [number, number, number, number];
    if (passes(points, a, b, c)) cut(i, c);
    if (passes(points, a, b, d)) cut(i, d);
    if (passes(points, c, d, a)) cut(j, a);
    if (passes(points, c, d, b)) cut(j, b);
    const crossing = crossingOf(points, [a, b, c, d]);
    if (crossing === undefined) return;
    const point = nearEnd(points, [a, b, c, d], crossing, round) ?? pointAt(...crossing);
    cut(i, point);
    cut(j, point);
  };
  for (let i = 0; i < count; i++) {
    if (changed !== undefined && changed[i] !== 1) continue;
    const [a, b] = [starts[i] as number, ends[i] as number];
    const [ax, ay, bx, by] = [xs[a] as number, ys[a] as number, xs[b] as number, ys[b] as number];
    tree.search(
      Math.min(ax, bx) - 1,
      Math.min(ay, by) - 1,
      Math.max(ax, bx) + 1,
      Math.max(ay, by) + 1,
      (j) => {
        const isOnce = changed === undefined ? j > i : j !== i;
        if (isOnce) meet(i, j);
        return false;
      },
    );
  }
  return cuts;
}

/** Whether the segment from a to b passes a point within half a step, beside neither of its ends. */
function passes({ xs, ys }: Points, a: number, b: number, point: number): boolean {
  if (point === a || point === b) return false;
  const ux = (xs[b] as number) - (xs[a] as number);
  const uy = (ys[b] as number) - (ys[a] as number);
  const wx = (xs[point] as number) - (xs[a] as number);
  const wy = (ys[point] as number) - (ys[a] as number);
  const along = ux * wx + uy * wy;
  const square = ux * ux + uy * uy;
  if (along <= 0 || along >= square) return false;
  const across = ux * wy - uy * wx;
  return 4 * across * across < square;
}

type Ends = readonly [a: number, b: number, c: number, d: number];

/** Where two segments cross, each within the other; undefined where they share an end or only touch. */
function crossingOf({ xs, ys }: Points, [a, b, c, d]: Ends): [number, number] | undefined {
  if (a === c || a === d || b === c || b === d) return undefined;
  const turn = (p: number, q: number, r: number): number =>
    ((xs[q] as number) - (xs[p] as number)) * ((ys[r] as number) - (ys[p] as number)) -
    ((xs[r] as number) - (xs[p] as number)) * ((ys[q] as number) - (ys[p] as number));
  const [toC, toD] = [turn(a, b, c), turn(a, b, d)];
  if (toC === 0 || toD === 0 || toC > 0 === toD > 0) return undefined;
  const [toA, toB] = [turn(c, d, a), turn(c, d, b)];
  if (toA === 0 || toB === 0 || toA > 0 === toB > 0) return undefined;
  const share = toA / (toA - toB);
  const [ax, ay] = [xs[a] as number, ys[a] as number];
  return [ax + ((xs[b] as number) - ax) * share, ay + ((ys[b] as number) - ay) * share];
}

/** The nearest of the ends, if it is as near as a crossing may be put to it in this round. */
function nearEnd(
  { xs, ys }: Points,
  ends: Ends,
  [x, y]: readonly [number, number],
  round: number,
): number | undefined {
  const snap = Math.min(1 << round, FARTHEST_SNAP) - 1;
  let least = snap * snap;
  let nearest: number | undefined;
  for (const end of ends) {
    const dx = (xs[end] as number) - x;
    const dy = (ys[end] as number) - y;
    const square = dx * dx + dy * dy;
    if (square < least) {
      least = square;
      nearest = end;
    }
  }
  return nearest;
}
