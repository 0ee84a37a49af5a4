/**
 * The contours of one cluster of openings from the surface to its deepest floor, laid down as mesh corners. They know no edge
 * of the sheet: what lies beyond it is cut off later.
 */

import { countBorders, type Nodes, nodesOf } from '#front/contours/chain-segments.ts';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import { contourSegments } from '#front/contours/contour-segments.ts';
import { offsetFeature, pointOfCurve } from '#front/contours/offset-curve.ts';
import { type Moment, reachAt } from '#front/front.ts';
import type { Feature } from '#front/front-features.ts';
import { itemAt } from '#geometry/assert.ts';
import { type InsideIndex, isInside } from '#geometry/loops/inside-index.ts';
import { nextContourDepth } from './contour-depths.ts';
import { type Outline, outlineOf } from './contour-outline.ts';
import type { MeshDraft } from './mesh-draft.ts';

export interface StackRules {
  readonly moment: Moment;
  /** Chord error allowed in plan and in profile, mm. */
  readonly sag: number;
  /** Height of a vertex at a depth. */
  readonly heightOf: (depth: number) => number;
}

/** Surface first; the last is the deepest floor. */
export function stackContours(
  draft: MeshDraft,
  kit: ContourKit,
  cluster: Int32Array,
  rules: StackRules,
): Outline[] {
  const { moment, sag } = rules;
  const floors = floorsOf(kit, cluster, moment);
  const contourAt = (depth: number): Contour => {
    const reaches = moment.cuts.map((_, stage) => reachAt(moment, stage, depth));
    return { depth, nodes: nodesOf(contourSegments(kit, { members: cluster, reaches })) };
  };
  const search = { contourAt, sag };
  const outlines: Outline[] = [];
  const lay = ({ depth, nodes }: Contour): void => {
    outlines.push(outlineOf(draft, nodes, { z: rules.heightOf(depth), sag }));
  };
  let last = contourAt(0);
  lay(last);
  for (let floor = floors[0]; floor !== undefined; floor = floors.find((each) => each > last.depth)) {
    const showing = new Set<number>();
    for (const segment of last.nodes.segments)
      if (segment.withoutFloor) showing.add(segment.curve.feature.stage);
    const next = nextContourDepth(moment, { depth: last.depth, floor, showing, sag });
    const found = firstChange(search, last, contourAt(next));
    for (const each of found) lay(each);
    last = itemAt(found, found.length - 1);
  }
  return outlines;
}

interface Contour {
  readonly depth: number;
  readonly nodes: Nodes;
}

/**
 * The contours to lay next: `below`, or where fronts meet or an island drowns on the way there, one on either side of
 * that, no farther apart than `sag`: a crest stands between contours and would be cut off otherwise.
 */
function firstChange(search: ChangeSearch, above: Contour, below: Contour): Contour[] {
  const { contourAt, sag } = search;
  const borders = countBorders(above.nodes, (segment) => segment.withoutFloor);
  if (borders === countBorders(below.nodes, (segment) => segment.withFloor)) return [below];
  let same = above;
  let changed = below;
  while (changed.depth - same.depth > sag) {
    const middle = contourAt((same.depth + changed.depth) / 2);
    if (countBorders(middle.nodes, (segment) => segment.withFloor) === borders) same = middle;
    else changed = middle;
  }
  return same === above ? [changed] : [same, changed];
}

interface ChangeSearch {
  readonly contourAt: (depth: number) => Contour;
  readonly sag: number;
}

/**
 * Depths at which the cluster may meet a floor, shallowest first: its own stages', and those of openings around it whose
 * borders are too far away to be in the cluster.
 */
function floorsOf(kit: ContourKit, cluster: Int32Array, moment: Moment): number[] {
  const { features, openings } = kit.index;
  const stages = new Set<number>();
  for (const member of cluster) stages.add(itemAt(features, member).stage);
  openings.forEach((opening, stage) => {
    if (!stages.has(stage) && cluster.some((member) => isAnyWithin(itemAt(features, member), opening))) {
      stages.add(stage);
    }
  });
  return [...stages]
    .map((stage) => itemAt(moment.floors, stage))
    .filter((depth) => depth > 0)
    .sort((a, b) => a - b);
}

/** Whether a border span comes inside an opening: a place of it on the opening's own border may say anything. */
function isAnyWithin(feature: Feature, opening: InsideIndex): boolean {
  const curve = offsetFeature(feature, 0);
  return (
    curve !== undefined && [0, 0.3, 0.6].some((share) => isInside(opening, ...pointOfCurve(curve, share)))
  );
}
