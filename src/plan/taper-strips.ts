/**
 * A tapered floor made in steps (M4.4, M4.5): levels for all depths that it passes through, shared with every other region,
 * and the region cut square to the slope into as few strips as keep the share of tolerance that these levels reach.
 * A strip is a region like any other: it asks for the depths that serve all of it.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { extentAlong } from '#geometry/loops/cut-across.ts';
import { pointAlong } from '#geometry/span.ts';
import { NARROWEST_STRIP, ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { Asked, Part, Region, RegionId } from '#part/part.ts';
import { type RegionCuts, type SplitPart, splitRegions } from '#part/split-regions.ts';
import { allowance, type Undercut, undercutOf } from './allowance.ts';
import { bandOf, isListed, leftToLevels, levelsByRule } from './choose-levels.ts';
import type { TaperAsked } from './etch-plan.ts';
import { bandShare, type DepthBand } from './fewest-levels.ts';
import { settleEnds } from './settle-ends.ts';
import { coverBand, cutsBetween, type StripCut } from './strip-cuts.ts';
import { type TaperProfile, taperProfile } from './taper-profile.ts';

export interface Strips {
  readonly part: Part;
  /** What is asked of each region and strip, flat floors all. */
  readonly asked: ReadonlyMap<RegionId, Asked>;
  /** Undefined without tapers: the job's own rule then chooses. */
  readonly levels: readonly number[] | undefined;
  /** Level by strip; 0 where land serves it. */
  readonly levelOf: ReadonlyMap<RegionId, number>;
  /** What the drawing asks of each strip. */
  readonly taperOf: ReadonlyMap<RegionId, TaperAsked>;
  /** What levels must serve, by region of the drawing: etched ones only. */
  readonly bands: ReadonlyMap<RegionId, DepthBand>;
  readonly findings: readonly Finding[];
}

/** The last part that was cut, so that a change elsewhere does not arrange the linework again. */
export interface SplitMemory {
  split?: { readonly part: Part; readonly key: string; readonly made: SplitPart };
}

interface TaperedRegion {
  readonly region: Region;
  readonly asked: Asked;
  readonly profile: TaperProfile;
}

interface SteppedRegion extends TaperedRegion {
  /** Levels of its strips, rising. */
  readonly levels: readonly number[];
  readonly cuts: readonly StripCut[];
}

/**
 * Findings: `sheet-thinner-than-asked`, `taper-without-tolerance`, `taper-directions-differ`, `taper-too-fine`, `taper-too-steep`,
 * `level-missing`.
 */
export function stripTapers(
  input: { readonly part: Part; readonly asked: ReadonlyMap<RegionId, Asked>; readonly job: Job },
  memory: SplitMemory,
  /** What the same levels must serve besides, on the other face. */
  beside: readonly DepthBand[] = [],
): Strips {
  const { part, job } = input;
  const { tapered, asked, findings } = profilesOf(part, input.asked);
  const bands = bandsAsked(tapered, asked);
  const levelOf = new Map<RegionId, number>();
  const taperOf = new Map<RegionId, TaperAsked>();
  if (tapered.length === 0) return { part, asked, levels: undefined, levelOf, taperOf, bands, findings };
  const levels = levelsByRule([...bands.values(), ...beside], job);
  const undercut = undercutOf(job.process, levels);
  const stepped = tapered.flatMap((each): SteppedRegion[] => {
    const band = { low: each.profile.low, high: each.profile.high, ...toleranceOf(each.asked) };
    const cover = coverBand(band, [0, ...levels]);
    if (cover === undefined) {
      const depth = deepestUnserved(band, [0, ...levels]);
      const facts = { depth, ...toleranceOf(each.asked), listed: isListed(job) };
      findings.push(finding('level-missing', facts, placeOf(each.region)));
      return [];
    }
    const cuts = cutsBetween(each.profile, cover, { ...band, sliver: NARROWEST_STRIP });
    const leastWidth = (cut: StripCut, level: number) =>
      leastEndWidth(cut, level, { undercut, rules: job.rules });
    return [{ ...each, levels: cover, cuts: settleEnds(cuts, each.profile, { ...band, leastWidth }) }];
  });
  findings.push(...stepped.flatMap((each) => tooSteep(each, undercut)));
  const { part: cut, partsOf } = splitFor(part, stepped, memory);
  for (const each of stepped) {
    for (const strip of partsOf.get(each.region.id) ??
      cut.regions.filter(({ id }) => id === each.region.id)) {
      const taper = taperOver(each, strip);
      const { level, asked: own } = stripAsked(each.levels, taper);
      taperOf.set(strip.id, taper);
      levelOf.set(strip.id, level);
      asked.set(strip.id, { ...own, ...manner(each.asked) });
    }
  }
  return { part: cut, asked, levels, levelOf, taperOf, bands, findings };
}

