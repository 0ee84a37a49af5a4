/** Depth, thickness left, stage and depth asked at single places of the etched part, at a minute. */
import { depthsAt } from '#front/depth-at.ts';
import { itemAt } from '#geometry/assert.ts';
import { depthAskedAt, type EtchedPart, thicknessLeft } from './etched-part.ts';

export interface DepthRequest {
  /** x, y, x, y, … in mm in the drawing's frame. */
  readonly points: Float64Array;
  /** Immersed; the end of the run when not given. */
  readonly minute?: number | undefined;
}

export interface PlaceDepth {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  /** Undefined beside the sheet. */
  readonly target: number | undefined;
  readonly thickness: number;
  /** Number of the stage whose front stands here; 0 for untouched. */
  readonly stage: number;
}

export function depthsOf(part: EtchedPart, { points, minute }: DepthRequest): PlaceDepth[] {
  const index = part.index();
  const regions = part.regions();
  const { depths, stages } = depthsAt(index, points, minute);
  return Array.from(depths, (depth, i) => {
    const x = itemAt(points, 2 * i);
    const y = itemAt(points, 2 * i + 1);
    const target = depthAskedAt(part, regions.at({ x, y }), { x, y });
    const thickness = target === undefined ? 0 : thicknessLeft(part, depth, { x, y });
    return { x, y, depth, target, thickness, stage: itemAt(stages, i) };
  });
}
