/** Line budgets as they stand in plan.json. Lengths in mm, rounded to a millionth. */
import type { LineBudget } from '#checks/line-budget.ts';
import type { LineSide, LineSum } from '#checks/line-sum.ts';
import type { LineBudgetRecord, LineSumRecord } from '#job/formats/plan-file.ts';
import { roundFigures } from '#units/round-figures.ts';

export function lineBudgetRecord(budget: LineBudget): LineBudgetRecord {
  const { regions, level, beside, wall, length, at, allowance, amplification, byClock, gauged, remedy } =
    budget;
  return roundFigures<LineBudgetRecord>({
    regions,
    level,
    beside,
    ...(wall === undefined ? {} : { wall }),
    length,
    at: [at.x, at.y],
    allowance,
    amplification,
    byClock: sumRecord(byClock),
    gauged: sumRecord(gauged),
    remedy: {
      changes: remedy.changes,
      outward: sideRecord(remedy.sum.outward),
      inward: sideRecord(remedy.sum.inward),
    },
  });
}

function sumRecord({ parts, outward, inward }: LineSum): LineSumRecord {
  return { parts, outward: sideRecord(outward), inward: sideRecord(inward) };
}

function sideRecord({ worst, likely, allowed }: LineSide): LineSumRecord['outward'] {
  return { worst, likely, allowed: allowed ?? null };
}
