/** The tolerance budget as lines of text for under a stage table: each floor's share of its tolerance. */
import type { RunResult } from '#run/run-job.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';

type Budgets = NonNullable<RunResult['planFile']>['budgets'];

/** At most so many floors are named, the worst first; the rest are counted. */
const MOST_NAMED = 6;

/** None without floors. */
export function budgetText(budgets: Budgets, unit: ShownUnit): string[] {
  if (budgets === undefined || budgets.length === 0) return [];
  const worst = [...budgets].sort((a, b) => rank(b.byClock.share) - rank(a.byClock.share));
  const more = budgets.length - MOST_NAMED;
  return [
    'Likely error as a share of each tolerance (root-sum-square), by the clock and with gauging:',
    ...worst.slice(0, MOST_NAMED).map(({ level, asked, byClock, gauged }) => {
      const tolerance = `+${gaugedFigure(asked.plus, unit)}/−${gaugedFigure(asked.minus, unit)}`;
      return `level ${gaugedFigure(level, unit)} ${unit} ${tolerance}: ${percent(byClock.share)}, gauged ${percent(gauged.share)}`;
    }),
    ...(more > 0 ? [`and ${more} more, in plan.json`] : []),
    '',
  ];
}

/** What has nothing to go wrong within is worst off. */
function rank(share: number | null): number {
  return share ?? Number.POSITIVE_INFINITY;
}

function percent(share: number | null): string {
  return share === null ? 'over a tolerance of 0' : `${Math.round(share * 100)} %`;
}
