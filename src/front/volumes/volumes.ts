/**
 * Volumes of metal removed (M2.7): the exact area of the contours, integrated over depth. Relative error under 1e-5.
 * A cluster of few levels is integrated level by level. One of many is divided into walls that each feel few levels, and of a
 * run of many stages only some are integrated: between them the difference from straight walls is smooth, and it is
 * looked at half-way whether it is. So cost grows with the number of walls, and hardly with that of the stages.
 */

import { contourArea, sweptArea } from '#front/contours/contour-area.ts';
import {
  type ClipBorder,
  type ContourKit,
  clipNearCluster,
  makeClipBorder,
} from '#front/contours/contour-kit.ts';
import { type Moment, momentAt, momentAtEnd, reachAt, type StageEnd } from '#front/front.ts';
import { pointBeside } from '#front/front-features.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import type { Point } from '#geometry/point.ts';
import { JUST_BESIDE, SLICE_AGREEMENT, VOLUME_AGREEMENT } from '#geometry/tolerances.ts';
import { areaByGrowth } from './area-by-growth.ts';
import { curveThrough } from './curve-through.ts';
import { type DepthRange, integrateDepth } from './integrate-depth.ts';
import { straightWalls } from './straight-walls.ts';
import { besideIn, neighborStages, type WallGroup, wallGroups } from './wall-groups.ts';

/** Levels up to which a cluster is integrated as a whole, and moments up to which each is. */
export const FEW_LEVELS = 12;

export interface VolumeMeter {
  /** Metal removed up to the end of a stage. */
  readonly at: (end: StageEnd) => Removed;
  /**
   * The same for many ends of a run, of which only some are integrated.
   * @param places depth etched till then, mm, rising
   */
  readonly along: (ends: readonly StageEnd[], places: readonly number[]) => Removed[];
}

export function volumeMeter(kit: ContourKit): VolumeMeter {
  const metal = measurable(kit);
  const at = (end: StageEnd): Removed => removedAt(metal, momentAtEnd(kit.index.front, end));
  return {
    at,
    along: (ends, places) => {
      let gap: Point | undefined;
      const exact = (i: number): number => {
        const removed = at(itemAt(ends, i));
        gap ??= removed.gap;
        return removed.volume;
      };
      const straight = straightWalls(kit.index, neighborStages(kit.index));
      const baseline = (i: number): number => straight(momentAtEnd(kit.index.front, itemAt(ends, i)));
      const volumes = curveThrough(exact, { places, baseline, share: VOLUME_AGREEMENT });
      return volumes.map((volume) => ({ volume, gap }));
    },
  };
}

/** All metal removed up to a minute; to the end of the run when none is given. mm³ */
export function removedVolume(kit: ContourKit, minute?: number): number {
  return removedAt(measurable(kit), momentAt(kit.index.front, minute)).volume;
}

/** A front made ready for volumes at any number of moments. */
interface Metal {
  readonly kit: ContourKit;
  readonly clusters: readonly MetalCluster[];
}

interface MetalCluster {
  readonly members: Int32Array;
  readonly clip: ClipBorder | undefined;
  /** Stages that come to the surface in it, or around it. */
  readonly stages: readonly number[];
  /** Empty where it is integrated as a whole. */
  readonly groups: readonly WallGroup[];
}

function measurable(kit: ContourKit): Metal {
  const { index } = kit;
  const { sheet } = index.front;
  const border = sheet.length === 0 ? undefined : makeClipBorder(kit, sheet);
  const neighbors = index.front.stages.length > FEW_LEVELS ? neighborStages(index) : new Int32Array();
  const clusters = kit.clusters.map((members) => {
    const stages = stagesOf(kit, members);
    const clip = border === undefined ? undefined : clipNearCluster(border, members);
    const groups = stages.length > FEW_LEVELS ? wallGroups(kit, members, neighbors) : [];
    return { members, clip, stages, groups };
  });
  return { kit, clusters };
}

function stagesOf({ index }: ContourKit, members: Int32Array): number[] {
  const present = new Set<number>();
  for (const member of members) present.add(itemAt(index.features, member).stage);
  // Inside a wider opening the area starts, all at once, at that opening's floor: also where all its borders are those of deeper stages.
  const first = itemAt(
    index.features,
    members.find((member) => itemAt(index.features, member).kind !== 'corner') ?? itemAt(members, 0),
  );
  const [x, y] = pointBeside(first, -JUST_BESIDE);
  for (const [stage, opening] of index.openings.entries()) if (isInside(opening, x, y)) present.add(stage);
  return [...present];
}

export interface Removed {
  /** mm³ */
  readonly volume: number;
  /** Where a contour did not close, so that the volume may be wrong; undefined where all did. */
  readonly gap: Point | undefined;
}

function removedAt({ kit, clusters }: Metal, moment: Moment): Removed {
  let volume = 0;
  let firstGap: Point | undefined;
  for (const cluster of clusters) {
    const { volume: own, gap } =
      cluster.groups.length > 0 ? volumeByWalls(kit, cluster, moment) : volumeByLevels(kit, cluster, moment);
    volume += own;
    firstGap ??= gap;
  }
  return { volume, gap: firstGap };
}

