/**
 * Metal that both faces would take where their etches meet, or one past the far face: it is there once, and counts once (M9.5). By
 * slices square to the thickness: at depth z below the near face what is gone from both sides is what is deeper than z from the
 * near face and deeper than T − z from the far one. mm³
 */

import { type BothFronts, deeperThan, meetingDepths } from '#front/both-fronts.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import { loopsArea } from '#geometry/span.ts';
import { SLICE_AGREEMENT } from '#geometry/tolerances.ts';
import { integrateDepth } from './integrate-depth.ts';

/** @param minute immersed; the end of the run when not given. Of a sheet without end what passes it counts as nothing. */
export function meetingVolume(fronts: BothFronts, minute?: number): number {
  const { near, far, thickness } = fronts;
  const meeting = meetingDepths(fronts, minute);
  if (meeting === undefined) return 0;
  const { from, to, floors } = meeting;
  const stops = [from, 0, thickness, ...floors, to]
    .filter((each) => each >= from && each <= to)
    .sort((a, b) => a - b);
  const area = (depth: number): number =>
    loopsArea(
      combineLoops('intersect', deeperThan(near, depth, minute), deeperThan(far, thickness - depth, minute)),
    );
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
  const agreement = { share: SLICE_AGREEMENT };
  const upper = integrateDepth(
    (depth) => area(from + middle - depth),
    { shallower: from, deeper: middle },
    agreement,
  );
  return upper + integrateDepth(area, { shallower: middle, deeper: to }, agreement);
}
