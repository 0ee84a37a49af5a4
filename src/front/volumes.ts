/**
 * Volumes of metal removed, by integrating the exact area of the contours over depth.
 * Between two levels the area runs like √(D − z) up to the deeper one, so z = b − (b − a) s² makes it smooth in s; Gauss
 * and Kronrod sums (5 and 11 nodes) over s differ by far more than the 11-node sum errs, and an interval is halved until
 * they agree to AGREEMENT of the cluster's volume: only where fronts meet or islands vanish. Relative error under 1e-5.
 */
import { itemAt } from '#geometry/assert.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import type { Point } from '#geometry/point.ts';
import { contourArea } from './contour-area.ts';
import { type ContourKit, clipNearCluster, makeClipBorder } from './contour-kit.ts';
import { type Moment, momentAt } from './front.ts';

export interface StageVolume {
  /** Stage number. */
  readonly stage: number;
  /** mm³ between the front at the stage's peel and at its end. */
  readonly volume: number;
  /** Where a contour did not close, so that the volume may be wrong; undefined where all did. */
  readonly gap: Point | undefined;
}

/** Nodes and weights of the Gauss and Kronrod pair on [-1, 1]: Kronrod, Nodes and weights of quadrature formulas (1965), n = 5. */
const NODES = [
  0.9840853600948425, 0.906179845938664, 0.7541667265708492, 0.5384693101056831, 0.2796304131617832, 0,
];
const KRONROD = [
  0.0425820367510818, 0.1152333166224734, 0.1868007965564926, 0.2410403392286476, 0.2728498019125589,
  0.2829874178574912,
];
const GAUSS = [0, 0.2369268850561891, 0, 0.4786286704993665, 0, 0.5688888888888889];
const AGREEMENT = 1e-5;
const DEEPEST_HALVING = 12;

/** Metal removed during each stage, in the order of the run: the volume between two fronts. */
export function stageVolumes(kit: ContourKit): StageVolume[] {
  const { front } = kit.index;
  const run = [...front.stages].sort((a, b) => a.number - b.number);
  let before = 0;
  return run.map((stage, i) => {
    const last = i === run.length - 1;
    const { volume: after, gap } = removedMetal(kit, last ? undefined : stage.startMinute + stage.minutes);
    const volume = after - before;
    before = after;
    return { stage: stage.number, volume, gap };
  });
}

/** All metal removed up to a minute; to the end of the run when none is given. mm³ */
export function removedVolume(kit: ContourKit, minute?: number): number {
  return removedMetal(kit, minute).volume;
}

function removedMetal(kit: ContourKit, minute?: number): Omit<StageVolume, 'stage'> {
  const { front } = kit.index;
  const moment = momentAt(front, minute);
  const sheet = front.sheet.length === 0 ? undefined : makeClipBorder(kit.index, front.sheet);
  const gaps: Point[] = [];
  let volume = 0;
  for (const cluster of kit.clusters) {
    const clip = sheet === undefined ? undefined : clipNearCluster(sheet, cluster);
    const areaAt = (depth: number): number => {
      const { area, gap } = contourArea(kit, { members: cluster, moment, depth, clip });
      if (gap !== undefined) gaps.push(gap);
      return area;
    };
    volume += clusterVolume(kit, cluster, moment, areaAt);
  }
  return { volume, gap: gaps[0] };
}

function clusterVolume(
  kit: ContourKit,
  cluster: Int32Array,
  moment: Moment,
  areaAt: (depth: number) => number,
): number {
  const { features, openings } = kit.index;
  const present = new Set<number>();
  for (const member of cluster) present.add(itemAt(features, member).stage);
  // Inside a wider opening of another cluster the area starts, all at once, at that opening's floor.
  const { ax, ay } = itemAt(features, itemAt(cluster, 0));
  for (const [stage, opening] of openings.entries()) if (isInside(opening, ax, ay)) present.add(stage);
  const levels = [...present].map((stage) => itemAt(moment.floors, stage)).filter((floor) => floor > 0);
  levels.sort((a, b) => a - b);
  let sum = 0;
  let shallower = 0;
  for (const level of levels) {
    sum += integrateTo(areaAt, shallower, level);
    shallower = level;
  }
  return sum;
}

/** ∫ area dz from `shallower` to `level`, where the area may end like a square root. */
function integrateTo(area: (depth: number) => number, shallower: number, level: number): number {
  const span = level - shallower;
  const integrand = (s: number): number => 2 * span * s * area(level - span * s * s);
  const whole = kronrod(integrand, 0, 1);
  const refine = (part: Estimate, allowed: number, halvings: number): number => {
    const { from, to, fine, coarse } = part;
    if (Math.abs(fine - coarse) <= allowed || halvings === 0) return fine;
    const middle = (from + to) / 2;
    const left = refine(kronrod(integrand, from, middle), allowed / 2, halvings - 1);
    return left + refine(kronrod(integrand, middle, to), allowed / 2, halvings - 1);
  };
  return refine(whole, Math.abs(whole.fine) * AGREEMENT, DEEPEST_HALVING);
}

/** An integral by the finer and by the coarser rule. */
interface Estimate {
  readonly from: number;
  readonly to: number;
  readonly fine: number;
  readonly coarse: number;
}

function kronrod(integrand: (s: number) => number, from: number, to: number): Estimate {
  const half = (to - from) / 2;
  const middle = (to + from) / 2;
  let fine = 0;
  let coarse = 0;
  NODES.forEach((node, i) => {
    const value =
      node === 0 ? integrand(middle) : integrand(middle - half * node) + integrand(middle + half * node);
    fine += itemAt(KRONROD, i) * value;
    coarse += itemAt(GAUSS, i) * value;
  });
  return { from, to, fine: fine * half, coarse: coarse * half };
}
