/** The line budget as lines of text for under a stage table: how far drawn edges may come out off their lines. */
import { AMPLIFIED, LINE_CAUSE_WORDS, type LineCause } from '#findings/edge-words.ts';
import type { RunResult } from '#run/run-job.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';

type LineBudgets = NonNullable<RunResult['planFile']>['lineBudgets'];
type Budget = NonNullable<LineBudgets>[number];

/** At most so many edges are named, the worst first; the rest are counted. */
const MOST_NAMED = 6;

/** None without drawn edges. */
export function lineBudgetText(budgets: LineBudgets, unit: ShownUnit): string[] {
  if (budgets === undefined || budgets.length === 0) return [];
  const worst = [...budgets].sort((a, b) => rank(b) - rank(a));
  const more = budgets.length - MOST_NAMED;
  return [
    `Drawn edges, ± ${unit} off their lines (root-sum-square / all at once), by the clock, and what moves them most:`,
    ...worst.slice(0, MOST_NAMED).map((budget) => edgeText(budget, unit)),
    ...(more > 0 ? [`and ${more} more, in plan.json`] : []),
    '',
  ];
}

function edgeText({ level, beside, byClock, amplification }: Budget, unit: ShownUnit): string {
  const figure = (length: number) => gaugedFigure(length, unit);
  const { outward, inward, parts } = byClock;
  const worst = Math.max(outward.worst, inward.worst);
  const asked =
    outward.allowed === null ? '' : ` of +${figure(outward.allowed)}/−${figure(inward.allowed ?? 0)}`;
  const cause = Object.entries(parts).sort(([, a], [, b]) => b - a)[0];
  const most =
    cause === undefined ? '' : `; ${LINE_CAUSE_WORDS[cause[0] as LineCause]} ± ${figure(cause[1])}`;
  const times =
    amplification < AMPLIFIED ? '' : `; moves ${amplification.toFixed(1)} times as far as its step is off`;
  const neighbour = beside === 0 ? 'land' : figure(beside);
  return `${figure(level)} beside ${neighbour}: ± ${figure(outward.likely)} / ${figure(worst)}${asked}${most}${times}`;
}

/** Those with a tolerance by their share of it; the others by their size, after them. */
function rank({ byClock: { outward, inward } }: Budget): number {
  const least = Math.min(
    outward.allowed ?? Number.POSITIVE_INFINITY,
    inward.allowed ?? Number.POSITIVE_INFINITY,
  );
  return Number.isFinite(least) ? 1e6 + (least === 0 ? 1e6 : outward.likely / least) : outward.likely;
}
