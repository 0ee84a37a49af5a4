/**
 * A front with its spatial indices: everything that is asked of a front goes through one, made once and kept by the caller.
 * Cost of making: n log n in the number of border spans; about 0.1 s for 800 nested pockets.
 */
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpan, growBox } from '#geometry/box.ts';
import { type BoxIndex, indexBoxes } from '#geometry/box-index.ts';
import { type InsideIndex, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { areSame } from '#geometry/same-items.ts';
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
  /** Boxes of the features grown by their stage's reach, in the same order. */
  readonly near: BoxIndex;
  /** Undefined for a sheet without end. */
  readonly sheet: InsideIndex | undefined;
}

export function indexFront(front: Front): FrontIndex {
  const openings = front.stages.map(({ opening }) => makeInsideIndex(opening));
  const sheet = front.sheet.length === 0 ? undefined : makeInsideIndex(front.sheet);
  const reaches = farthestReaches(front);
  return indexed({ front, openings, sheet, features: featuresOf(front, reaches), reaches });
}

/** The same openings etched with another factor. */
export function withFactor(index: FrontIndex, etchFactor: Front['etchFactor']): FrontIndex {
  const front = { ...index.front, etchFactor };
  const reaches = farthestReaches(front);
  const isAlike = areSame(outreached(front, reaches), outreached(index.front, index.reaches));
  const features = isAlike ? index.features : featuresOf(front, reaches);
  return indexed({ ...index, front, features, reaches });
}

function indexed(of: Omit<FrontIndex, 'near'>): FrontIndex {
  const { features, reaches } = of;
  return {
    ...of,
    near: indexBoxes(features.map((feature) => growBox(featureBox(feature), itemAt(reaches, feature.stage)))),
  };
}

function featuresOf(front: Front, reaches: readonly number[]): Feature[] {
  const hidden = outreached(front, reaches);
  const covered = new SpanSet();
  return front.stages.flatMap(({ opening }, stage) => {
    const skip = hidden[stage] === true ? (span: Span) => covered.has(span) : undefined;
    const features = loopFeatures(opening, stage, skip);
    if (stage < front.stages.length - 1) covered.addAll(opening);
    return features;
  });
}

/** By stage: whether a border that a deeper stage already has hides behind that stage's front for good, since it reaches farther. */
function outreached({ stages }: Front, reaches: readonly number[]): boolean[] {
  return stages.map(
    ({ base }, stage) =>
      stage > 0 &&
      stages
        .slice(0, stage)
        .every((deeper, i) => deeper.base === base && itemAt(reaches, i) >= itemAt(reaches, stage)),
  );
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
  readonly #byStart = new Map<number, Rounded[]>();

  has(span: Span): boolean {
    const rounded = roundedOf(span);
    return this.#byStart.get(rounded[0])?.some((other) => areSame(other, rounded)) === true;
  }

  addAll(loops: readonly Loop[]): void {
    for (const loop of loops) {
      for (const span of loop) {
        const rounded = roundedOf(span);
        const others = this.#byStart.get(rounded[0]);
        if (others === undefined) this.#byStart.set(rounded[0], [rounded]);
        else others.push(rounded);
      }
    }
  }
}

type Rounded = readonly [start: number, y: number, endX: number, endY: number, bend: number];

/** The first figure is of both coordinates of the start, so that few spans share one. */
function roundedOf({ start, end, ...rest }: Span): Rounded {
  const bend = rest.kind === 'arc' ? rest.sweep : 0;
  const y = inSteps(start.y);
  return [inSteps(start.x) * 31 + y, y, inSteps(end.x), inSteps(end.y), inSteps(bend)];
}

function inSteps(value: number): number {
  return Math.round(value * 1e7) + 0;
}
