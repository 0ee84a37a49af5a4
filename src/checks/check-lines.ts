/**
 * Drawn edges that may come out farther off their lines than they may (M6.6): one finding for those that pass what is asked by
 * root-sum-square even when gauged on the way, one for those that gauging holds, one for those that pass it only should everything go
 * wrong at once; and where nothing is asked, how far lines may be off. The worst edge speaks for the others.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type LineBudget, lineOverBy, worseLineSide } from './line-budget.ts';

const CODES = ['line-not-held', 'line-needs-gauging', 'line-barely-held', 'line-doubt'] as const;
type LineCode = (typeof CODES)[number];

/** Findings: `line-not-held`, `line-needs-gauging`, `line-barely-held`, `line-doubt`. */
export function checkLines(
  budgets: readonly LineBudget[],
  plan: EtchPlan,
  { factorSpread }: Pick<Job['process'], 'factorSpread'>,
): Finding[] {
  return CODES.flatMap((code) => {
    const over = budgets.filter((each) => codeFor(each) === code);
    const [first, ...others] = over;
    if (first === undefined) return [];
    const worst = others.reduce((a, b) => (isWorse(b, a) ? b : a), first);
    const named = new Set(over.flatMap(({ regions }) => regions));
    const regions = plan.regions.flatMap(({ id }) => (named.has(id) ? [id] : []));
    const facts = { ...factsOf(worst), factorSpread, edges: over.length, of: budgets.length };
    return [finding(code, facts, { regions, at: worst.at })];
  });
}

function codeFor({ asked, byClock, gauged }: LineBudget): LineCode | undefined {
  if (asked === undefined) return byClock.outward.worst > ROUNDING ? 'line-doubt' : undefined;
  if (lineOverBy(byClock, 'worst') <= ROUNDING) return undefined;
  if (lineOverBy(byClock, 'likely') <= ROUNDING) return 'line-barely-held';
  return lineOverBy(gauged, 'likely') <= ROUNDING ? 'line-needs-gauging' : 'line-not-held';
}

function urgency({ asked, byClock }: LineBudget): number {
  return asked === undefined ? byClock.outward.likely : lineOverBy(byClock, 'likely');
}

/** Where two stand alike the deeper step, whichever face it is on. */
function isWorse(a: LineBudget, b: LineBudget): boolean {
  return (urgency(a) - urgency(b) || a.level - b.level || b.beside - a.beside) > 0;
}

function factsOf({ level, beside, byClock, amplification, remedy }: LineBudget) {
  const side = worseLineSide(byClock);
  const after = remedy.sum[worseLineSide(remedy.sum)];
  return {
    level,
    beside,
    side,
    ...byClock[side],
    parts: byClock.parts,
    amplification,
    remedy: { changes: remedy.changes, likely: after.likely, worst: after.worst },
  };
}
