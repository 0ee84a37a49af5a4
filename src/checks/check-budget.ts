/**
 * Floors whose tolerance is not held by the clock alone (M6.4): one finding for those that pass what is asked by root-sum-square even
 * when gauged on the way, one for those that gauging holds, one for those that pass it only should everything go wrong at once. The
 * worst floor speaks for the others.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { overBy, type ToleranceBudget, worseSide } from './tolerance-budget.ts';

type BudgetCode = 'tolerance-not-held' | 'tolerance-needs-gauging' | 'tolerance-barely-held';

/** Findings: `tolerance-not-held`, `tolerance-needs-gauging`, `tolerance-barely-held`. */
export function checkBudget(
  budgets: readonly ToleranceBudget[],
  { plan, process }: { readonly plan: EtchPlan; readonly process: Job['process'] },
): Finding[] {
  const report = (code: BudgetCode) => {
    const over = budgets.filter((each) => codeFor(each) === code);
    if (over.length === 0) return [];
    const worst = over.reduce((a, b) => (overBy(b.byClock, 'likely') > overBy(a.byClock, 'likely') ? b : a));
    const [first] = plan.regions.filter(({ id }) => id === worst.regions[0]);
    const regions = over.flatMap((each) => each.regions);
    const facts = { ...factsOf(worst, process), floors: over.length, of: budgets.length };
    return [finding(code, facts, { regions, ...(first && { at: first.label }) })];
  };
  return [
    ...report('tolerance-not-held'),
    ...report('tolerance-needs-gauging'),
    ...report('tolerance-barely-held'),
  ];
}

function codeFor({ byClock, gauged }: ToleranceBudget): BudgetCode | undefined {
  if (overBy(byClock, 'worst') <= ROUNDING) return undefined;
  if (overBy(byClock, 'likely') <= ROUNDING) return 'tolerance-barely-held';
  return overBy(gauged, 'likely') <= ROUNDING ? 'tolerance-needs-gauging' : 'tolerance-not-held';
}

function factsOf({ level, asked, byClock, remedy }: ToleranceBudget, { rateSpread, timing }: Job['process']) {
  const side = worseSide(byClock);
  const { worst, likely, allowed } = remedy.sum[worseSide(remedy.sum)];
  return {
    level,
    isThickness: asked.what === 'thickness',
    side,
    ...byClock[side],
    parts: byClock.parts,
    rateSpread,
    timing,
    remedy: { changes: remedy.changes, worst, likely, allowed },
  };
}
