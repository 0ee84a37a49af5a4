/**
 * inspection-points.csv: where to gauge the finished part and what must be read there. It has the form of a file of readings
 * (docs/files.md), with the drawing's figures in columns that a reader of readings passes over: with the thickness filled in,
 * it is one. So lengths are in the job's unit and points in drawing coordinates. RFC 4180 with line feeds.
 */
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';
import type { InspectionPoint } from './inspection-points.ts';

export interface InspectionCsvInput {
  readonly points: readonly InspectionPoint[];
  /** The plan's SHA-256. */
  readonly planHash: string;
  readonly units: { readonly job: LengthUnit; readonly drawing: LengthUnit };
  /** Number of the run's last stage: the part is gauged after it. */
  readonly lastStage: number;
}

const COLUMNS = ['point', 'stage', 'region', 'x', 'y', 'nominal', 'plus', 'minus', 'thickness', 'note'];

export function inspectionCsv({ points, planHash, units, lastStage }: InspectionCsvInput): string {
  const length = (value: number) => String(toMillionth(value / millimetresIn(units.job)));
  const place = (value: number) => String(toMillionth(value / millimetresIn(units.drawing)));
  const rows = points.map(({ id, region, at, depth, thickness, face }) => [
    id,
    String(lastStage),
    region,
    place(at.x),
    place(at.y),
    ...[thickness.nominal, thickness.plus, thickness.minus].map(length),
    '',
    `${face === 'far' ? 'far face, ' : ''}depth ${length(depth.nominal)} +${length(depth.plus)} -${length(depth.minus)}`,
  ]);
  return [
    `# inspection points of plan ${planHash}`,
    `# lengths in ${units.job}, points in ${units.drawing}; nominal is the thickness to be read, for a sheet of nominal thickness`,
    ...[COLUMNS, ...rows].map((row) => row.join(',')),
    '',
  ].join('\n');
}
