/** As much of plan.json as rework is found by: floors with what is to be left of them, lines with what they were placed by. */
import type { Finding } from '#findings/finding.ts';
import { depthAt } from '#front/depth-at.ts';
import { indexFront } from '#front/front-index.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { readPlanFile, unusablePlan } from '#job/formats/read-plan-file.ts';
import type { Job } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { sheetAt } from '#job/sheet-at.ts';
import { undercutOf } from '#plan/allowance.ts';
import type { PlacedLines } from '#plan/edge-place.ts';
import { readRunPlan } from '#run/correct-plan.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';

export interface ReworkFloor {
  readonly id: string;
  readonly level: number;
  readonly label: readonly [x: number, y: number];
  /** mm² */
  readonly area: number;
  /** By number: the last that etches it. */
  readonly lastStage: number;
  /** mm, before anything was etched. */
  readonly sheet: number;
  /** Thickness to be left, mm, and how much thinner (`plus`, deeper) or thicker it may be. */
  readonly thickness: number;
  readonly plus: number;
  readonly minus: number;
  /** mm that the other face takes at the label by the end of the run (M9.1); where it takes any, an extra dip etches both. */
  readonly behind: number;
  /** A depth is asked: what is to be left follows the sheet. */
  readonly asDepth: boolean;
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
  const behindOf = etchedBehind(text);
  const asDepth = new Set(
    (planFile.budgets ?? []).flatMap((each) => (each.asked.what === 'depth' ? each.regions : [])),
  );
  const floors = planFile.regions.flatMap((region): ReworkFloor[] => {
    const { id, level, label, area, asked } = region;
    const [x, y] = label;
    const behind = behindOf(region);
    const sheet = sheetAt(stock.thickness, { x, y });
    // Of what is cut through nothing is left to be gauged.
    if (level === 0 || (behind > 0 && sheet - level - behind < SAME_LEVEL)) return [];
    const thickness = sheet - asked.depth - behind;
    const { plus, minus } = asked;
    return [
      {
        id,
        level,
        label,
        area,
        lastStage: lastOf(level),
        sheet,
        thickness,
        plus,
        minus,
        behind,
        asDepth: asDepth.has(id),
      },
    ];
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

/** Of a part of one face there is nothing behind any floor. */
function etchedBehind(text: string): (region: PlanFile['regions'][number]) => number {
  const read = readRunPlan(text);
  if ('refused' in read || read.farFront === undefined) return () => 0;
  const { origin } = read;
  const [near, far] = [indexFront(read.front), indexFront(read.farFront)];
  return ({ face, label: [x, y] }) =>
    depthAt(face === 'far' ? near : far, { x: x - origin.x, y: y - origin.y }).depth;
}
