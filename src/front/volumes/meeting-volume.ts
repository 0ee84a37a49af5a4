/**
 * Metal that both faces would take where their etches meet, or one past the far face: it is there once, and counts once (M9.5). By
 * slices square to the thickness: at depth z below the near face what is gone from both sides is what is deeper than z from the
 * near face and deeper than T − z from the far one. mm³
 */

import type { ContourKit } from '#front/contours/contour-kit.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import { momentAt } from '#front/front.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import { type Loop, loopsArea } from '#geometry/span.ts';
import { integrateDepth } from './integrate-depth.ts';

/** Of the slices' sum; the contours themselves come from a grid of 0.1 µm. */
const AGREEMENT = 1e-4;

/** @param minute immersed; the end of the run when not given. Of a sheet without end what passes it counts as nothing. */
export function meetingVolume(
  {
    near,
    far,
    thickness,
  }: { readonly near: ContourKit; readonly far: ContourKit; readonly thickness: number },
  minute?: number,
): number {
  const floorsOf = ({ index }: ContourKit) => momentAt(index.front, minute).floors.filter((each) => each > 0);
  const nearFloors = floorsOf(near);
  const farFloors = floorsOf(far);
  const from = thickness - Math.max(0, ...farFloors);
  const to = Math.max(0, ...nearFloors);
  if (from >= to) return 0;
  const stops = [from, 0, thickness, ...nearFloors, ...farFloors.map((floor) => thickness - floor), to]
    .filter((each) => each >= from && each <= to)
    .sort((a, b) => a - b);
  const { sheet } = near.index.front;
  const deeper = (kit: ContourKit, depth: number): readonly Loop[] =>
    depth < 0 ? sheet : contourLoops(kit, { depth, minute }).loops;
  const area = (depth: number): number =>
    loopsArea(combineLoops('intersect', deeper(near, depth), deeper(far, thickness - depth)));
  let volume = 0;
  stops.slice(1).forEach((stop, index) => {
    const start = stops[index] ?? stop;
    if (stop > start) volume += sliceSum(area, start, stop);
  });
  return volume;
}

/** Areas change like a root at the floors on both sides: each half is integrated towards its own. */
function sliceSum(area: (depth: number) => number, from: number, to: number): number {
  const middle = (from + to) / 2;
  const agreement = { share: AGREEMENT };
  const upper = integrateDepth(
    (depth) => area(from + middle - depth),
    { shallower: from, deeper: middle },
    agreement,
  );
  return upper + integrateDepth(area, { shallower: middle, deeper: to }, agreement);
}
