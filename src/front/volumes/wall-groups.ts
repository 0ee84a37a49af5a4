/**
 * The features of a cluster, grouped by the levels that each can feel. A wall between two floors shows from the deeper to the
 * shallower, and bends only at the levels of what is near: integrated by itself over those few, the cost of a cluster
 * grows with its walls and no longer with walls times levels.
 */

import type { ContourKit } from '#front/contours/contour-kit.ts';
import { type Moment, reachAt } from '#front/front.ts';
import { pointBeside } from '#front/front-features.ts';
import { type FrontIndex, featureBox } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import { JUST_BESIDE, TOUCHING } from '#geometry/tolerances.ts';
import type { DepthRange } from './integrate-depth.ts';

export interface WallGroup {
  /** Features whose contours these are. */
  readonly members: Int32Array;
  /** Features of others that can cut or hide them. */
  readonly beside: Int32Array;
  /** Stages whose floors the walls can feel. */
  readonly stages: readonly number[];
  /** Stages whose openings hold all of the walls, and all that they reach: what is above their floors is gone. */
  readonly covers: readonly number[];
}

/** By feature: the narrowest later opening that the border runs inside, as a stage index; the number of stages where there is none. */
export function neighborStages(index: FrontIndex): Int32Array {
  return Int32Array.from(index.features, (feature) => {
    const [x, y] = pointBeside(feature, JUST_BESIDE);
    // Openings are nested, so that the first to hold a point is found by halving.
    let low = feature.stage + 1;
    let high = index.openings.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (isInside(itemAt(index.openings, middle), x, y)) high = middle;
      else low = middle + 1;
    }
    return low;
  });
}

/** Divides a cluster; `neighbors` as `neighborStages` gives them. */
export function wallGroups(kit: ContourKit, cluster: Int32Array, neighbors: Int32Array): WallGroup[] {
  const { near, index } = kit;
  const groups = new Map<string, { members: number[]; stages: number[]; covers: number[] }>();
  for (const member of cluster) {
    const around = [member, ...near.items.subarray(near.offsets[member], near.offsets[member + 1])];
    const covers = coversOf(index, around, neighbors);
    const felt = new Set(around.map((i) => itemAt(index.features, i).stage));
    // What lies beyond a border may have borders of its own only in common with deeper stages.
    for (const i of around) felt.add(itemAt(neighbors, i));
    felt.delete(index.openings.length);
    for (const cover of covers) felt.delete(cover);
    const stages = [...felt].sort((a, b) => a - b);
    const key = `${stages.join(' ')}|${covers[0] ?? ''}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { members: [member], stages, covers });
    else group.members.push(member);
  }
  return [...groups.values()].map(({ members, ...felt }) => {
    const own = new Set(members);
    const beside = new Set<number>();
    for (const member of members) {
      const end = itemAt(near.offsets, member + 1);
      for (let k = itemAt(near.offsets, member); k < end; k++) {
        const other = itemAt(near.items, k);
        if (!own.has(other)) beside.add(other);
      }
    }
    return { members: Int32Array.from(members), beside: Int32Array.from(beside), ...felt };
  });
}

/** Of the features beside a group those that can meet one of its walls within a range of depths at a moment. */
export function besideIn(
  { features }: FrontIndex,
  { members, beside }: WallGroup,
  { moment, range }: { readonly moment: Moment; readonly range: DepthRange },
): Int32Array {
  const farthest = moment.bases.map((base, stage) => reachAt(moment, stage, Math.max(base, range.shallower)));
  const shown = members.filter((member) => itemAt(farthest, itemAt(features, member).stage) >= 0);
  return beside.filter((other) => {
    const source = itemAt(features, other);
    const reach = itemAt(farthest, source.stage);
    if (reach < 0) return false;
    const box = featureBox(source);
    return shown.some((member) => {
      const feature = itemAt(features, member);
      const both = reach + itemAt(farthest, feature.stage) + TOUCHING;
      const own = featureBox(feature);
      return (
        box.minX - own.maxX <= both &&
        own.minX - box.maxX <= both &&
        box.minY - own.maxY <= both &&
        own.minY - box.maxY <= both
      );
    });
  });
}

/** Openings with no border among the features given, which all lie inside: a shared border belongs to the deepest stage that has it. */
function coversOf(
  { features, openings }: FrontIndex,
  around: readonly number[],
  neighbors: Int32Array,
): number[] {
  const byStage = new Map<number, number>();
  for (const i of around) {
    const { stage } = itemAt(features, i);
    byStage.set(stage, Math.max(byStage.get(stage) ?? 0, itemAt(neighbors, i)));
  }
  const covers: number[] = [];
  let widest = 0;
  for (let stage = 0; stage < openings.length; stage++) {
    const neighbor = byStage.get(stage);
    if (neighbor === undefined && widest > 0 && widest <= stage) covers.push(stage);
    widest = Math.max(widest, neighbor ?? 0);
  }
  return covers;
}
