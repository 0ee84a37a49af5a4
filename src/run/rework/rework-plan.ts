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
import { floorPlaces } from './floor-places.ts';

/** A floor, or of a part of two faces what two floors that lie behind each other leave between them. */
export interface ReworkFloor {
  readonly id: string;
  /** The floor of the far face behind it: an extra dip takes from both as long as both are open. */
  readonly over?: string;
  readonly level: number;
  /** mm that the floor behind it takes by the end of the run; 0 where there is none. */
  readonly behind: number;
  /** A place of it, well off its borders. */
  readonly label: readonly [x: number, y: number];
  /** mm² */
  readonly area: number;
  /** By number: the last that etches it. */
  readonly lastStage: number;
  /** mm, before anything was etched. */
  readonly sheet: number;
  /** Thickness to be left, mm, and how much thinner (`plus`, deeper) or thicker it may be: of two floors the sums. */
  readonly thickness: number;
  readonly plus: number;
  readonly minus: number;
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
  const asDepth = new Set(
    (planFile.budgets ?? []).flatMap((each) => (each.asked.what === 'depth' ? each.regions : [])),
  );
  const floors = floorPlaces(planFile).flatMap(({ region, over, label, area }): ReworkFloor[] => {
    const { id, level, asked } = region;
    const [x, y] = label;
    const sheet = sheetAt(stock.thickness, { x, y });
    const behind = over?.level ?? 0;
    // Of what is cut through nothing is left to be gauged.
    if (behind > 0 && sheet - level - behind < SAME_LEVEL) return [];
    return [
      {
        id,
        ...(over === undefined ? {} : { over: over.id }),
        level,
        behind,
        label,
        area,
        lastStage: Math.max(lastOf(level), over === undefined ? 0 : lastOf(over.level)),
        sheet,
        thickness: sheet - asked.depth - (over?.asked.depth ?? 0),
        plus: asked.plus + (over?.asked.plus ?? 0),
        minus: asked.minus + (over?.asked.minus ?? 0),
        asDepth: asDepth.has(id) || (over !== undefined && asDepth.has(over.id)),
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
