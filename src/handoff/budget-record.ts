/** Tolerance budgets as they stand in plan.json. Lengths in mm, rounded to a millionth. */
import {
  type BudgetSide,
  type BudgetSum,
  type ToleranceBudget,
  worseSide,
} from '#checks/tolerance-budget.ts';
import type { BudgetRecord, BudgetSumRecord } from '#job/formats/plan-file.ts';
import { roundFigures } from '#units/round-figures.ts';

export function budgetRecord(budget: ToleranceBudget): BudgetRecord {
  const { regions, level, low, high, plus, minus, asThickness, byClock, gauged, remedy } = budget;
  return roundFigures({
    regions,
    level,
    asked: { what: asThickness ? 'thickness' : 'depth', low, high, plus, minus },
    byClock: sumRecord(byClock),
    gauged: sumRecord(gauged),
    remedy: { changes: remedy.changes, ...sideRecord(remedy.sum[worseSide(remedy.sum)]) },
  });
}

function sumRecord(sum: BudgetSum): BudgetSumRecord {
  const { sheet, rate, timing, gauge } = sum.parts;
  return {
    parts: { sheet, rate, timing, gauge },
    tooDeep: sideRecord(sum.tooDeep),
    tooShallow: sideRecord(sum.tooShallow),
    share: shareOf(sum[worseSide(sum)]),
  };
}

function sideRecord({ shift, worst, likely, allowed }: BudgetSide): BudgetSumRecord['tooDeep'] {
  return { shift, worst, likely, allowed };
}

/** Nothing is a share of nothing. */
function shareOf({ likely, allowed }: BudgetSide): number | null {
  if (allowed > 0) return Math.max(0, likely) / allowed;
  return likely <= 0 ? 0 : null;
}
