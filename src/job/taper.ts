/** A length that changes evenly from one point to another. In the file its points are in the drawing's unit, its values in the job's. */
import * as z from 'zod/mini';
import type { Point } from '#geometry/point.ts';
import type { ResolveUnits } from './fields/field.ts';
import { notNegative, point, positive } from './fields/kinds.ts';
import { drawnPoint, jobMillimetres } from './job-figures.ts';

/** mm, held beyond both points. */
export interface Taper {
  readonly from: Point;
  readonly to: Point;
  readonly fromValue: number;
  readonly toValue: number;
}

const ends = { from: point, to: point };
export const depthTaper = z.strictObject({ ...ends, depthFrom: notNegative, depthTo: notNegative });
export const thicknessTaper = z.strictObject({ ...ends, thicknessFrom: positive, thicknessTo: positive });

export function resolveTaper(
  taper: z.infer<typeof depthTaper> | z.infer<typeof thicknessTaper>,
  units: ResolveUnits,
): Taper {
  const [fromValue, toValue] =
    'depthFrom' in taper ? [taper.depthFrom, taper.depthTo] : [taper.thicknessFrom, taper.thicknessTo];
  return {
    from: drawnPoint(taper.from, units.drawing),
    to: drawnPoint(taper.to, units.drawing),
    fromValue: jobMillimetres(fromValue, units.job),
    toValue: jobMillimetres(toValue, units.job),
  };
}

/** Its points are one: it has no direction. */
export function isPointless({ from, to }: Taper): boolean {
  return from.x === to.x && from.y === to.y;
}
