/** What the sum of a stage starts from: when it is taken out, how much should be gone then, and when to ask (method.md, M6.3, M7.4). */

import { isTooThinToGauge } from '#checks/tolerance-budget.ts';
import type { Job } from '#job/job.ts';
import { GAUGED_AT } from '#job/process-assumptions.ts';
import { GAUGE_OFF, QUESTIONED_SHARE } from '#job/questioned-share.ts';
import { sheetAt } from '#job/sheet-at.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import type { GaugePoint } from './gauge-points.ts';

export interface StageSum {
  /** Too thin for a gauge to resolve, or nowhere wide enough for one: it runs its minutes by the clock. */
  readonly isByClock: boolean;
  /** Minutes until it is gauged; all of them by the clock. */
  readonly outAt: number;
  /** mm gone then, and the least and the most of the middle of what is read at which planning need not be asked. */
  readonly gone: { readonly expected: number; readonly least: number; readonly most: number };
  /** mm either way that a single reading may be off what is expected before planning is asked; of a thickness the sheet comes on top. */
  readonly oneOff: number;
}

/** @param points where the stage is gauged */
export function stageSum(
  { etch, minutes }: Stage,
  { process, points }: { readonly process: Job['process']; readonly points: readonly GaugePoint[] },
): StageSum {
  const isByClock = points.length === 0 || isTooThinToGauge(etch, process);
  const expected = etch * GAUGED_AT.value;
  // Each of them is the difference of two readings; of a thin stage a quarter is less than these are apart by chance.
  const byChance = (GAUGE_OFF * Math.SQRT2) / Math.sqrt(Math.max(1, points.length));
  const spare = Math.max(expected * QUESTIONED_SHARE, byChance);
  return {
    isByClock,
    outAt: isByClock ? minutes : minutes * GAUGED_AT.value,
    gone: { expected, least: expected - spare, most: expected + spare },
    oneOff: Math.max(expected * QUESTIONED_SHARE, GAUGE_OFF),
  };
}

/** mm of the nominal sheet at a point: as the stage begins, and as it ends. */
export function thicknessAround(
  { at, stage: own }: GaugePoint,
  stage: Stage,
  { plan, job }: { readonly plan: EtchPlan; readonly job: Job },
): { readonly before: number; readonly after: number } {
  const sheet = sheetAt(job.stock.thickness, at);
  const levelOf = (number: number) => plan.stages.find((each) => each.number === number)?.level ?? 0;
  if (plan.masking === 're-mask') {
    const before = sheet - levelOf(stage.number - 1);
    return { before, after: before - stage.etch };
  }
  const before = sheet - (levelOf(own) - levelOf(stage.number));
  return { before, after: before - stage.etch };
}

/** Whether a stage aims at a thickness, not at metal gone: the last one, where one is required of a gauged floor. */
export function aimsAtThickness(
  { plan }: { readonly plan: EtchPlan },
  { number }: Stage,
  points: readonly GaugePoint[],
): boolean {
  return number === plan.stages.length && points.some(({ isAskedAsThickness }) => isAskedAsThickness);
}
