/**
 * What contours of one front share: which features can ever meet, clusters of them, and borders to clip with.
 * Two features can meet only if their boxes, grown by their reaches, overlap; clusters of such never feel each other, so
 * that cost grows with the number of clusters. What comes to one and the same span of the sheet's border is one cluster: along
 * it their areas are closed by that border, and a segment of it cannot be said to belong to one of them.
 */

import { type Feature, loopFeatures } from '#front/front-features.ts';
import { type FrontIndex, featureBox } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { growBox } from '#geometry/box.ts';
import { type DisjointSets, disjointSets } from '#geometry/disjoint-sets.ts';
import { type InsideIndex, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import type { Loop } from '#geometry/span.ts';
import type { OffsetCurve } from './offset-curve.ts';

export interface ContourKit {
  readonly index: FrontIndex;
  /** Features that each feature can meet. */
  readonly near: { readonly offsets: Int32Array; readonly items: Int32Array };
  /** Feature numbers of each cluster. */
  readonly clusters: readonly Int32Array[];
  /** Working space of one contour, empty between calls: of the features whose segments are asked for, and of those beside them. */
  readonly curves: (OffsetCurve | undefined)[];
  readonly curvesBeside: (OffsetCurve | undefined)[];
  /** What borders are made of, by their loops: it does not depend on the front. */
  readonly borders: Map<readonly Loop[], Border>;
}

type Border = Pick<ClipBorder, 'features' | 'inside'>;

/** A border that contours are cut off at: the sheet's, or a region's. */
export interface ClipBorder {
  readonly features: readonly Feature[];
  readonly inside: InsideIndex;
  /** By border feature: front features that can reach it. */
  readonly nearFeatures: readonly (readonly number[])[];
  /** The same the other way round. */
  readonly nearBorders: ReadonlyMap<number, readonly number[]>;
}

/** @param borders of another kit of the same openings */
export function makeContourKit(index: FrontIndex, borders: ContourKit['borders'] = new Map()): ContourKit {
  const { features } = index;
  const offsets = new Int32Array(features.length + 1);
  const items: number[] = [];
  const sets = disjointSets(features.length);
  features.forEach((feature, i) => {
    for (const other of near(index, feature, itemAt(index.reaches, feature.stage))) {
      items.push(other);
      sets.unite(i, other);
    }
    offsets[i + 1] = items.length;
  });
  for (const border of borderFeatures(index.front.sheet)) {
    const [first, ...others] = near(index, border, 0);
    for (const other of others) sets.unite(first ?? other, other);
  }
  return {
    index,
    near: { offsets, items: Int32Array.from(items) },
    clusters: gather(sets, features.length),
    curves: new Array(features.length).fill(undefined),
    curvesBeside: new Array(features.length).fill(undefined),
    borders,
  };
}

/** The border of loops, outer counter-clockwise, with the front's features within reach of it. */
export function makeClipBorder({ index, borders }: ContourKit, loops: readonly Loop[]): ClipBorder {
  const border = borders.get(loops) ?? { features: borderFeatures(loops), inside: makeInsideIndex(loops) };
  borders.set(loops, border);
  const { features } = border;
  const nearFeatures = features.map((feature) => near(index, feature, 0));
  const nearBorders = new Map<number, number[]>();
  nearFeatures.forEach((list, border) => {
    for (const member of list) {
      const borders = nearBorders.get(member);
      if (borders === undefined) nearBorders.set(member, [border]);
      else borders.push(border);
    }
  });
  return { ...border, nearFeatures, nearBorders };
}

function borderFeatures(loops: readonly Loop[]): Feature[] {
  return loopFeatures(loops, -1).filter(({ kind }) => kind !== 'corner');
}

/** The part of a border that a cluster can reach; undefined when it reaches none. */
export function clipNearCluster(clip: ClipBorder, cluster: Int32Array): ClipBorder | undefined {
  const wanted = new Set<number>();
  for (const member of cluster) for (const border of clip.nearBorders.get(member) ?? []) wanted.add(border);
  if (wanted.size === 0) return undefined;
  const members = new Set(cluster);
  const borders = [...wanted].sort((a, b) => a - b);
  const renumbered = new Map(borders.map((border, i) => [border, i]));
  const nearBorders = new Map<number, number[]>();
  for (const member of cluster) {
    const list = clip.nearBorders.get(member);
    if (list !== undefined)
      nearBorders.set(
        member,
        list.map((border) => renumbered.get(border) ?? 0),
      );
  }
  return {
    features: borders.map((border) => itemAt(clip.features, border)),
    inside: clip.inside,
    nearFeatures: borders.map((border) => itemAt(clip.nearFeatures, border).filter((i) => members.has(i))),
    nearBorders,
  };
}

function near(index: FrontIndex, feature: Feature, by: number): number[] {
  return index.near.meeting(growBox(featureBox(feature), by));
}

function gather(sets: DisjointSets, count: number): Int32Array[] {
  const byFirst = new Map<number, number[]>();
  for (let i = 0; i < count; i++) {
    const first = sets.find(i);
    const list = byFirst.get(first);
    if (list === undefined) byFirst.set(first, [i]);
    else list.push(i);
  }
  return [...byFirst.values()].map((list) => Int32Array.from(list));
}
