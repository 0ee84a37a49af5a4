/** Everything about making the plan: each rule in a file of its own, in the order of the work. Sorting is for the caller. */

import { type Finding, finding } from '#findings/finding.ts';
import { tallied } from '#findings/finding-tally.ts';
import type { Point } from '#geometry/point.ts';
import { checkCorners } from './check-corners.ts';
import { checkCutDepth } from './check-cut-depth.ts';
import { checkFactorDoubt } from './check-factor-doubt.ts';
import { checkFloor } from './check-floor.ts';
import { checkLand } from './check-land.ts';
import { checkLandEnds } from './check-land-ends.ts';
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
import { makingPlace } from './making-place.ts';

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
  checkLandEnds,
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
  const found = CHECKS.map((check) => check(place));
  // The rules share no code, so that each may be cut short by itself.
  return [...unsure, ...found.flatMap(tallied), ...checkFactorDoubt(place, found.flat())];
}

function isGap(gap: Point | undefined): gap is Point {
  return gap !== undefined;
}
