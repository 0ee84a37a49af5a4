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
  /** Of a part that is etched on both faces: the same of the far one. */
  readonly far?: Pick<PlaceDepth, 'depth' | 'target' | 'stage'>;
}

export function depthsOf(part: EtchedPart, { points, minute }: DepthRequest): PlaceDepth[] {
  const index = part.index();
  const regions = part.regions();
  const { depths, stages } = depthsAt(index, points, minute);
  const far = part.far === undefined ? undefined : depthsOf(part.far, { points, minute });
  return Array.from(depths, (depth, i) => {
    const x = itemAt(points, 2 * i);
    const y = itemAt(points, 2 * i + 1);
    const target = depthAskedAt(part, regions.at({ x, y }), { x, y });
    const other = far?.[i];
    const left = thicknessLeft(part, { near: depth, far: other?.depth }, { x, y });
    const thickness = target === undefined ? 0 : left;
    const here = { x, y, depth, target, thickness, stage: itemAt(stages, i) };
    if (other === undefined) return here;
    return { ...here, far: { depth: other.depth, target: other.target, stage: other.stage } };
  });
}
