/** Tolerance budgets as they stand in plan.json. Lengths in mm, rounded to a millionth. */
import {
  type BudgetSide,
  type BudgetSum,
  type ToleranceBudget,
  worseSide,
} from '#checks/tolerance-budget.ts';
import type { BudgetRecord, BudgetSumRecord } from '#job/plan-file.ts';

export function budgetRecord(budget: ToleranceBudget): BudgetRecord {
  const { regions, level, low, high, plus, minus, asThickness, byClock, gauged, remedy } = budget;
  return {
    regions,
    level: round(level),
    asked: {
      what: asThickness ? 'thickness' : 'depth',
      low: round(low),
      high: round(high),
      plus: round(plus),
      minus: round(minus),
    },
    byClock: sumRecord(byClock),
    gauged: sumRecord(gauged),
    remedy: { changes: remedy.changes, ...sideRecord(remedy.sum[worseSide(remedy.sum)]) },
  };
}

function sumRecord(sum: BudgetSum): BudgetSumRecord {
  const { parts, tooDeep, tooShallow } = sum;
  return {
    parts: {
      sheet: round(parts.sheet),
      rate: round(parts.rate),
      timing: round(parts.timing),
      gauge: round(parts.gauge),
    },
    tooDeep: sideRecord(tooDeep),
    tooShallow: sideRecord(tooShallow),
    share: shareOf(sum[worseSide(sum)]),
  };
}

function sideRecord({ shift, worst, likely, allowed }: BudgetSide): BudgetSumRecord['tooDeep'] {
  return { shift: round(shift), worst: round(worst), likely: round(likely), allowed: round(allowed) };
}

/** Nothing is a share of nothing. */
function shareOf({ likely, allowed }: BudgetSide): number | null {
  if (allowed > 0) return round(Math.max(0, likely) / allowed);
  return likely <= 0 ? 0 : null;
}

/** Adding 0 turns −0 into 0. */
function round(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}
