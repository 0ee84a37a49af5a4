/** A taper of the job file in millimetres: its points in the drawing's unit, its values in the job's. */

import type { Point } from '#geometry/point.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { Taper } from './job.ts';
import { jobMillimetres } from './job-figures.ts';
import type { JobFile } from './job-file.ts';

export interface ResolveUnits {
  readonly job: LengthUnit;
  readonly drawing: LengthUnit;
}

type GivenTaper = NonNullable<JobFile['requirements'][number]['taper']>;

export function resolveTaper(taper: GivenTaper, units: ResolveUnits): Taper {
  const [fromValue, toValue] =
    'depthFrom' in taper ? [taper.depthFrom, taper.depthTo] : [taper.thicknessFrom, taper.thicknessTo];
  return {
    from: drawnPoint(taper.from, units.drawing),
    to: drawnPoint(taper.to, units.drawing),
    fromValue: jobMillimetres(fromValue, units.job),
    toValue: jobMillimetres(toValue, units.job),
  };
}

/** Millimetres of a point in drawing coordinates. */
export function drawnPoint([x, y]: readonly [number, number], unit: LengthUnit): Point {
  return { x: x * millimetresIn(unit), y: y * millimetresIn(unit) };
}
