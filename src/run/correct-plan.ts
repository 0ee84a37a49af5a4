/** As much of plan.json as a run is corrected by. */

import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { readPlanFile, unusablePlan } from '#job/formats/read-plan-file.ts';
import type { Job, Masking, SheetSide } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { type FloorBehind, floorBehind, type RunFace, runFace } from './run-face.ts';

export interface RunRegion {
  readonly id: string;
  readonly face?: SheetSide;
  /** mm; 0 for land. */
  readonly level: number;
  readonly asked: { readonly depth: number; readonly plus: number; readonly minus: number };
  /** A final thickness is asked: the depth follows the sheet. */
  readonly asThickness?: boolean;
  /** The floor of the other face behind its label; none where that is land, and `wall` where what lies there is no floor. */
  readonly behind?: FloorBehind | undefined;
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
  readonly near: RunFace;
  /** Of a part that is etched on both faces. */
  readonly far: RunFace | undefined;
  /** By region. */
  readonly labels: ReadonlyMap<string, Point>;
  /** The job's unit of length. */
  readonly jobUnit: ShownUnit;
  /** Millimetres in the drawing's. */
  readonly drawingUnit: number;
}

/** Findings: `plan-file-unusable`. */
export function readRunPlan(text: string): PlanRead | { readonly refused: Finding } {
  const read = readPlanFile(text);
  if ('refused' in read) return read;
  const { planFile } = read;
  if (planFile.stages.length === 0) return unusablePlan('stages', 'a list with at least one stage');
  const without = planFile.stages.findIndex(({ level, minutes }) => level === 0 || minutes === 0);
  if (without >= 0) return unusablePlan(`stages[${without}]`, 'a stage with a level and minutes above 0');
  const { job } = resolveJob(planFile.job as JobFile, planFile.drawing.unit);
  if (job === undefined) return unusablePlan('job', 'a job with an etch factor and a rate');
  return runPlanOf(planFile, job);
}

function runPlanOf(file: PlanFile, { process, stock }: Job): PlanRead {
  const { masking, stages, regions } = file;
  const { rate, rateSpread } = process;
  const { thickness, minus, plus } = stock;
  const sheet = typeof thickness === 'number' ? { thickness, minus, plus } : undefined;
  const asThickness = new Set(
    (file.budgets ?? []).flatMap(({ asked, regions }) => (asked.what === 'thickness' ? regions : [])),
  );
  const origin = originOf(file);
  const alone = regions.map(
    ({ id, face = 'near', level, asked }): RunRegion => ({
      id,
      face,
      level,
      asked,
      asThickness: asThickness.has(id),
    }),
  );
  const faceOf = (side: SheetSide) =>
    runFace(file, { side, origin, process, thickness: sheet?.thickness ?? Number.POSITIVE_INFINITY });
  const near = faceOf('near');
  const far = stages.some((stage) => stage.far !== undefined) ? faceOf('far') : undefined;
  const labels = new Map(regions.map(({ id, label: [x, y] }) => [id, { x: x - origin.x, y: y - origin.y }]));
  return {
    plan: {
      masking,
      stages: stages.map(({ number, level, minutes }) => ({ number, level, minutes })),
      regions: alone.map((region) => {
        const label = labels.get(region.id);
        if (far === undefined || label === undefined) return region;
        return { ...region, behind: floorBehind(region.face === 'far' ? near : far, label) };
      }),
      rate,
      rateSpread,
      sheet,
    },
    near,
    far,
    labels,
    jobUnit: file.job.units ?? 'mm',
    drawingUnit: millimetresIn(file.drawing.unit),
    origin,
  };
}

/** Whole millimetres beside the first border. */
function originOf({ regions }: PlanFile): Point {
  const [x = 0, y = 0] = regions[0]?.contours[0]?.vertices[0] ?? [];
  return { x: Math.round(x), y: Math.round(y) };
}
