/**
 * How much larger than lengths the relief draws heights: so that the least step is seen, and yet no wall hides the deepest floors.
 * Pixels and millimetres; pure.
 */

import { fitPoints, type ViewPose, type ViewSize } from '#app/scene/view-pose.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { ROUNDING } from '#geometry/tolerances.ts';

export interface HeightAsk {
  /** Of the levels, mm, any order. */
  readonly levels: readonly number[];
  readonly thickness: number;
  /** Round what is shown, mm. */
  readonly points: readonly Point[];
  readonly size: ViewSize;
  readonly look: Pick<ViewPose, 'azimuth' | 'tilt'>;
  /** Of the widest floor on the deepest level. */
  readonly deepest: Box | undefined;
  /** The cut face wears the stages' numbers, which need a band of their height. */
  readonly hasNumbers: boolean;
}

/** px of the least step: preferred, and what a number needs. */
const STEP = { preferred: 12, number: 10.2 };
/** Share of the deepest floor that its wall may hide. */
const MOST_HIDDEN = 0.7;
/** The solid may stand no taller on screen than this share of the view. */
const TALLEST = 0.3;

export function fitHeight(ask: HeightAsk): number {
  const { levels, thickness, points, size, look, deepest, hasNumbers } = ask;
  const step = leastStep(levels);
  if (step === undefined || thickness <= 0) return 1;
  const [up, flat] = [Math.sin(look.tilt), Math.cos(look.tilt)];
  /** px of the whole thickness that make the step so many px, and the factor that makes them. */
  const factorFor = (stepPixels: number) => {
    const height = Math.min((stepPixels * thickness) / step, TALLEST * size.height);
    const { pixelsPerMm } = fitPoints(points, { ...size, height: size.height - height }, look);
    return height / (thickness * pixelsPerMm * up);
  };
  const room = deepest === undefined ? Number.POSITIVE_INFINITY : deepest.maxY - deepest.minY;
  const seen = (MOST_HIDDEN * room * flat) / (Math.max(...levels) * up);
  const least = hasNumbers ? factorFor(STEP.number) : 1;
  return Math.max(1, Number(Math.min(factorFor(STEP.preferred), Math.max(seen, least)).toPrecision(2)));
}

/** From the surface down, level by level. */
export function leastStep(levels: readonly number[]): number | undefined {
  const sorted = [0, ...levels].sort((a, b) => a - b);
  const steps = sorted.slice(1).map((level, index) => level - (sorted[index] ?? 0));
  const real = steps.filter((step) => step > ROUNDING);
  return real.length === 0 ? undefined : Math.min(...real);
}
