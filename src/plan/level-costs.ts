/** What one stage fewer or more than the fewest would cost in tolerance, region by region (M4.2). */
import { assert } from '#geometry/assert.ts';
import { bandOf, nearestLevel } from './choose-levels.ts';
import type { LevelChoice, PlannedRegion } from './etch-plan.ts';
import { bestLevels, fewestLevels } from './fewest-levels.ts';

type AskedRegion = Pick<PlannedRegion, 'id' | 'asked'>;

/** The choices of one fewer, the fewest and one more stage, rising; those that there are. */
export function levelCosts(
  regions: readonly AskedRegion[],
  locked: readonly number[] = [],
): readonly LevelChoice[] {
  const etched = regions.filter(({ asked }) => asked.depth > 0);
  const bands = etched.map(({ asked }) => bandOf(asked));
  const fewest = etched.length === 0 ? undefined : fewestLevels(bands, locked)?.levels.length;
  if (fewest === undefined) return [];
  const distinct = new Set(bands.map(({ low }) => low)).size;
  return [fewest - 1, fewest, fewest + 1].flatMap((stages) => {
    // As many levels as depths meet every depth: more would be stages for nothing.
    if (stages < 1 || (stages > fewest && stages > Math.max(distinct, locked.length))) return [];
    const best = bestLevels(bands, { count: stages, locked });
    return best === undefined || best.levels.length === 0
      ? []
      : [choiceOf(etched, { stages, levels: best.levels })];
  });
}

function choiceOf(
  etched: readonly AskedRegion[],
  { stages, levels }: { readonly stages: number; readonly levels: readonly number[] },
): LevelChoice {
  const regions = etched.map(({ id, asked }) => {
    const nearest = nearestLevel(levels, asked);
    assert(nearest !== undefined, 'a choice has a level');
    return { id, ...nearest };
  });
  return {
    stages,
    levels: [...levels].sort((a, b) => b - a),
    worstShare: regions.reduce((worst, { share }) => Math.max(worst, share), 0),
    regions,
  };
}
