/** Volume of the sheet as it comes, mm³: its area times its thickness; of a tapered sheet the integral over its border, exact (M5.2). */

import { firstMomentBeyond } from '#geometry/loops/first-moment-beyond.ts';
import { dot, scale, subtract } from '#geometry/point.ts';
import { type Loop, loopsArea } from '#geometry/span.ts';
import type { Taper } from '#job/taper.ts';
import { hypot } from '#maths/hypot.ts';

/** Undefined for a sheet without a border. */
export function sheetVolume(sheet: readonly Loop[], thickness: number | Taper): number | undefined {
  const area = loopsArea(sheet);
  if (area <= 0) return undefined;
  if (typeof thickness === 'number') return area * thickness;
  const { from, to, fromValue, toValue } = thickness;
  const way = subtract(to, from);
  const length = hypot(way.x, way.y);
  if (length === 0) return area * fromValue;
  const direction = scale(way, 1 / length);
  const start = dot(from, direction);
  // Even between its points and held beyond both: the slope from the first on, less the slope from the second on.
  const beyond = (place: number) => firstMomentBeyond(sheet, { direction, from: place });
  return area * fromValue + ((toValue - fromValue) / length) * (beyond(start) - beyond(start + length));
}
