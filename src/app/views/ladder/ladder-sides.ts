/** The ladder of a part by its faces: which levels each has, what stages take from it, and where its depths stand between both surfaces. */
import { type PlannedLevel, plannedLevelsOf } from '#app/state/planned-levels.ts';
import type { PlanFaces } from '#app/worker/plan-faces.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';

export interface LadderSide {
  readonly face: SheetSide;
  /** Its levels can be moved. */
  readonly isOnShow: boolean;
  /** Deepest first. */
  readonly levels: readonly SideLevel[];
  /** What each stage takes of the deepest floor, deepest first. */
  readonly bands: readonly StageBand[];
  /** Depth of the deepest floor; 0 where there is none. */
  readonly deepest: number;
}

export interface SideLevel extends PlannedLevel {
  /** Everything on this level is cut through: it leaves no floor. */
  readonly isCut: boolean;
}

export interface StageBand {
  readonly stage: ShownStage;
  readonly from: number;
  readonly to: number;
}

/** Of a part of one face it is that face with all stages, whatever lies on them. */
export function ladderSides(
  plan: ShownPlan | undefined,
  faces: PlanFaces | undefined,
): readonly LadderSide[] {
  if (faces?.far === undefined)
    return [sideOf({ face: 'near', isOnShow: true }, plan === undefined ? [] : withCuts(plan, []))];
  const { near, far, between } = faces;
  const cut = (between?.cuts ?? []).map(({ id }) => id);
  const [nears, fars] = [withCuts(near, cut), withCuts(far, cut)];
  const isFar = plan === far;
  return [
    sideOf({ face: 'near', isOnShow: !isFar }, isFar ? nears : acceptedByBoth(nears, fars), true),
    sideOf({ face: 'far', isOnShow: isFar }, isFar ? acceptedByBoth(fars, nears) : fars, true),
  ];
}

function withCuts(plan: ShownPlan, cut: readonly string[]): SideLevel[] {
  return plannedLevelsOf(plan).map((planned) => ({
    ...planned,
    isCut: planned.regions.length > 0 && planned.regions.every(({ id }) => cut.includes(id)),
  }));
}

/** A level is one for both faces: moved, it moves on either. */
function acceptedByBoth(levels: readonly SideLevel[], others: readonly SideLevel[]): SideLevel[] {
  return levels.map((level) => {
    const other = others.find(({ stage }) => stage.number === level.stage.number)?.accepted;
    if (other === undefined) return level;
    const { from, to } = level.accepted;
    return { ...level, accepted: { from: Math.max(from, other.from), to: Math.min(to, other.to) } };
  });
}

function sideOf(
  side: Pick<LadderSide, 'face' | 'isOnShow'>,
  all: readonly SideLevel[],
  ownAlone = false,
): LadderSide {
  const levels = ownAlone ? all.filter(({ regions }) => regions.length > 0) : all;
  const deepest = levels.find(({ isCut }) => !isCut)?.stage.level ?? 0;
  // What lies on the other face's levels is taken here in the same minutes.
  const bands = all.flatMap(({ stage }, index): StageBand[] =>
    stage.level > deepest + ROUNDING
      ? []
      : [{ stage, from: all[index + 1]?.stage.level ?? 0, to: stage.level }],
  );
  return { ...side, levels, bands, deepest };
}

/** Deepest floors that would run into each other to scale: each face then has half of the bar's width. */
export function isShared([near, far]: readonly LadderSide[], thickness: number): boolean {
  if (near === undefined || far === undefined) return false;
  return near.deepest + far.deepest > thickness - ROUNDING;
}

/** How far below the near face a depth of either lies. */
export function belowNear(face: SheetSide, depth: number, thickness: number): number {
  return face === 'near' ? depth : thickness - depth;
}
