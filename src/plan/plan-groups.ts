/**
 * A plan divided into groups of clusters that feel nothing of each other: each group is a plan of its own, with the levels that it has for
 * stages, and whatever is measured of it or found on it follows from it alone. So a change of one depth asks for one group again, and the
 * land that several groups stand in is put together from what each of them leaves of it. Cost: n log n in clusters, linear in edges.
 */
import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpans, growBox, joinBoxes } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { areSame } from '#geometry/same-items.ts';
import { type Loop, loopArea, type Path } from '#geometry/span.ts';
import type { EtchPlan, PlannedRegion, Stage } from './etch-plan.ts';
import { lastOpened, type OpenedCluster } from './opened-cluster.ts';

export interface PlanGroup {
  /**
   * Stages are numbered within the group; the sheet, and land that lies in other groups, too, have their outer loops and those holes that are near. Findings
   * are those of the whole.
   */
  readonly plan: EtchPlan;
  /** Empty for a plan of which nobody knows them: it is its own only group. */
  readonly clusters: readonly OpenedCluster[];
}

export interface GroupReach {
  /** How far past its drawn border a cluster with that deepest level may come, mm, and how far beyond that it feels others. */
  readonly past: (deepest: number) => number;
  readonly feels: (deepest: number) => number;
}

/** Each made when it is asked for: of hundreds of thousands together they would take more room than the plan. */
export interface PlanGroups {
  readonly count: number;
  /** In the order of their first clusters. */
  readonly at: (place: number) => PlanGroup;
}

export function planGroups(plan: EtchPlan, reach: GroupReach): PlanGroups {
  const { clusters = [] } = plan;
  if (clusters.length === 0 || !isMadeOf(plan, clusters))
    return { count: 1, at: () => ({ plan, clusters: [] }) };
  const groups = nearClusters(clusters, reach);
  const regions = regionsOfGroups(plan, groups);
  const sheetNear = loopsNear(plan.sheet);
  return {
    count: groups.length,
    at: (place) => {
      const { members, box } = itemAt(groups, place);
      const own = itemAt(regions, place);
      return {
        plan: {
          ...plan,
          regions: own,
          sheet: sheetNear(box),
          stages: stagesOf(plan.stages, members, own),
          clusters: members,
        },
        clusters: members,
      };
    },
  };
}

/** Whether the stages are still those that the clusters made, loop by loop: a plan moved, mirrored or changed by hand is its own only group. */
function isMadeOf({ stages }: EtchPlan, clusters: readonly OpenedCluster[]): boolean {
  return stages.every(({ level, piece, opening, lines }) => {
    const opened = openedAt(clusters, level);
    return areSame(opening, opened.opening) && areSame(piece, opened.piece) && areSame(lines, opened.lines);
  });
}

/** What is bare in some clusters once a level is etched, and what was peeled and cut for it. */
function openedAt(
  clusters: readonly OpenedCluster[],
  level: number,
): Pick<Stage, 'piece' | 'opening' | 'lines'> {
  const [piece, opening, lines]: [Loop[], Loop[], Path[]] = [[], [], []];
  for (const { stages } of clusters) {
    const stage = lastOpened(stages, level);
    if (stage === undefined) continue;
    for (const loop of stage.opening) opening.push(loop);
    if (stage.level !== level) continue;
    for (const loop of stage.piece) piece.push(loop);
    for (const line of stage.lines) lines.push(line);
  }
  return { piece, opening, lines };
}

interface Near {
  readonly members: OpenedCluster[];
  /** Of all that they may feel. */
  box: Box;
}

