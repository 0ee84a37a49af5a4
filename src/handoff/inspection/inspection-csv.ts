/**
 * inspection-points.csv: what the finished part must measure, and where. It has the form of a file of readings (docs/files.md), with the
 * drawing's figures in columns that a reader of readings passes over: with the thickness filled in, as far as it is, it is one. Edges, lands
 * and fillets stand in the same columns; a reader of readings passes their rows over. Lengths are in the job's unit and points in drawing
 * coordinates; least and most are rounded inward. RFC 4180 with line feeds.
 */

import type { InspectionItem } from '#handoff/inspection/inspection-items.ts';
import { paperFigures } from '#handoff/paper-figures.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';
import type { InspectionPoint } from './inspection-points.ts';

export interface InspectionCsvInput {
  readonly points: readonly InspectionPoint[];
  readonly items: readonly InspectionItem[];
  /** The part is etched on both faces: rows say which is theirs. */
  readonly hasFarFace: boolean;
  /** The plan's SHA-256. */
  readonly planHash: string;
  readonly units: { readonly job: LengthUnit; readonly drawing: LengthUnit };
  /** Number of the run's last stage: the part is gauged after it. */
  readonly lastStage: number;
}

const COLUMNS = [
  'point',
  'kind',
  'stage',
  'region',
  'x',
  'y',
  'nominal',
  'plus',
  'minus',
  'least',
  'most',
  'thickness',
  'read',
  'note',
];

const FACES =
  '# x and y are those of the near face, as seen through the part; left and right in notes are as seen from the face of the row, and D1 is one edge for both';

export function inspectionCsv(input: InspectionCsvInput): string {
  const { points, items, hasFarFace, planHash, units, lastStage } = input;
  const length = (value: number) => String(toMillionth(value / millimetresIn(units.job)));
  const place = (value: number) => String(toMillionth(value / millimetresIn(units.drawing)));
  const figures = paperFigures('job', units.job === 'in' ? 'in' : 'mm');
  const off = (value: number) => String(Number(figures.tolerances(value)[0]));
  const limits = ({ nominal, plus, minus }: InspectionPoint['thickness']) => [
    length(nominal),
    off(plus),
    off(minus),
    figures.length(nominal - minus, { tolerance: 0.01, round: 'up' }),
    figures.length(nominal + plus, { tolerance: 0.01, round: 'down' }),
  ];
  // `in` alone would read as the preposition.
  const named = (unit: LengthUnit) => (unit === 'in' ? 'inches' : unit);
  const faced = (face: 'far' | undefined) => (hasFarFace ? [face ?? 'near'] : []);
  const rows = points.map(({ id, region, at, depth, thickness, face, isToleranceUsual }) => [
    id,
    'thickness',
    String(lastStage),
    ...faced(face),
    region,
    place(at.x),
    place(at.y),
    ...limits(thickness),
    '',
    '',
    `depth ${length(depth.nominal)} +${off(depth.plus)} -${off(depth.minus)}${isToleranceUsual === true ? '; usual tolerance, the job gives none' : ''}`,
  ]);
  const others = items.map(({ kind, what, region, face, nominal, tolerance, to }, index) => [
    `E${String(index + 1).padStart(3, '0')}`,
    kind,
    String(lastStage),
    ...faced(face),
    region,
    place(to.x),
    place(to.y),
    ...limits({ nominal, plus: tolerance, minus: tolerance }),
    '',
    '',
    what,
  ]);
  return [
    `# inspection points of plan ${planHash}`,
    `# lengths in ${named(units.job)}, points in ${named(units.drawing)}; nominal is the thickness to be read, for a sheet of nominal thickness`,
    '# edges and lands: plus and minus are those of the drawing, or else what the run is expected to hold; write them under read',
    ...(hasFarFace ? [FACES] : []),
    ...[columnsOf(hasFarFace), ...rows, ...others].map((row) => row.join(',')),
    '',
  ].join('\n');
}

function columnsOf(hasFarFace: boolean): readonly string[] {
  return hasFarFace
    ? COLUMNS.flatMap((column) => (column === 'region' ? ['face', column] : [column]))
    : COLUMNS;
}