/** Depths that levels must serve on a face, by region. */
export function depthBands(
  part: Part,
  asked: ReadonlyMap<RegionId, Asked>,
): ReadonlyMap<RegionId, DepthBand> {
  const read = profilesOf(part, asked);
  return bandsAsked(read.tapered, read.asked);
}

function bandsAsked(
  tapered: readonly TaperedRegion[],
  flat: ReadonlyMap<RegionId, Asked>,
): Map<RegionId, DepthBand> {
  const bands = new Map<RegionId, DepthBand>();
  const known = new Map<Asked, DepthBand>();
  for (const [id, each] of flat) {
    if (each.depth <= 0) continue;
    const band = known.get(each) ?? bandOf(each);
    known.set(each, band);
    bands.set(id, band);
  }
  for (const { region, asked, profile } of tapered) {
    if (profile.high <= asked.minus) continue;
    bands.set(region.id, { low: profile.low, high: profile.high, ...leftToLevels(asked) });
  }
  return bands;
}

/** A piece that peels, and the walls: to land at the region's end, and to the neighbour where that is shallower. */
function leastEndWidth(
  cut: StripCut,
  level: number,
  { undercut, rules }: { readonly undercut: Undercut; readonly rules: Job['rules'] },
): number {
  if (level === 0) return rules.minLandWidth;
  const toNeighbour = level === cut.deep ? allowance(undercut, { level, depth: cut.shallow }) : 0;
  return rules.minPieceWidth + allowance(undercut, { level, depth: 0 }) + toNeighbour;
}

/**
 * Strips of one taper, and of all together: our own choice. A plan of fifty stages is run by nobody; its lines and volumes take ten
 * seconds of processor time, those of eighty strips forty-five (measured).
 */
const MOST_STRIPS = { each: 50, all: 300 };

/** Few enough strips: about one for each plus and minus together of what the depth changes. */
function fineness(tapered: readonly TaperedRegion[]): {
  readonly kept: TaperedRegion[];
  readonly findings: Finding[];
} {
  const kept: TaperedRegion[] = [];
  const findings: Finding[] = [];
  let all = 0;
  for (const each of tapered) {
    const { profile, asked, region } = each;
    const tolerance = asked.plus + asked.minus;
    const strips = Math.ceil((profile.high - profile.low) / tolerance);
    const isTooMany = strips > MOST_STRIPS.each || all + strips > MOST_STRIPS.all;
    if (!isTooMany) {
      all += strips;
      kept.push(each);
      continue;
    }
    const [found, limit] =
      strips > MOST_STRIPS.each ? [strips, MOST_STRIPS.each] : [all + strips, MOST_STRIPS.all];
    const facts = {
      strips: found,
      limit,
      tolerance,
      among: limit === MOST_STRIPS.each ? 1 : kept.length + 1,
    };
    findings.push(finding('taper-too-fine', facts, placeOf(region)));
  }
  return { kept, findings };
}

/** What is asked, flat floors and tapers apart; a taper that is flat over its region is a flat floor. */
function profilesOf(
  part: Part,
  asked: ReadonlyMap<RegionId, Asked>,
): { tapered: TaperedRegion[]; asked: Map<RegionId, Asked>; findings: Finding[] } {
  const flat = new Map<RegionId, Asked>();
  const tapered: TaperedRegion[] = [];
  const findings: Finding[] = [];
  for (const region of part.regions) {
    const each = asked.get(region.id);
    if (each === undefined) continue;
    if (each.tapers === undefined) {
      flat.set(region.id, each);
      continue;
    }
    const profile = taperProfile(each.tapers, region.loops);
    if (profile === undefined) findings.push(finding('taper-directions-differ', {}, placeOf(region)));
    else if (profile.low + each.plus < -ROUNDING) findings.push(thinnerThanAsked(region, profile, each.plus));
    else if (profile.low === profile.high)
      flat.set(region.id, {
        depth: Math.max(0, profile.low),
        ...toleranceOf(each),
        ...manner(each),
      });
    else if (each.plus + each.minus === 0)
      findings.push(
        finding('taper-without-tolerance', { low: profile.low, high: profile.high }, placeOf(region)),
      );
    else tapered.push({ region, asked: each, profile });
  }
  const { kept, findings: tooFine } = fineness(tapered);
  return { tapered: kept, asked: flat, findings: [...findings, ...tooFine] };
}

/** Metal that a tapered sheet does not have; reported at the end of the region that lacks most. */
function thinnerThanAsked(
  region: Region,
  { low, knots, depthAt, frame }: TaperProfile,
  plus: number,
): Finding {
  const worst = knots.find((knot) => depthAt(knot) === low) ?? frame.from;
  const inside = Math.min(frame.to - NARROWEST_STRIP, Math.max(frame.from + NARROWEST_STRIP, worst));
  const [cut] = frame.cutsAt(inside);
  const at = cut === undefined ? region.label : pointAlong(cut, 0.5);
  return finding('sheet-thinner-than-asked', { lacks: -low, plus }, { at, regions: [region.id] });
}

