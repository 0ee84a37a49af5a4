/** The plan as the ladder shows it: a level for each level, with what lies on it. */
import { ROUNDING } from '#geometry/tolerances.ts';
import type { ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';

export interface PlannedLevel {
  readonly stage: ShownStage;
  /** Regions that end on this level. */
  readonly regions: readonly ShownRegion[];
  /** mm² */
  readonly area: number;
  /** Depths that every region of the level accepts; empty (from > to) when there is none. */
  readonly accepted: { readonly from: number; readonly to: number };
}

/** Deepest first, whichever way the stages run. */
export function plannedLevelsOf(plan: ShownPlan): PlannedLevel[] {
  const deepestFirst = [...plan.stages].sort((a, b) => b.level - a.level);
  return deepestFirst.map((stage) => {
    const ids = new Set(stage.regions);
    const regions = plan.regions.filter((region) => ids.has(region.id));
    return {
      stage,
      regions,
      area: regions.reduce((sum, region) => sum + region.area, 0),
      accepted: {
        from: regions.reduce(
          (most, { asked }) => Math.max(most, asked.depth - asked.minus),
          Number.NEGATIVE_INFINITY,
        ),
        to: regions.reduce(
          (least, { asked }) => Math.min(least, asked.depth + asked.plus),
          Number.POSITIVE_INFINITY,
        ),
      },
    };
  });
}

export function isAccepted({ accepted }: PlannedLevel, level: number): boolean {
  return level >= accepted.from - ROUNDING && level <= accepted.to + ROUNDING;
}
