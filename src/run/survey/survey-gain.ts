/**
 * What a survey gains (M8.3): the share of its tolerance that the worst floor of a final thickness uses, with this very sheet and with the
 * same readings taken as one thickness with a spread. Levels and budgets only: no lines are placed for the even sheet.
 */
import { type ToleranceBudget, toleranceBudgets } from '#checks/tolerance-budget.ts';
import type { SurveyShare } from '#job/formats/plan-file.ts';
import type { Job } from '#job/job.ts';
import { measuredSheet } from '#job/measured-sheet.ts';
import { sheetAt } from '#job/sheet-at.ts';
import type { Asked, Part, RegionId } from '#part/part.ts';
import { chooseLevels } from '#plan/choose-levels.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';

export interface SurveyGain {
  readonly before: SurveyShare;
  readonly after: SurveyShare;
}

/** Undefined where no final thickness is asked. @param asked before the survey shaped it */
export function surveyGain(
  plan: EtchPlan,
  {
    part,
    asked,
    job,
    budgets,
  }: {
    readonly part: Part;
    readonly asked: ReadonlyMap<RegionId, Asked>;
    readonly job: Job;
    readonly budgets: readonly ToleranceBudget[];
  },
): SurveyGain | undefined {
  const { surveyed } = job.stock;
  if (surveyed === undefined || !budgets.some(isThickness)) return undefined;
  const { thinner, doubt } = job.sizing ?? { thinner: 0, doubt: 0 };
  const readings = surveyed.survey.readings.map((each) => ({
    ...each,
    thickness: each.thickness - thinner,
  }));
  const thickness = meanOf(readings);
  const mean = measuredSheet(thickness, readings);
  const even: Job = {
    ...job,
    stock: { ...job.stock, ...mean, minus: mean.minus + doubt, plus: mean.plus + doubt },
  };
  const flat = new Map(
    part.regions.flatMap(({ id, label }) => {
      const each = asked.get(id);
      if (each === undefined) return [];
      const { tapers: _, ...rest } = each;
      const moved = each.asThickness === true ? thickness - sheetAt(job.stock.thickness, label) : 0;
      return [[id, { ...rest, depth: each.depth + moved }] as const];
    }),
  );
  return {
    before: sharesOf(toleranceBudgets(evenPlan(plan, part, flat, job), even)),
    after: sharesOf(budgets),
  };
}

function meanOf(readings: readonly { readonly thickness: number }[]): number {
  return readings.reduce((sum, { thickness }) => sum + thickness, 0) / readings.length;
}

/** As far as budgets look at a plan: regions with levels, and what each stage etches. */
function evenPlan(plan: EtchPlan, part: Part, asked: ReadonlyMap<RegionId, Asked>, job: Job): EtchPlan {
  const { ofRegion } = chooseLevels(asked, job);
  const levels = [...new Set(ofRegion.values())].filter((level) => level > 0).sort((a, b) => b - a);
  const stages = levels.map((level, index) => ({ level, etch: level - (levels[index + 1] ?? 0) }) as Stage);
  const regions = part.regions.map((region) => ({
    ...region,
    asked: asked.get(region.id) ?? { depth: 0, plus: 0, minus: 0 },
    level: ofRegion.get(region.id) ?? 0,
  }));
  return { ...plan, regions, stages: plan.masking === 're-mask' ? [...stages].reverse() : stages };
}

function sharesOf(budgets: readonly ToleranceBudget[]): SurveyShare {
  const own = budgets.filter(isThickness);
  const worst = (which: 'byClock' | 'gauged'): number | null => {
    const shares = own.map((each) => each[which].share);
    return shares.includes(null) ? null : Math.max(...shares.map((share) => share ?? 0));
  };
  const levels = [...new Set(own.map(({ level }) => level))].sort((a, b) => b - a);
  return { levels, byClock: worst('byClock'), gauged: worst('gauged') };
}

function isThickness({ asked }: ToleranceBudget): boolean {
  return asked.what === 'thickness';
}