function toleranceOf({ plus, minus }: Asked): { readonly plus: number; readonly minus: number } {
  return { plus, minus };
}

function manner({ asThickness, isToleranceUsual }: Asked): Pick<Asked, 'asThickness' | 'isToleranceUsual'> {
  return {
    ...(asThickness === undefined ? {} : { asThickness }),
    ...(isToleranceUsual === undefined ? {} : { isToleranceUsual }),
  };
}

function placeOf({ id, label }: Region) {
  return { at: label, regions: [id] };
}

/** The depth of a band that is worst served. */
function deepestUnserved(band: DepthBand, levels: readonly number[]): number {
  return bandShare(levels, band)?.depth ?? band.high;
}

function splitFor(part: Part, stepped: readonly SteppedRegion[], memory: SplitMemory): SplitPart {
  const key = stepped
    .map(({ region, cuts }) => `${region.id}:${cuts.map(({ at }) => at).join(' ')}`)
    .join(';');
  if (memory.split?.part === part && memory.split.key === key) return memory.split.made;
  const cutsOf = new Map(
    stepped.map(({ region, profile, cuts }): [RegionId, RegionCuts] => [
      region.id,
      {
        cuts: cuts.flatMap(({ at }) => profile.frame.cutsAt(at)),
        rank: (loops) => {
          const { low, high } = depthsOver(profile, loops);
          return -(low + high);
        },
      },
    ]),
  );
  const made = splitRegions(part, cutsOf);
  memory.split = { part, key, made };
  return made;
}

/** Least and greatest depth that the profile has over loops inside its region. */
function depthsOver(
  { direction, depthAt, knots }: TaperProfile,
  loops: Region['loops'],
): { readonly low: number; readonly high: number } {
  const { from, to } = extentAlong(loops, direction);
  const depths = [from, ...knots.filter((knot) => knot > from && knot < to), to].map(depthAt);
  return { low: Math.min(...depths), high: Math.max(...depths) };
}

function taperOver(
  { profile, asked: { tapers = [], minus, plus } }: SteppedRegion,
  strip: Region,
): TaperAsked {
  return { tapers, ...depthsOver(profile, strip.loops), plus, minus };
}

/** The strip's level, and the depths that hold the tolerance everywhere in it. */
function stripAsked(
  levels: readonly number[],
  { low, high, minus, plus }: TaperAsked,
): { readonly level: number; readonly asked: Asked } {
  const served = levels.map((level) => ({
    level,
    share: bandShare([level], { low, high, minus, plus })?.share ?? 0,
  }));
  const { level } = served.reduce((best, each) => (each.share < best.share ? each : best));
  if (level === 0) return { level, asked: { depth: 0, plus: Math.max(0, low + plus), minus: 0 } };
  const least = high - minus;
  const most = low + plus;
  const depth = (low + high) / 2;
  return { level, asked: { depth, plus: Math.max(0, most - depth), minus: Math.max(0, depth - least) } };
}

/** A strip that the walls towards its shallower neighbours take whole: the worst of the region, with what would help. */
function tooSteep({ region, profile, asked, cuts }: SteppedRegion, undercut: Undercut): Finding[] {
  const bounds = [
    { at: profile.frame.from, deepSide: 'after' as const, allowance: 0, level: 0 },
    ...cuts.map(({ at, deep, shallow, deepSide }) => ({
      at,
      deepSide,
      level: deep,
      allowance: allowance(undercut, { level: deep, depth: shallow }),
    })),
    { at: profile.frame.to, deepSide: 'before' as const, allowance: 0, level: 0 },
  ];
  let worst: { width: number; needed: number; level: number } | undefined;
  for (let index = 0; index + 1 < bounds.length; index++) {
    const from = itemAt(bounds, index);
    const to = itemAt(bounds, index + 1);
    const width = to.at - from.at;
    const needed =
      (from.deepSide === 'after' ? from.allowance : 0) + (to.deepSide === 'before' ? to.allowance : 0);
    if (needed < width || needed === 0) continue;
    if (worst === undefined || needed - width > worst.needed - worst.width)
      worst = { width, needed, level: Math.max(from.level, to.level) };
  }
  if (worst === undefined) return [];
  const facts = { ...worst, tolerance: asked.plus + asked.minus, rise: steepest(profile) };
  return [finding('taper-too-steep', facts, placeOf(region))];
}

/** Greatest change of depth for each mm. */
function steepest({ knots, depthAt }: TaperProfile): number {
  const rises = knots.slice(1).map((knot, index) => {
    const before = itemAt(knots, index);
    return knot === before ? 0 : Math.abs(depthAt(knot) - depthAt(before)) / (knot - before);
  });
  return Math.max(0, ...rises);
}
