/**
 * As much of plan.json as a run is corrected by. The file is Isobath's own, but it comes from a disk: what is needed of it is
 * checked, and told with its path where it is not as it should be.
 */
import { type Finding, finding } from '#findings/finding.ts';
import type { Front } from '#front/front.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, PlanFile } from '#handoff/plan-file.ts';
import type { Masking } from '#job/job.ts';
import { meanReading } from '#job/measured-sheet.ts';
import { LENGTH_UNITS, millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface RunRegion {
  readonly id: string;
  /** mm; 0 for land. */
  readonly level: number;
  readonly asked: { readonly depth: number; readonly plus: number; readonly minus: number };
  /** A final thickness is asked: the depth follows the sheet. */
  readonly asThickness?: boolean;
}

export interface RunStage {
  readonly number: number;
  readonly level: number;
  readonly minutes: number;
}

/** Millimetres and minutes. */
export interface RunPlan {
  readonly masking: Masking;
  /** In the order of the run: deepest first, or with re-mask shallowest first. */
  readonly stages: readonly RunStage[];
  readonly regions: readonly RunRegion[];
  /** mm/min, as planned. */
  readonly rate: number;
  /** Share, ±. */
  readonly rateSpread: number;
  /** Undefined for a tapered sheet. */
  readonly sheet: { readonly thickness: number; readonly minus: number; readonly plus: number } | undefined;
}

export interface PlanRead {
  readonly plan: RunPlan;
  /** mm, in the drawing's own frame: where front and borders here have their origin, so that places far out lose no digits. */
  readonly origin: Point;
  readonly front: Front;
  readonly loops: ReadonlyMap<string, readonly Loop[]>;
  /** The job's unit of length. */
  readonly jobUnit: ShownUnit;
  /** Millimetres in the drawing's. */
  readonly drawingUnit: number;
}

/** Findings: `plan-file-unusable`. */
export function readRunPlan(text: string): PlanRead | { readonly refused: Finding } {
  let file: PlanFile;
  try {
    file = JSON.parse(text);
  } catch {
    return unusable('', 'JSON');
  }
  if (file?.format !== 'isobath-plan') return unusable('format', '"isobath-plan"');
  if (file.version !== 1) return unusable('version', '1');
  const fault = findFault(file);
  if (fault !== undefined) return unusable(fault.path, fault.expected);
  return take(file);
}

function unusable(path: string, expected: string): { readonly refused: Finding } {
  return { refused: finding('plan-file-unusable', { path, expected }) };
}

interface JobRead {
  readonly units: 'mm' | 'in';
  readonly stock: {
    readonly thickness: unknown;
    readonly minus: number;
    readonly plus: number;
    readonly measured?: readonly (number | { readonly thickness: number })[];
  };
  readonly process: { readonly rateSpread: number };
}

function findFault(file: PlanFile): { readonly path: string; readonly expected: string } | undefined {
  if (!Array.isArray(file.stages) || file.stages.length === 0) return { path: 'stages', expected: 'stages' };
  for (const [index, stage] of file.stages.entries()) {
    const figures = [stage?.level, stage?.minutes, stage?.etch];
    if (!figures.every(isPositive)) return { path: `stages[${index}]`, expected: 'level, etch and minutes' };
    if (!isContours(stage.opening)) return { path: `stages[${index}].opening`, expected: 'contours' };
  }
  if (!Array.isArray(file.regions)) return { path: 'regions', expected: 'regions' };
  for (const [index, region] of file.regions.entries()) {
    const figures = [region?.level, region?.asked?.depth, region?.asked?.plus, region?.asked?.minus];
    const isRight = figures.every((each) => Number.isFinite(each)) && isContours(region.contours);
    if (!isRight) return { path: `regions[${index}]`, expected: 'a level, a depth asked and contours' };
  }
  const job = file.job as Partial<JobRead> | undefined;
  const figures = [job?.process?.rateSpread, job?.stock?.minus, job?.stock?.plus];
  if (!figures.every((each) => Number.isFinite(each))) return { path: 'job', expected: 'the job as planned' };
  if (!['peel-next', 're-mask'].includes(maskingOf(file))) {
    return { path: 'masking', expected: '"peel-next" or "re-mask"' };
  }
  const unit = LENGTH_UNITS.find((each) => each === file.drawing?.unit);
  return unit === undefined ? { path: 'drawing.unit', expected: 'a unit of length' } : undefined;
}

/** Plan files from before there were two ways say none. */
function maskingOf({ masking = 'peel-next' }: { readonly masking?: Masking }): Masking {
  return masking;
}

function isPositive(value: unknown): boolean {
  return typeof value === 'number' && Number.isFinite(value) && value > 0;
}

function isContours(value: unknown): boolean {
  return (
    Array.isArray(value) &&
    value.every((each) => Array.isArray(each?.vertices) && each.vertices.every(Array.isArray))
  );
}

function take(file: PlanFile): PlanRead {
  const job = file.job as JobRead;
  const jobUnit = job.units === 'in' ? 'in' : 'mm';
  const unit = millimetresIn(jobUnit);
  const drawingUnit = millimetresIn(LENGTH_UNITS.find((each) => each === file.drawing.unit) ?? 'mm');
  const first = file.stages[0];
  const rate = first === undefined ? 0 : first.etch / first.minutes;
  const { thickness, measured, minus, plus } = job.stock;
  const sheet =
    typeof thickness === 'number'
      ? {
          thickness: (meanReading(measured) ?? thickness) * unit,
          minus: minus * unit,
          plus: plus * unit,
        }
      : undefined;
  const asThickness = new Set(
    (file.budgets ?? []).flatMap(({ asked, regions }) => (asked.what === 'thickness' ? regions : [])),
  );
  const origin = originOf(file);
  const loopsOf = (contours: PlanFile['cutouts']) =>
    contours.map((each) => pathOfContour(movedContour(each, origin)).spans);
  return {
    plan: {
      masking: maskingOf(file),
      stages: file.stages.map(({ number, level, minutes }) => ({ number, level, minutes })),
      regions: file.regions.map(({ id, level, asked }) => ({
        id,
        level,
        asked,
        asThickness: asThickness.has(id),
      })),
      rate,
      rateSpread: job.process.rateSpread,
      sheet,
    },
    front: {
      stages: file.stages
        .map((stage, index) => ({
          ...stage,
          base: maskingOf(file) === 're-mask' ? (file.stages[index - 1]?.level ?? 0) : 0,
          opening: loopsOf(stage.opening),
        }))
        .sort((a, b) => b.level - a.level),
      // Only floors are read, and a floor is a floor at any factor: what is near a wall at 1.5 is not read as one.
      etchFactor: [[0, 1.5]],
      rate,
      sheet: [],
      thickness: sheet?.thickness ?? Number.POSITIVE_INFINITY,
    },
    loops: new Map(file.regions.map(({ id, contours }) => [id, loopsOf(contours)])),
    jobUnit,
    drawingUnit,
    origin,
  };
}

/** Whole millimetres beside the first border. */
function originOf({ regions }: PlanFile): Point {
  const [x = 0, y = 0] = regions[0]?.contours[0]?.vertices[0] ?? [];
  return { x: Math.round(x), y: Math.round(y) };
}

function movedContour({ vertices, ...contour }: Contour, origin: Point): Contour {
  return { ...contour, vertices: vertices.map(([x, y, bulge]) => [x - origin.x, y - origin.y, bulge]) };
}
