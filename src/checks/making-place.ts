/** From a plan and its front to what the rules about making it look at. */
import { contourLoops } from '#front/contours/contour-loops.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { reverseSpans } from '#geometry/span.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import { undercutOf } from '#plan/allowance.ts';
import type { Making, MakingPlace } from './making.ts';
import { lookAround } from './surroundings.ts';

/** What the rules look at, and where a contour did not close. */
export function makingPlace(making: Making): {
  readonly place: MakingPlace;
  readonly gap: Point | undefined;
} {
  const { plan, kit } = making;
  const missing = plan.findings.filter(({ code }) => code === 'opening-missing');
  const { loops: surface, gap } = contourLoops(kit, { depth: 0 });
  const levels = plan.stages.map(({ level }) => level);
  const place: MakingPlace = {
    ...making,
    around: lookAround(plan),
    undercut: undercutOf(making.job.process, levels),
    land: partAtTouches(surface.map(reverseSpans), TOUCHING),
    unopened: new Set(missing.flatMap(({ place: { regions } }) => regions ?? [])),
  };
  return { place, gap };
}