function volumeByLevels(kit: ContourKit, { members, clip, stages }: MetalCluster, moment: Moment): Removed {
  let firstGap: Point | undefined;
  const areaAt = (depth: number): number => {
    const { area, gap } = contourArea(kit, { members, moment, depth, clip });
    firstGap ??= gap;
    return area;
  };
  let volume = 0;
  let shallower = 0;
  for (const deeper of floorsOf(moment, stages)) {
    const range = { shallower, deeper };
    const widest = stages.reduce(
      (last, stage) => (itemAt(moment.floors, stage) < deeper ? last : Math.max(last, stage)),
      0,
    );
    const grown = areaByGrowth(areaAt, (depth) => reachAt(moment, widest, depth), range);
    volume += integrateDepth(grown, range, { share: VOLUME_AGREEMENT });
    shallower = deeper;
  }
  return { volume, gap: firstGap };
}

/** Depths of the floors that some stages have at a moment, each once, shallowest first. */
function floorsOf(moment: Moment, stages: readonly number[]): number[] {
  return stages
    .map((stage) => itemAt(moment.floors, stage))
    .filter((floor) => floor > 0)
    .sort((a, b) => a - b);
}

function volumeByWalls(kit: ContourKit, cluster: MetalCluster, moment: Moment): Removed {
  const { members, clip, stages, groups } = cluster;
  const { ax, ay } = itemAt(kit.index.features, itemAt(members, 0));
  const origin = { x: ax, y: ay };
  const floors = floorsOf(moment, stages);
  const deepest = floors.at(-1) ?? 0;
  if (deepest === 0) return { volume: 0, gap: undefined };
  const { scale, gap } = closedArea(kit, cluster, moment);
  let volume = 0;
  for (const group of groups) {
    const near = (clip && clipNearCluster(clip, group.members)) ?? insideOf(clip);
    const share = group.members.length / members.length;
    for (const range of visibleRanges(group, moment)) {
      const { members, stages } = group;
      const beside = besideIn(kit.index, group, { moment, range });
      const ask = { members, stages, beside, moment, origin, clip: near, withoutBorder: true };
      const allowed = SLICE_AGREEMENT * scale * share * (range.deeper - range.shallower);
      volume += integrateDepth(sweptArea(kit, ask), range, { share: VOLUME_AGREEMENT, allowed });
    }
  }
  if (clip === undefined) return { volume, gap };
  const ask = { members: [], stages, beside: members, moment, origin, clip, withoutBorder: false };
  let shallower = 0;
  for (const deeper of floors) {
    const allowed = SLICE_AGREEMENT * scale * (deeper - shallower);
    volume += integrateDepth(
      sweptArea(kit, ask),
      { shallower, deeper },
      { share: VOLUME_AGREEMENT, allowed },
    );
    shallower = deeper;
  }
  return { volume, gap };
}

/** What cuts off walls that do not reach the border: they may stand outside it all the same. */
function insideOf(clip: ClipBorder | undefined): ClipBorder | undefined {
  return clip && { features: [], inside: clip.inside, nearFeatures: [], nearBorders: new Map() };
}

/** Depths between which walls can show, cut at each floor that they feel. */
function visibleRanges({ stages, covers }: WallGroup, moment: Moment): DepthRange[] {
  const depths = new Set([0, ...floorsOf(moment, stages), ...floorsOf(moment, covers)]);
  for (const stage of covers) depths.add(itemAt(moment.bases, stage));
  const deepest = Math.max(0, ...stages.map((stage) => itemAt(moment.floors, stage)));
  const cuts = [...depths].filter((depth) => depth <= deepest).sort((a, b) => a - b);
  return cuts
    .slice(1)
    .map((deeper, i) => ({ shallower: itemAt(cuts, i), deeper }))
    .filter(
      ({ shallower, deeper }) =>
        !covers.some(
          (stage) => itemAt(moment.bases, stage) <= shallower && deeper <= itemAt(moment.floors, stage),
        ),
    );
}

/** Depths at which a cluster that is integrated by walls is looked at as a whole. */
const LOOKS = 16;

/** The largest area of some contours, mm², and where one does not close. */
function closedArea(
  kit: ContourKit,
  { members, clip, stages }: MetalCluster,
  moment: Moment,
): { readonly scale: number; readonly gap: Point | undefined } {
  const floors = [0, ...floorsOf(moment, stages)];
  const step = Math.max(1, Math.floor(floors.length / LOOKS));
  let scale = 0;
  let firstGap: Point | undefined;
  for (let i = 0; i + 1 < floors.length; i += step) {
    const depth = (itemAt(floors, i) + itemAt(floors, i + 1)) / 2;
    const { area, gap } = contourArea(kit, { members, moment, depth, clip });
    scale = Math.max(scale, area);
    firstGap ??= gap;
  }
  return { scale, gap: firstGap };
}
