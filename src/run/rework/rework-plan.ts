/** As much of plan.json as rework is found by: floors with what is to be left of them, lines with what they were placed by. */
import type { Finding } from '#findings/finding.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { readPlanFile, unusablePlan } from '#job/formats/read-plan-file.ts';
import type { Job } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { sheetAt } from '#job/sheet-at.ts';
import { undercutOf } from '#plan/allowance.ts';
import type { PlacedLines } from '#plan/edge-place.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';

export interface ReworkFloor {
  readonly id: string;
  readonly level: number;
  readonly label: readonly [x: number, y: number];
  /** mm² */
  readonly area: number;
  /** By number: the last that etches it. */
  readonly lastStage: number;
  /** Thickness to be left, mm, and how much thinner (`plus`, deeper) or thicker it may be. */
  readonly thickness: number;
  readonly plus: number;
  readonly minus: number;
}

/** Depths that a level may move to: what serves all of its floors. */
export interface LevelRoom {
  readonly level: number;
  readonly least: number;
  readonly most: number;
}

export interface ReworkPlan {
  readonly planFile: PlanFile;
  readonly process: Job['process'];
  readonly floors: readonly ReworkFloor[];
  readonly lines: PlacedLines;
  readonly rooms: readonly LevelRoom[];
}

export function readReworkPlan(text: string): ReworkPlan | { readonly refused: Finding } {
  const read = readPlanFile(text);
  if ('refused' in read) return read;
  const { planFile } = read;
  const { job } = resolveJob(planFile.job as JobFile, planFile.drawing.unit);
  if (job === undefined) return unusablePlan('job', 'a job with an etch factor and a rate');
  const { stock, process } = job;
  const levels = planFile.stages.map(({ level }) => level).sort((a, b) => b - a);
  const { stages, masking } = planFile;
  const lastOf = (level: number) =>
    masking === 're-mask'
      ? stages.findIndex((stage) => Math.abs(stage.level - level) < SAME_LEVEL) + 1
      : stages.length;
  const floors = planFile.regions.flatMap(({ id, level, label, area, asked }): ReworkFloor[] => {
    const [x, y] = label;
    if (level === 0) return [];
    const thickness = sheetAt(stock.thickness, { x, y }) - asked.depth;
    const { plus, minus } = asked;
    return [{ id, level, label, area, lastStage: lastOf(level), thickness, plus, minus }];
  });
  return {
    planFile,
    process,
    floors,
    lines: { undercut: undercutOf(process, levels), levels },
    rooms: levels.map((level) => roomOf(level, planFile)),
  };
}

function roomOf(level: number, { regions }: PlanFile): LevelRoom {
  const own = regions.filter((region) => region.level === level);
  const least = Math.max(...own.map(({ asked }) => asked.depth - asked.minus));
  const most = Math.min(...own.map(({ asked }) => asked.depth + asked.plus));
  return { level, least: Math.min(level, least), most: Math.max(level, most) };
}
