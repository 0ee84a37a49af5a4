/**
 * Depth of the front at a point and minute: the closed form of M2, exact distances to lines and arcs, nothing sampled.
 * Cost: a search of the index and a few distances; about a microsecond and a half a point.
 */
import { itemAt } from '#geometry/assert.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import type { Point } from '#geometry/point.ts';
import { type Moment, momentAt } from './front.ts';
import { squaredDistance } from './front-features.ts';
import type { FrontIndex } from './front-index.ts';

export interface DepthHere {
  /** mm */
  readonly depth: number;
  /** Number of the stage whose opening the etch came from that stands deepest here; 0 where the surface is untouched. */
  readonly stage: number;
}

/** Depth and stage at a point; at the end of the run unless a minute is given. Outside the sheet there is no metal: depth 0. */
export function depthAt(index: FrontIndex, point: Point, minute?: number): DepthHere {
  const { depths, stages } = depthsAt(index, Float64Array.of(point.x, point.y), minute);
  return { depth: itemAt(depths, 0), stage: itemAt(stages, 0) };
}

/** The same for many points, given as x, y, x, y, …. */
export function depthsAt(
  index: FrontIndex,
  points: Float64Array,
  minute?: number,
): { depths: Float64Array; stages: Uint8Array } {
  const count = points.length / 2;
  const depths = new Float64Array(count);
  const stages = new Uint8Array(count);
  const probe = makeProbe(index, momentAt(index.front, minute));
  for (let i = 0; i < count; i++) {
    const x = itemAt(points, 2 * i);
    const y = itemAt(points, 2 * i + 1);
    if (index.sheet !== undefined && !isInside(index.sheet, x, y)) continue;
    depths[i] = probe.measure(x, y);
    stages[i] = probe.stage();
  }
  return { depths, stages };
}

export interface Probe {
  /** Depth at a place. */
  readonly measure: (x: number, y: number) => number;
  /** Stage number of the last place measured. */
  readonly stage: () => number;
  /** Feature the front came from at the last place measured; -1 on a floor or an untouched surface. */
  readonly feature: () => number;
}

/** A depth gauge for one moment: it remembers nothing but its last reading, and knows no edge of the sheet. */
export function makeProbe(index: FrontIndex, moment: Moment): Probe {
  const { features, openings, near } = index;
  const { bases } = moment;
  const squaredCuts = moment.cuts.map((cut) => cut * cut);
  const slants = moment.factors.map((factor) => 1 / (factor * factor));
  const numbers = index.front.stages.map(({ number }) => number);
  let px = 0;
  let py = 0;
  // Depth is `base` + √`best`. Whatever is cut from a deeper base is deeper: bands of depth do not overlap.
  let base = 0;
  let best = 0;
  let stage = -1;
  let feature = -1;
  const consider = (i: number): void => {
    const source = features[i];
    if (source === undefined || source.kind === 'corner') return;
    const squaredCut = squaredCuts[source.stage] as number;
    const from = bases[source.stage] as number;
    const least = from > base ? 0 : best;
    if (from < base || squaredCut <= least) return;
    const squaredDepth = squaredCut - squaredDistance(source, px, py) * (slants[source.stage] as number);
    if (squaredDepth > least) {
      base = from;
      best = squaredDepth;
      stage = source.stage;
      feature = i;
    }
  };
  const measure = (x: number, y: number): number => {
    base = 0;
    best = 0;
    stage = -1;
    feature = -1;
    px = x;
    py = y;
    for (let i = 0; i < openings.length; i++) {
      if ((squaredCuts[i] as number) === 0) continue;
      if (isInside(itemAt(openings, i), x, y)) {
        base = bases[i] as number;
        best = squaredCuts[i] as number;
        stage = i;
        break;
      }
    }
    // Deeper than a floor that the point lies on can only be what a deeper stage left: nothing is before the first.
    if (stage !== 0) near.around(x, y, consider);
    return base + Math.sqrt(best);
  };
  return { measure, stage: () => (stage < 0 ? 0 : itemAt(numbers, stage)), feature: () => feature };
}