function nearClusters(clusters: readonly OpenedCluster[], { past, feels }: GroupReach): Near[] {
  const deepest = clusters.map(({ stages }) => stages.reduce((most, { level }) => Math.max(most, level), 0));
  const boxes = clusters.map(({ box }, at) => growBox(box, past(itemAt(deepest, at))));
  const felt = boxes.map((box, at) => growBox(box, feels(itemAt(deepest, at))));
  const index = indexBoxes(boxes);
  const sets = disjointSets(clusters.length);
  felt.forEach((box, at) => {
    for (const other of index.meeting(box)) sets.unite(at, other);
  });
  const groups = new Map<number, Near>();
  clusters.forEach((cluster, at) => {
    const root = sets.find(at);
    const group = groups.get(root) ?? { members: [], box: itemAt(felt, at) };
    groups.set(root, group);
    group.members.push(cluster);
    group.box = joinBoxes(group.box, itemAt(felt, at));
  });
  return [...groups.values()];
}

/** By group, in the plan's order. */
function regionsOfGroups(plan: EtchPlan, groups: readonly Near[]): readonly (readonly PlannedRegion[])[] {
  const groupOfFace = new Map<number, number>();
  groups.forEach(({ members }, group) => {
    for (const { faces } of members) for (const face of faces) groupOfFace.set(face, group);
  });
  const regions = groups.map((): PlannedRegion[] => []);
  for (const region of plan.regions) {
    const own = groupOfFace.get(region.face);
    if (own !== undefined) {
      itemAt(regions, own).push(region);
      continue;
    }
    const { bordered, free } = loopsByGroup(plan, region, groupOfFace);
    if (bordered.size === 1 && free.length === 0) {
      for (const group of bordered.keys()) itemAt(regions, group).push(region);
      continue;
    }
    const numbers = new Map(region.loops.map((loop, number) => [loop, number]));
    const freeNear = loopsNear(free);
    const outer = region.loops.filter((loop) => loopArea(loop) > 0);
    for (const [group, loops] of bordered) {
      const all = [...new Set([...outer, ...loops, ...freeNear(itemAt(groups, group).box)])];
      const inOrder = all.sort((a, b) => (numbers.get(a) ?? 0) - (numbers.get(b) ?? 0));
      itemAt(regions, group).push({ ...region, loops: inOrder });
    }
  }
  return regions;
}

interface LoopsOfLand {
  /** By group, the loops of a land region along which it lies. */
  readonly bordered: ReadonlyMap<number, ReadonlySet<Loop>>;
  /** Those along which something else lies, too: other land, or no metal. */
  readonly free: readonly Loop[];
}

function loopsByGroup(
  { arrangement: { edges, faces } }: EtchPlan,
  { face, loops }: PlannedRegion,
  groupOfFace: ReadonlyMap<number, number>,
): LoopsOfLand {
  const bordered = new Map<number, Set<Loop>>();
  const free = new Set<Loop>();
  itemAt(faces, face).borders.forEach((border, at) => {
    const loop = itemAt(loops, at);
    for (const { edge, forward } of border) {
      const { left, right } = itemAt(edges, edge);
      const group = groupOfFace.get(forward ? right : left);
      if (group === undefined) free.add(loop);
      else bordered.set(group, (bordered.get(group) ?? new Set()).add(loop));
    }
  });
  return { bordered, free: [...free] };
}

/** All outer loops, and those holes whose boxes meet a box; in order. */
function loopsNear(loops: readonly Loop[]): (box: Box) => Loop[] {
  const outer = loops.flatMap((loop, number) => (loopArea(loop) > 0 ? [number] : []));
  const index = indexBoxes(loops.map(boxOfSpans));
  return (box) => {
    const near = [...new Set([...outer, ...index.meeting(box)])].sort((a, b) => a - b);
    return near.map((number) => itemAt(loops, number));
  };
}

/** The stages that the clusters have, numbered as they follow each other. */
function stagesOf(
  stages: readonly Stage[],
  clusters: readonly OpenedCluster[],
  regions: readonly PlannedRegion[],
): Stage[] {
  const levels = new Set(clusters.flatMap((cluster) => cluster.stages.map(({ level }) => level)));
  return stages
    .filter(({ level }) => levels.has(level))
    .map(
      (stage, index): Stage => ({
        ...stage,
        number: index + 1,
        regions: regions.filter(({ level }) => level === stage.level).map(({ id }) => id),
        ...openedAt(clusters, stage.level),
      }),
    );
}
