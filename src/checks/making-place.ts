/** From a plan and its front to what the rules about making it look at. */
import { contourLoops } from '#front/contours/contour-loops.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { reverseSpans } from '#geometry/span.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import { undercutOf } from '#plan/allowance.ts';
import type { Making, MakingPlace, NeckPlace, PlanPlace } from './making.ts';
import { neckPlaces } from './neck-places.ts';
import { levelsAcross, lookAround } from './surroundings.ts';

/** What the rules look at in the whole of a plan. */
export function planPlace({ plan, job }: Pick<Making, 'plan' | 'job'>): PlanPlace {
  const missing = plan.findings.filter(({ code }) => code === 'opening-missing');
  const levels = plan.stages.map(({ level }) => level);
  return {
    plan,
    job,
    around: lookAround(plan),
    undercut: undercutOf(job.process, levels),
    unopened: new Set(missing.flatMap(({ place: { regions } }) => regions ?? [])),
  };
}

/** What the rules look at in a group of a plan, and where a contour did not close. */
export function makingPlace(
  making: Making,
  whole: PlanPlace = planPlace(making),
): {
  readonly place: MakingPlace;
  readonly gap: Point | undefined;
} {
  const { around, undercut, unopened } = whole;
  const { land, gap } = landOf(making);
  const etched = making.plan.regions.filter(({ level }) => level > 0);
  const levelAcross = levelsAcross(whole.plan, etched);
  let known: readonly NeckPlace[] | undefined;
  const necks = (): readonly NeckPlace[] => {
    known ??= neckPlaces({ ...making, undercut, unopened, levelAcross });
    return known;
  };
  return { place: { ...making, around, undercut, unopened, levelAcross, land, necks }, gap };
}

/** The surface that is left under a front. */
export function landOf({ kit }: Pick<Making, 'kit'>): Pick<MakingPlace, 'land'> & {
  readonly gap: Point | undefined;
} {
  const { loops, gap } = contourLoops(kit, { depth: 0 });
  return { land: partAtTouches(loops.map(reverseSpans), TOUCHING), gap };
}
