/** The sheet's least and greatest nominal thickness over a region: exact, since a taper changes one way only. */

import { extentAlong } from '#geometry/loops/cut-across.ts';
import { scale, subtract } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import type { Taper } from '#job/taper.ts';
import { taperedAt } from '#job/tapered-at.ts';
import { hypot } from '#maths/hypot.ts';

export interface ThicknessRange {
  readonly least: number;
  readonly most: number;
}

export function thicknessOver(thickness: number | Taper, loops: readonly Loop[]): ThicknessRange {
  if (typeof thickness === 'number') return { least: thickness, most: thickness };
  const way = subtract(thickness.to, thickness.from);
  const length = hypot(way.x, way.y);
  if (length === 0) return { least: thickness.fromValue, most: thickness.fromValue };
  const axis = scale(way, 1 / length);
  const { from, to } = extentAlong(loops, axis);
  // Along the axis through `from`, so that the place is measured as the taper measures it.
  const base = thickness.from.x * axis.x + thickness.from.y * axis.y;
  const at = (distance: number) =>
    taperedAt([thickness], {
      x: thickness.from.x + axis.x * (distance - base),
      y: thickness.from.y + axis.y * (distance - base),
    });
  const ends = [at(from), at(to)];
  return { least: Math.min(...ends), most: Math.max(...ends) };
}
