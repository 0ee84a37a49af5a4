/**
 * What is left of the sheet once both faces are etched, seen from above: the sheet less the holes (M9.5). A place is through where
 * its depths from both faces come to the thickness; that is, where it lies deeper than z from the near face and deeper than t − z from the
 * far one for some z. The union over z is taken of slices, closer together at floors, where contours move fastest; the one at mid-thickness,
 * where a cut from both faces is narrowest, is among them. Between slices a hole may be reported smaller than it is by what contours bend there.
 */

import { combineLoops } from '#geometry/grow/grow-loops.ts';
import type { Loop } from '#geometry/span.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import { type BothFronts, deeperThan, meetingDepths } from './both-fronts.ts';

/** Slices between two depths at which a floor lies. */
const SLICES = 8;

/** Holes through the sheet, outer loops counter-clockwise; at the end of the run, or at a minute. */
export function holesThrough(fronts: BothFronts, minute?: number): Loop[] {
  const { near, far, thickness } = fronts;
  const meeting = meetingDepths(fronts, minute);
  if (meeting === undefined) return [];
  const { from, to, floors } = meeting;
  let holes: Loop[] = [];
  for (const depth of slicesBetween([from, to, ...floors], thickness)) {
    const above = deeperThan(near, depth, minute);
    const below = deeperThan(far, thickness - depth, minute);
    if (above.length === 0 || below.length === 0) continue;
    const slice = combineLoops('intersect', above, below);
    holes = holes.length === 0 ? slice : combineLoops('unite', holes, slice);
  }
  return holes;
}

/** Outer loops first are not promised; empty where nothing is left. */
export function metalLeft(fronts: BothFronts, minute?: number): readonly Loop[] {
  const { sheet } = fronts.near.index.front;
  const holes = holesThrough(fronts, minute);
  return holes.length === 0 ? sheet : combineLoops('subtract', sheet, holes);
}

/** The middle first: where walls are alike it holds all others. */
function slicesBetween(stops: readonly number[], thickness: number): number[] {
  const [from, to] = [Math.min(...stops.slice(0, 2)), Math.max(...stops.slice(0, 2))];
  const within = [...new Set([...stops, -SAME_SUM, thickness + SAME_SUM])]
    .filter((each) => each >= from && each <= to)
    .sort((a, b) => a - b);
  const slices = [thickness / 2, -SAME_SUM, thickness + SAME_SUM].filter((each) => each > from && each < to);
  within.slice(1).forEach((stop, index) => {
    const start = within[index] ?? stop;
    for (let slice = 1; slice < SLICES; slice++) {
      const share = slice / SLICES;
      slices.push(start + (stop - start) * share * share * (3 - 2 * share));
    }
  });
  return slices;
}
