/**
 * A front with its spatial indices: everything that is asked of a front goes through one, made once and kept by the caller.
 * Cost of making: n log n in the number of border spans; about 0.1 s for 800 nested pockets.
 */
import Flatbush from 'flatbush';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan } from '#geometry/box.ts';
import { type InsideIndex, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import type { Loop, Span } from '#geometry/span.ts';
import { type Front, farthestReaches } from './front.ts';
import { type Feature, loopFeatures } from './front-features.ts';

export interface FrontIndex {
  readonly front: Front;
  /** Every source that can show in the front, by stage. */
  readonly features: readonly Feature[];
  /** By stage index: how far sideways it ever reaches, mm. */
  readonly reaches: readonly number[];
  /** By stage index. */
  readonly openings: readonly InsideIndex[];
  /** Boxes of the features grown by their stage's reach, in the same order. Undefined when there is no feature. */
  readonly tree: Flatbush | undefined;
  /** Undefined for a sheet without end. */
  readonly sheet: InsideIndex | undefined;
}

export function indexFront(front: Front): FrontIndex {
  const reaches = farthestReaches(front);
  const covered = new SpanSet();
  const features: Feature[] = [];
  front.stages.forEach(({ opening, base }, stage) => {
    // A border that a deeper stage already has hides behind that stage's front for good, since it reaches farther.
    const outreached = front.stages
      .slice(0, stage)
      .every((deeper, i) => deeper.base === base && itemAt(reaches, i) >= itemAt(reaches, stage));
    // One by one: a stage of thousands of pockets has more than a call takes as arguments.
    for (const feature of loopFeatures(
      opening,
      stage,
      outreached ? (span) => covered.has(span) : undefined,
    )) {
      features.push(feature);
    }
    covered.addAll(opening);
  });
  return {
    front,
    features,
    reaches,
    openings: front.stages.map(({ opening }) => makeInsideIndex(opening)),
    tree: treeOf(features, reaches),
    sheet: front.sheet.length === 0 ? undefined : makeInsideIndex(front.sheet),
  };
}

function treeOf(features: readonly Feature[], reaches: readonly number[]): Flatbush | undefined {
  if (features.length === 0) return undefined;
  const tree = new Flatbush(features.length);
  for (const feature of features) {
    const by = itemAt(reaches, feature.stage);
    const box = featureBox(feature);
    tree.add(box.minX - by, box.minY - by, box.maxX + by, box.maxY + by);
  }
  tree.finish();
  return tree;
}

export function featureBox(feature: Feature): { minX: number; minY: number; maxX: number; maxY: number } {
  const { kind, ax, ay, bx, by, cx, cy, radius, sweep } = feature;
  if (kind !== 'arc') {
    return { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
  }
  const start = { x: ax, y: ay };
  const end = { x: bx, y: by };
  return boxOfSpan({ kind, start, end, center: { x: cx, y: cy }, radius, sweep });
}

/** Spans by their ends and bend, to a tenth of a nanometre and never across a rounding step: a miss costs time only. */
class SpanSet {
  readonly #keys = new Set<string>();

  has(span: Span): boolean {
    return this.#keys.has(keyOf(span));
  }

  addAll(loops: readonly Loop[]): void {
    for (const loop of loops) for (const span of loop) this.#keys.add(keyOf(span));
  }
}

function keyOf({ start, end, ...rest }: Span): string {
  const bend = rest.kind === 'arc' ? rest.sweep : 0;
  return [start.x, start.y, end.x, end.y, bend].map((value) => Math.round(value * 1e7)).join(' ');
}
