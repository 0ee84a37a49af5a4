/** The contours of one cluster of openings from the surface to its deepest floor, laid down as mesh vertices. */
import { itemAt } from '#geometry/assert.ts';
import { countBorders } from './chain-pieces.ts';
import { nextContourDepth } from './contour-depths.ts';
import type { ClipBorder, ContourKit } from './contour-kit.ts';
import { type Outline, outlineOf } from './contour-outline.ts';
import { type ContourPiece, contourPieces } from './contour-pieces.ts';
import { type Moment, reachAt } from './front.ts';
import type { Feature } from './front-features.ts';
import { type InsideIndex, isInside } from './inside-index.ts';
import type { MeshDraft } from './mesh-draft.ts';
import { pointOfSpread, spreadFeature } from './spread.ts';

export interface ContourStack {
  /** Surface first; the last is the deepest floor. */
  readonly outlines: readonly Outline[];
  /** Stage index of the floor at each outline, -1 where there is none. */
  readonly floors: readonly number[];
}

export interface StackRules {
  readonly moment: Moment;
  /** Chord error allowed in plan and in profile, mm. */
  readonly sag: number;
  /** Height of a vertex at a depth. */
  readonly heightOf: (depth: number) => number;
}

export function stackContours(
  draft: MeshDraft,
  kit: ContourKit,
  cluster: Int32Array,
  clip: ClipBorder | undefined,
  rules: StackRules,
): ContourStack {
  const { moment, sag } = rules;
  const floors = floorsOf(kit, cluster, moment);
  const piecesAt = (depth: number): ContourPiece[] => {
    const reaches = moment.cuts.map((_, stage) => reachAt(moment, stage, depth));
    return contourPieces(kit, { members: cluster, reaches, clip });
  };
  const search = { piecesAt, moment, sag };
  const outlines: Outline[] = [];
  const floorStages: number[] = [];
  const lay = (depth: number, pieces: readonly ContourPiece[]): void => {
    outlines.push(outlineOf(draft, pieces, { depth, z: rules.heightOf(depth), sag }));
    floorStages.push(floors.find((floor) => floor.depth === depth)?.stage ?? -1);
  };
  let depth = 0;
  let pieces: readonly ContourPiece[] = piecesAt(depth);
  lay(depth, pieces);
  for (let floor = floors[0]; floor !== undefined; floor = floors.find((each) => each.depth > depth)) {
    const showing = new Set<number>();
    for (const piece of pieces) if (piece.withoutFloor) showing.add(piece.spread.feature.stage);
    showing.delete(-1);
    const next = nextContourDepth(moment, { depth, floor: floor.depth, showing, sag });
    const found = firstChange(search, { depth, pieces }, { depth: next, pieces: piecesAt(next) });
    for (const each of found) lay(each.depth, each.pieces);
    ({ depth, pieces } = itemAt(found, found.length - 1));
  }
  return { outlines, floors: floorStages };
}

interface PiecesAtDepth {
  readonly depth: number;
  readonly pieces: readonly ContourPiece[];
}

/**
 * The contours to lay next: `below`, or where fronts meet or an island drowns on the way there, one on either side of
 * that, no farther apart than `sag`: a crest stands between contours and would be cut off otherwise. Where walls are
 * upright a crest is thin, and contours too near each other in plan would only cross by their chords.
 */
function firstChange(search: ChangeSearch, above: PiecesAtDepth, below: PiecesAtDepth): PiecesAtDepth[] {
  const { piecesAt, moment, sag } = search;
  const borders = countBorders(above.pieces, (piece) => piece.withoutFloor);
  if (borders === countBorders(below.pieces, (piece) => piece.withFloor)) return [below];
  const isApart = (a: PiecesAtDepth, b: PiecesAtDepth): boolean =>
    leastMove(moment, a.depth, b.depth) > sag / 4;
  let same = above;
  let changed = below;
  while (changed.depth - same.depth > sag && isApart(same, changed)) {
    const depth = (same.depth + changed.depth) / 2;
    const middle = { depth, pieces: piecesAt(depth) };
    if (countBorders(middle.pieces, (piece) => piece.withFloor) === borders) same = middle;
    else changed = middle;
  }
  return same !== above && isApart(above, same) ? [same, changed] : [changed];
}

interface ChangeSearch {
  readonly piecesAt: (depth: number) => ContourPiece[];
  readonly moment: Moment;
  readonly sag: number;
}

/** How far the slowest border moves in plan between two depths, mm. */
function leastMove(moment: Moment, from: number, to: number): number {
  let least = Number.POSITIVE_INFINITY;
  moment.floors.forEach((floor, stage) => {
    if (floor >= to && itemAt(moment.bases, stage) <= from)
      least = Math.min(least, reachAt(moment, stage, from) - reachAt(moment, stage, to));
  });
  return least;
}

/**
 * Depths at which the cluster may meet a floor, shallowest first: its own stages', and those of openings around it whose
 * borders are too far away to be in the cluster.
 */
function floorsOf(kit: ContourKit, cluster: Int32Array, moment: Moment): { stage: number; depth: number }[] {
  const { features, openings } = kit.index;
  const stages = new Set<number>();
  for (const member of cluster) stages.add(itemAt(features, member).stage);
  openings.forEach((opening, stage) => {
    if (!stages.has(stage) && cluster.some((member) => isAnyWithin(itemAt(features, member), opening))) {
      stages.add(stage);
    }
  });
  return [...stages]
    .map((stage) => ({ stage, depth: itemAt(moment.floors, stage) }))
    .filter(({ depth }) => depth > 0)
    .sort((a, b) => a.depth - b.depth);
}

/** Whether a border span comes inside an opening: a place of it on the opening's own border may say anything. */
function isAnyWithin(feature: Feature, opening: InsideIndex): boolean {
  const spread = spreadFeature(feature, 0);
  return (
    spread !== undefined && [0, 0.3, 0.6].some((share) => isInside(opening, ...pointOfSpread(spread, share)))
  );
}
