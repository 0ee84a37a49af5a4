/** What one stage fewer or more than the fewest would cost in tolerance, region by region (M4.2). */
import { assert } from '#geometry/assert.ts';
import type { LevelChoice } from '#job/formats/plan-file.ts';
import type { RegionId } from '#part/part.ts';
import { bandShare, bestLevels, type DepthBand, fewestLevels } from './fewest-levels.ts';

/**
 * The choices of one fewer, the fewest and one more stage, rising; those that there are. Levels are chosen within what is left to them,
 * as the plan's own; where so few can't keep to that, for the least share of what is asked. Shares are of what is asked.
 * @param leftOf what tolerances leave to levels once the run has its room (M8.2); left out where that is all that is asked
 */
export function levelCosts(
  bandOf: ReadonlyMap<RegionId, DepthBand>,
  {
    locked = [],
    leftOf = bandOf,
  }: {
    readonly locked?: readonly number[] | undefined;
    readonly leftOf?: ReadonlyMap<RegionId, DepthBand>;
  } = {},
): readonly LevelChoice[] {
  const [asked, left] = [[...bandOf.values()], [...leftOf.values()]];
  const fewest = left.length === 0 ? undefined : fewestLevels(left, locked)?.levels.length;
  if (fewest === undefined) return [];
  return [fewest - 1, fewest, fewest + 1].flatMap((stages) => {
    if (stages < 1) return [];
    const best = bestLevels(stages < fewest ? asked : left, { count: stages, locked });
    // With fewer levels the same share is reached: what is asked has no use for so many.
    if (best === undefined || best.levels.length < stages) return [];
    return [choiceOf(bandOf, { stages, levels: best.levels })];
  });
}

function choiceOf(
  bandOf: ReadonlyMap<RegionId, DepthBand>,
  { stages, levels }: { readonly stages: number; readonly levels: readonly number[] },
): LevelChoice {
  const known = new Map<DepthBand, Pick<LevelChoice['regions'][number], 'level' | 'share'>>();
  const regions = [...bandOf].map(([id, band]) => {
    const best = known.get(band) ?? worstIn(band, levels);
    known.set(band, best);
    return { id, ...best };
  });
  return {
    stages,
    levels: [...levels].sort((a, b) => b - a),
    worstShare: regions.reduce((worst, { share }) => Math.max(worst, share), 0),
    regions,
  };
}

function worstIn(
  band: DepthBand,
  levels: readonly number[],
): Pick<LevelChoice['regions'][number], 'level' | 'share'> {
  // A taper may run out to land, which costs no stage.
  const worst = bandShare(band.high > band.low ? [0, ...levels] : levels, band);
  assert(worst !== undefined, 'a choice has a level');
  return { level: worst.level, share: worst.share };
}
