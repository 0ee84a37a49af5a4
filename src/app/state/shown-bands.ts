/** The bands that the sheet shows: of all drawn edges of the face on show, or of the one that was picked. */
import type { PackedContours } from '#app/worker/pack-contours.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import type { Point } from '#geometry/point.ts';
import { SAME_FIGURE } from '#geometry/tolerances.ts';
import type { LineBudgetRecord } from '#job/formats/plan-file.ts';
import type { Derived, Session } from './workbench-state.ts';

export interface EdgeBand {
  /** In the plan's `lineBudgets`. */
  readonly index: number;
  /** The edges as drawn. */
  readonly lines: PackedContours;
  /** Middle of the longest. */
  readonly at: Point;
  /** mm that they may come out to either side. */
  readonly half: number;
  /** Of the stage that makes them. */
  readonly color: string;
  readonly isPicked: boolean;
  /** mm allowed to either side, of one that is picked; undefined where it is not the same on both. */
  readonly allowed: number | undefined;
}

const NONE: readonly EdgeBand[] = [];

export function shownBands(
  { page, edges }: Pick<Derived, 'page' | 'edges'>,
  { showsBands, edge }: Pick<Session, 'showsBands' | 'edge'>,
): readonly EdgeBand[] {
  const plan = page?.plan;
  if (plan === undefined || edges?.of !== plan) return NONE;
  const colors = new Map(plan.stages.flatMap(({ regions, color }) => regions.map((id) => [id, color])));
  return budgetsOnShow(page).flatMap(({ index, budget }): EdgeBand[] => {
    const isPicked = index === edge;
    const [drawn, color] = [edges.drawn[index], colors.get(budget.regions[0] ?? '')];
    if (!(showsBands || isPicked) || drawn === undefined || color === undefined) return [];
    const { likely } = budget.byClock.outward;
    const allowed = isPicked ? evenlyAllowed(budget) : undefined;
    return [{ index, ...drawn, half: likely, color, isPicked, allowed }];
  });
}

/** Line budgets of the face on show, each with its place in the plan's. */
export function budgetsOnShow(
  page: Pick<PlannedPage, 'plan' | 'faces' | 'results'> | undefined,
): readonly { readonly index: number; readonly budget: LineBudgetRecord }[] {
  const budgets = page?.results?.lineBudgets ?? [];
  // All are of the one face that is etched.
  if (page?.faces !== undefined && page.faces.far === undefined)
    return budgets.map((budget, index) => ({ index, budget }));
  const ids = new Set(page?.plan?.regions.map(({ id }) => id));
  return budgets.flatMap((budget, index) =>
    budget.regions.some((id) => ids.has(id)) ? [{ index, budget }] : [],
  );
}

function evenlyAllowed({ byClock: { outward, inward } }: LineBudgetRecord): number | undefined {
  if (outward.allowed === null || inward.allowed === null) return undefined;
  return Math.abs(outward.allowed - inward.allowed) < SAME_FIGURE ? outward.allowed : undefined;
}
