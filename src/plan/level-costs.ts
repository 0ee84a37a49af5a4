/** What one stage fewer or more than the fewest would cost in tolerance, region by region (M4.2). */
import { assert } from '#geometry/assert.ts';
import type { LevelChoice } from '#job/formats/plan-file.ts';
import type { RegionId } from '#part/part.ts';
import { bandShare, bestLevels, type DepthBand, fewestLevels } from './fewest-levels.ts';

/** The choices of one fewer, the fewest and one more stage, rising; those that there are. */
export function levelCosts(
  bandOf: ReadonlyMap<RegionId, DepthBand>,
  locked: readonly number[] = [],
): readonly LevelChoice[] {
  const bands = [...bandOf.values()];
  const fewest = bands.length === 0 ? undefined : fewestLevels(bands, locked)?.levels.length;
  if (fewest === undefined) return [];
  return [fewest - 1, fewest, fewest + 1].flatMap((stages) => {
    if (stages < 1) return [];
    const best = bestLevels(bands, { count: stages, locked });
    // With fewer levels the same share is reached: what is asked has no use for so many.
    if (best === undefined || best.levels.length < stages) return [];
    return [choiceOf(bandOf, { stages, levels: best.levels })];
  });
}

function choiceOf(
  bandOf: ReadonlyMap<RegionId, DepthBand>,
  { stages, levels }: { readonly stages: number; readonly levels: readonly number[] },
): LevelChoice {
  const regions = [...bandOf].map(([id, band]) => {
    // A taper may run out to land, which costs no stage.
    const worst = bandShare(band.high > band.low ? [0, ...levels] : levels, band);
    assert(worst !== undefined, 'a choice has a level');
    return { id, level: worst.level, share: worst.share };
  });
  return {
    stages,
    levels: [...levels].sort((a, b) => b - a),
    worstShare: regions.reduce((worst, { share }) => Math.max(worst, share), 0),
    regions,
  };
}
