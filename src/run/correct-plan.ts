/** As much of plan.json as a run is corrected by. */

import type { Finding } from '#findings/finding.ts';
import type { Front } from '#front/front.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import type { Point } from '#geometry/point.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, PlanFile } from '#job/formats/plan-file.ts';
import { readPlanFile, unusablePlan } from '#job/formats/read-plan-file.ts';
import type { Job, Masking } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';

export interface RunRegion {
  readonly id: string;
  /** mm; 0 for land. */
  readonly level: number;
  readonly asked: { readonly depth: number; readonly plus: number; readonly minus: number };
  /** A final thickness is asked: the depth follows the sheet. */
  readonly asThickness?: boolean;
  /** mm that the other face takes of the metal behind it by the end of the run, where thicknesses are read of a part of two faces. */
  readonly behind?: number;
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
  /** Floors on both faces: what is left says nothing of one of them. */
  readonly hasFarFloors?: boolean;
}

export interface PlanRead {
  readonly plan: RunPlan;
  /** mm, in the drawing's own frame: where front and borders here have their origin, so that places far out lose no digits. */
  readonly origin: Point;
  readonly front: Front;
  /** Of a part that is etched on both faces. */
  readonly farFront: Front | undefined;
  /** Of the near face: id of the region that holds a point. */
  readonly regionAt: (point: Point) => string | undefined;
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
  const { rate, rateSpread, etchFactor } = process;
  const { thickness, minus, plus } = stock;
  const sheet = typeof thickness === 'number' ? { thickness, minus, plus } : undefined;
  const asThickness = new Set(
    (file.budgets ?? []).flatMap(({ asked, regions }) => (asked.what === 'thickness' ? regions : [])),
  );
  const origin = originOf(file);
  const loopsOf = (contours: PlanFile['cutouts']) =>
    contours.map((each) => pathOfContour(movedContour(each, origin)).spans);
  const near = regions.filter(({ face }) => face !== 'far');
  const { at } = locateAreas(near.map(({ contours }) => loopsOf(contours)));
  const frontOf = (openingOf: (stage: PlanFile['stages'][number]) => PlanFile['cutouts']): Front => ({
    stages: stages
      .map((stage, index) => ({
        ...stage,
        base: masking === 're-mask' ? (stages[index - 1]?.level ?? 0) : 0,
        opening: loopsOf(openingOf(stage)),
      }))
      .sort((a, b) => b.level - a.level),
    etchFactor,
    rate,
    sheet: [],
    thickness: sheet?.thickness ?? Number.POSITIVE_INFINITY,
  });
  return {
    plan: {
      masking,
      stages: stages.map(({ number, level, minutes }) => ({ number, level, minutes })),
      regions: regions.map(({ id, level, asked }) => ({
        id,
        level,
        asked,
        asThickness: asThickness.has(id),
      })),
      rate,
      rateSpread,
      sheet,
      hasFarFloors: regions.some(({ face, level }) => face === 'far' && level > 0),
    },
    front: frontOf(({ opening }) => opening),
    farFront: stages.some(({ far }) => far !== undefined)
      ? frontOf(({ far }) => far?.opening ?? [])
      : undefined,
    regionAt: (point) => near[at(point)]?.id,
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

function movedContour({ vertices, ...contour }: Contour, origin: Point): Contour {
  return { ...contour, vertices: vertices.map(([x, y, bulge]) => [x - origin.x, y - origin.y, bulge]) };
}
