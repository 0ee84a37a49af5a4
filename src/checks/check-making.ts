/** Everything about making the plan: each rule in a file of its own, in the order of the work. Sorting is for the caller. */

import { type Finding, finding } from '#findings/finding.ts';
import { tallied } from '#findings/finding-tally.ts';
import { contourLoops } from '#front/contours/contour-loops.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { reverseSpans } from '#geometry/span.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import { undercutOf } from '#plan/allowance.ts';
import { checkCorners } from './check-corners.ts';
import { checkCutDepth } from './check-cut-depth.ts';
import { checkFloor } from './check-floor.ts';
import { checkLand } from './check-land.ts';
import { checkLineSpacing } from './check-line-spacing.ts';
import { checkMaskantIslands } from './check-maskant-islands.ts';
import { checkMaskantStrips } from './check-maskant-strips.ts';
import { checkOverEtch } from './check-over-etch.ts';
import { checkOverhang } from './check-overhang.ts';
import { checkPieceParts } from './check-piece-parts.ts';
import { checkPieceWidth } from './check-piece-width.ts';
import { checkSheetEdge } from './check-sheet-edge.ts';
import { checkStep } from './check-step.ts';
import { checkWeb } from './check-web.ts';
import type { Making, MakingPlace } from './making.ts';
import { lookAround } from './surroundings.ts';

const CHECKS: readonly ((making: MakingPlace) => readonly Finding[])[] = [
  checkStep,
  checkCutDepth,
  checkWeb,
  checkSheetEdge,
  checkLineSpacing,
  checkPieceWidth,
  checkPieceParts,
  checkMaskantStrips,
  checkMaskantIslands,
  checkOverhang,
  checkLand,
  checkCorners,
  checkFloor,
  checkOverEtch,
];

/** Well under a second for 800 nested pockets. A plan without a stage has nothing to check. */
export function checkMaking(making: Making): Finding[] {
  const { plan } = making;
  if (plan.stages.length === 0) return [];
  const { place, gap } = makingPlace(making);
  const open = [gap, ...[...making.reached.values()].map((region) => region.gap)].find(isGap);
  const unsure = open === undefined ? [] : [finding('contour-not-closed', { of: 'floors' }, { at: open })];
  // The rules share no code, so that each may be cut short by itself.
  return [...unsure, ...CHECKS.flatMap((check) => tallied(check(place)))];
}

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

function isGap(gap: Point | undefined): gap is Point {
  return gap !== undefined;
}
