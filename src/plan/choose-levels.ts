/** Which depths a plan really etches to, and which region takes which (M4). */
import { type Finding, finding } from '#findings/finding.ts';
import { ROUNDING, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { Asked, RegionId } from '#part/part.ts';
import { bandShare, type DepthBand, fewestLevels } from './fewest-levels.ts';
import { mergeNearLevels, type NearLevels } from './near-levels.ts';

export interface Levels {
  /** Level by region; land has 0 and stands here too. */
  readonly ofRegion: ReadonlyMap<RegionId, number>;
  readonly findings: readonly Finding[];
}

export type LevelRule = Pick<Job, 'levels' | 'lockedLevels'>;

/** Where tapers were cut into strips: the levels chosen for tapers and flat floors together, and which strip has which. */
export interface StripLevels {
  readonly levels: readonly number[] | undefined;
  readonly levelOf: ReadonlyMap<RegionId, number>;
}

const NO_STRIPS: StripLevels = { levels: undefined, levelOf: new Map() };

/** Findings: `level-missing`, `level-unused`. Strips of tapers have their levels already. */
export function chooseLevels(
  asked: ReadonlyMap<RegionId, Asked>,
  rule: LevelRule,
  strips: StripLevels = NO_STRIPS,
): Levels {
  const bands = [...new Set(asked.values())].filter(({ depth }) => depth > 0).map(bandOf);
  const levels = strips.levels ?? levelsByRule(bands, rule);
  const ofRegion = new Map<RegionId, number>();
  const findings: Finding[] = [];
  const ofAsked = new Map<Asked, number | undefined>();
  for (const [id, each] of asked) {
    const known = each.depth <= 0 ? 0 : strips.levelOf.get(id);
    if (known !== undefined) {
      ofRegion.set(id, known);
      continue;
    }
    const level = ofAsked.has(each) ? ofAsked.get(each) : nearestWithin(levels, each);
    ofAsked.set(each, level);
    if (level === undefined) {
      const { depth, minus, plus } = each;
      findings.push(
        finding('level-missing', { depth, minus, plus, listed: isListed(rule) }, { regions: [id] }),
      );
    }
    // Without a level the region stays masked: under-etched metal can still be saved.
    ofRegion.set(id, level ?? 0);
  }
  // Where a level is missing the list as a whole is wrong: that is reported, and nothing beside it.
  if (findings.length === 0) findings.push(...unusedLevels(rule, bands, new Set(ofRegion.values())));
  return { ofRegion, findings };
}

/** Levels that the engineer wrote down and that come to no stage. */
function unusedLevels(
  { levels, lockedLevels = [] }: LevelRule,
  bands: readonly DepthBand[],
  used: ReadonlySet<number>,
): Finding[] {
  const { merged } = mergeNearLevels(namedLevels(bands, levels), bands);
  const isUsed = (level: number) =>
    used.has(level) || merged.some((each) => each.from <= level && level <= each.to && used.has(each.level));
  const unusedIn = (path: string) => (level: number, index: number) =>
    isUsed(level) ? [] : [finding('level-unused', { level }, { path: `${path}[${index}]` })];
  const listed = typeof levels === 'string' ? [] : levels;
  return [...listed.flatMap(unusedIn('levels')), ...lockedLevels.flatMap(unusedIn('lockedLevels'))];
}

/** Whether the engineer wrote the levels down. */
export function isListed({ levels }: LevelRule): boolean {
  return typeof levels !== 'string';
}

/** Every depth asked, as levels must serve it. */
export function bandOf(asked: Asked): DepthBand {
  return { low: asked.depth, high: asked.depth, ...leftToLevels(asked) };
}

/** Least share of a tolerance that is left to levels, whatever the run needs: our own choice. */
const LEAST_LEFT = 0.2;

/** The tolerance, less what is kept for the run. */
export function leftToLevels({ minus, plus, reserve = 0 }: Asked): Pick<DepthBand, 'minus' | 'plus'> {
  if (reserve === 0) return { minus, plus };
  const left = (side: number) => Math.max(LEAST_LEFT * side, side - reserve);
  return { minus: left(minus), plus: left(plus) };
}

/**
 * The levels of a rule. As drawn, each flat depth is a level, and tapers get the fewest more that serve them; a list is
 * taken as it stands; empty where no number of levels would do.
 */
export function levelsByRule(
  bands: readonly DepthBand[],
  { levels, lockedLevels = [] }: LevelRule,
): readonly number[] {
  if (levels === 'fewest') return fewestLevels(bands, lockedLevels)?.levels ?? [];
  const named = mergeNearLevels(namedLevels(bands, levels), bands).levels;
  return levels === 'as-drawn' ? (fewestLevels(bands, named)?.levels ?? named) : named;
}

/** Levels that job or drawing names one by one. */
function namedLevels(bands: readonly DepthBand[], levels: LevelRule['levels']): readonly number[] {
  if (levels === 'fewest') return [];
  return levels === 'as-drawn' ? bands.flatMap(({ low, high }) => (low === high ? [low] : [])) : levels;
}

/** Finding: `levels-too-near`, one for each group of levels that became one. */
export function nearLevelFindings(bands: readonly DepthBand[], { levels }: LevelRule): Finding[] {
  const { merged } = mergeNearLevels(namedLevels(bands, levels), bands);
  const isSeen = ({ from, to }: NearLevels) => to - from > ROUNDING;
  return merged
    .filter(isSeen)
    .map((each) => finding('levels-too-near', { ...each, limit: SCRIBE_ACCURACY }, { path: 'levels' }));
}

/** The level in the region's tolerance that uses the least share of it. */
function nearestWithin(levels: readonly number[], asked: Asked): number | undefined {
  const nearest = bandShare(levels, bandOf(asked));
  return nearest !== undefined && nearest.share < 1 + ROUNDING ? nearest.level : undefined;
}
