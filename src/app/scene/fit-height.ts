/**
 * How much larger than lengths the relief draws heights: so that the least step is seen, and yet no wall hides the deepest floors.
 * Pixels and millimetres; pure.
 */
import type { Box } from '#geometry/box.ts';
import { fitPose, type ViewPose, type ViewSize } from './view-pose.ts';

export interface HeightAsk {
  /** Of the levels, mm, any order. */
  readonly levels: readonly number[];
  readonly thickness: number;
  readonly box: Box;
  readonly size: ViewSize;
  readonly look: Pick<ViewPose, 'azimuth' | 'tilt'>;
  /** Of the widest floor on the deepest level. */
  readonly deepest: Box | undefined;
  /** The cut face wears the stages' numbers, which need a band of their height. */
  readonly hasNumbers: boolean;
}

/** px of the least step: wished for, and what a number needs. */
const STEP = { wished: 12, number: 10.2 };
/** Share of the deepest floor that its wall may hide. */
const MOST_HIDDEN = 0.7;
/** The solid may stand no taller on screen than this share of the view. */
const TALLEST = 0.45;

export function fitHeight(ask: HeightAsk): number {
  const { levels, thickness, box, size, look, deepest, hasNumbers } = ask;
  const step = leastStep(levels);
  if (step === undefined || thickness <= 0) return 1;
  const [up, flat] = [Math.sin(look.tilt), Math.cos(look.tilt)];
  let factor = 1;
  // A taller solid is seen from farther off, so that it takes a larger factor: a few rounds settle it.
  for (let round = 0; round < 6; round++) {
    const { pixelsPerMm } = fitPose(box, size, { ...look, height: thickness * factor });
    const perPixel = 1 / (step * pixelsPerMm * up);
    const deep = Math.max(...levels);
    const room = deepest === undefined ? Infinity : deepest.maxY - deepest.minY;
    const seen = (MOST_HIDDEN * room * flat) / (deep * up);
    const least = hasNumbers ? STEP.number * perPixel : 0;
    const tallest = (TALLEST * size.height) / (thickness * pixelsPerMm * up);
    factor = Math.min(STEP.wished * perPixel, Math.max(seen, least), Math.max(1, tallest));
  }
  return Math.max(1, Number(factor.toPrecision(2)));
}

/** From the surface down, level by level. */
export function leastStep(levels: readonly number[]): number | undefined {
  const sorted = [0, ...levels].sort((a, b) => a - b);
  const steps = sorted.slice(1).map((level, index) => level - (sorted[index] ?? 0));
  const real = steps.filter((step) => step > 1e-6);
  return real.length === 0 ? undefined : Math.min(...real);
}
