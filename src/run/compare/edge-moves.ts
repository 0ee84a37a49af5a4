/**
 * How far each drawn edge comes out elsewhere when a part is etched through other openings: found on both fronts, square to the drawn
 * line, where each passes the depth that the line stands for (M3.3). Places along an edge are sampled; each is exact to a ten-millionth of a millimetre.
 */

import type { DrawnStep } from '#checks/drawn-steps.ts';
import { makeProbe } from '#front/depth-at.ts';
import { momentAt } from '#front/front.ts';
import { type FrontIndex, indexFront } from '#front/front-index.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, type Span, spanLength, tangentAlong } from '#geometry/span.ts';
import { BESIDE_LINE, ROUNDING } from '#geometry/tolerances.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';

export interface EdgeMove {
  /** mm that the deeper floor grows past where it was planned (0 or more), or stays short of it, and where most. */
  readonly outward: { readonly by: number; readonly at: Point };
  readonly inward: { readonly by: number; readonly at: Point };
  /** Where no such edge comes out within `FARTHEST`, or that of a deeper floor instead: the first place of so many. */
  readonly lost: { readonly places: number; readonly at: Point } | undefined;
  readonly places: number;
}

/** mm off its place up to which an edge is looked for. */
const FARTHEST = 10;
/** mm between the places looked at, and how many an edge has at most. */
const APART = 4;
const MOST_PLACES = 60;
const FIRST_STEP = 0.02;
const WIDER = 1.3;
const HALVINGS = 32;
/** mm; an edge found no farther off is taken for the same without a look at what made it. */
const SAME_EDGE = 1;

/** @param share of the step at which the drawn line stands */
export function edgeMoves(
  step: DrawnStep,
  share: number,
  fronts: { readonly planned: FrontIndex; readonly returned: FrontIndex },
): EdgeMove {
  const depth = depthSought(step, share);
  const planned = edgeFinder(fronts.planned, depth);
  const returned = edgeFinder(fronts.returned, depth);
  const own = ownEdge(step.level, depth, fronts.returned);
  let outward = { by: 0, at: step.at };
  let inward = { by: 0, at: step.at };
  let lost: { places: number; at: Point } | undefined;
  let places = 0;
  for (const span of step.edges) {
    for (const line of linesAcross(span, (at) => planned.depthAt(at))) {
      const before = planned.find(line, 0);
      if (before === undefined) continue;
      places++;
      const found = returned.find(line, before);
      const isAnother = found !== undefined && Math.abs(found - before) > SAME_EDGE && !own(line, found);
      const after = isAnother ? undefined : found;
      if (after === undefined) lost = { places: (lost?.places ?? 0) + 1, at: lost?.at ?? line.from };
      else if (after - before > outward.by) outward = { by: after - before, at: line.from };
      else if (before - after > inward.by) inward = { by: before - after, at: line.from };
    }
  }
  return { outward, inward, lost, places };
}

/** Whether stages no deeper than a level make an edge there: else it is the wall of a deeper floor, that the edge is missing before. */
function ownEdge(
  level: number,
  sought: number,
  { front }: FrontIndex,
): (line: LineAcross, at: number) => boolean {
  const stages = front.stages.filter((stage) => stage.level <= level + SAME_LEVEL);
  let depthAt: EdgeFinder['depthAt'] | undefined;
  return ({ from, out }, at) => {
    depthAt ??= edgeFinder(indexFront({ ...front, stages }), sought).depthAt;
    const inside = at - BESIDE_LINE;
    return depthAt({ x: from.x + inside * out.x, y: from.y + inside * out.y }) > sought;
  };
}

/** Just past the shallower floor; just short of the deeper one where the line is its foot. */
function depthSought({ level, beside, wall }: DrawnStep, share: number): number {
  if (wall !== undefined) return wall;
  return share === 1 ? level - ROUNDING : beside + share * (level - beside) + ROUNDING;
}

/** A place on the drawn edge and the way to the shallower side. */
interface LineAcross {
  readonly from: Point;
  readonly out: Point;
}

function linesAcross(span: Span, depthAt: (at: Point) => number): LineAcross[] {
  const count = Math.min(MOST_PLACES, Math.max(3, Math.ceil(spanLength(span) / APART)));
  return Array.from({ length: count }, (_, index) => {
    const share = (index + 0.5) / count;
    const from = pointAlong(span, share);
    const along = tangentAlong(span, share);
    const left = { x: -along.y, y: along.x };
    const beside = (sign: number) =>
      depthAt({ x: from.x + sign * BESIDE_LINE * left.x, y: from.y + sign * BESIDE_LINE * left.y });
    const sign = beside(1) > beside(-1) ? -1 : 1;
    return { from, out: { x: sign * left.x, y: sign * left.y } };
  });
}

interface EdgeFinder {
  readonly depthAt: (at: Point) => number;
  /** Distance along a line at which the front passes the depth, nearest to a distance; undefined where it does not. */
  readonly find: (line: LineAcross, near: number) => number | undefined;
}

function edgeFinder(index: FrontIndex, sought: number): EdgeFinder {
  const { measure } = makeProbe(index, momentAt(index.front));
  const isDeeper = ({ from, out }: LineAcross, by: number): boolean =>
    measure(from.x + by * out.x, from.y + by * out.y) > sought;
  const find = (line: LineAcross, near: number): number | undefined => {
    const start = isDeeper(line, near);
    const way = start ? 1 : -1;
    let [last, step] = [near, FIRST_STEP];
    while (Math.abs(last - near) < FARTHEST) {
      const next = near + way * Math.min(FARTHEST, Math.abs(last - near) + step);
      if (isDeeper(line, next) !== start) return start ? halved(line, last, next) : halved(line, next, last);
      last = next;
      step *= WIDER;
    }
    return undefined;
  };
  const halved = (line: LineAcross, inside: number, outside: number): number => {
    let [deep, shallow] = [inside, outside];
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (deep + shallow) / 2;
      if (isDeeper(line, middle)) deep = middle;
      else shallow = middle;
    }
    return (deep + shallow) / 2;
  };
  return { depthAt: ({ x, y }) => measure(x, y), find };
}
