/**
 * What the doubt of the etch factor does to a plan whose lines are cut (M6.7): the front is made again with the same openings and the factor
 * at either end of its doubt, and land and floors are judged on it by the rules that judge the plan. Reported is what those rules find there
 * and do not find of the plan itself. Cost: the border of the land, twice, and the floors that are near a limit.
 */
import type { EtchFactor } from '#bath/etch-factor.ts';
import { type Finding, type FindingCode, finding } from '#findings/finding.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { withFactor } from '#front/front-index.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import { assert, itemAt, valueAt } from '#geometry/assert.ts';
import { spansLength } from '#geometry/span.ts';
import type { PlannedRegion } from '#plan/etch-plan.ts';
import { floors } from './check-floor.ts';
import { landWidth } from './check-land.ts';
import { factorOff } from './line-causes.ts';
import type { MakingPlace, WholePlan } from './making.ts';
import { LEAST_FLOOR_SHARE } from './making-limits.ts';
import { landOf } from './making-place.ts';

/** What land and floors come to at an end of the doubt. */
interface AtEnd {
  readonly land: ReturnType<typeof landWidth.find>;
  readonly floor: ReturnType<typeof floors.find>;
}

/** At the upper end of the doubt and at the lower one. */
export type Doubted = readonly [AtEnd, AtEnd];

export const factorDoubt = { find, report } as const;

function find(making: MakingPlace): readonly Doubted[] {
  const { factorSpread } = making.job.process;
  if (factorSpread === 0) return [];
  const [upper, lower] = [doubted(making, factorSpread), doubted(making, -factorSpread)];
  const ends: Doubted = [foundIn(upper), foundIn(lower)];
  return ends.some(({ land, floor }) => land.length > 0 || floor.length > 0) ? [ends] : [];
}

function foundIn(making: MakingPlace): AtEnd {
  return { land: landWidth.find(making), floor: floors.find(making) };
}

/**
 * Finding: `factor-doubt-matters`, one for each rule that is broken at an end of the doubt, its worst place first.
 * @param planned what the same rules, among others, find of the plan itself
 */
function report(found: readonly Doubted[], whole: WholePlan, planned: readonly Finding[]): Finding[] {
  const { factorSpread } = whole.job.process;
  const known = new Set(planned.map(keyOf));
  const broken = [factorSpread, -factorSpread].flatMap((by, end) => {
    const here = found.map((ends) => itemAt(ends, end));
    const judged = [
      ...landWidth.report(
        here.flatMap(({ land }) => land),
        whole,
      ),
      ...floors.report(
        here.flatMap(({ floor }) => floor),
        whole,
      ),
    ];
    return judged.flatMap((each) => (known.has(keyOf(each)) ? [] : [{ each, by }]));
  });
  return codesOf(broken).flatMap((code) => {
    const same = broken.filter(({ each }) => each.code === code);
    const { each, by } = itemAt(same, 0);
    const regions = [...new Set(same.flatMap((one) => one.each.place.regions ?? []))].sort();
    const at = each.place.at === undefined ? {} : { at: each.place.at };
    const facts = { ...factsOf(each), by, factor: factorOf(whole.plan.etchFactor), places: same.length };
    return [finding('factor-doubt-matters', facts, { regions, ...at })];
  });
}

interface Broken {
  readonly each: Finding;
  readonly by: number;
}

function codesOf(broken: readonly Broken[]): FindingCode[] {
  return [...new Set(broken.map(({ each }) => each.code))];
}

/** The same openings, etched with another factor. */
function doubted(making: MakingPlace, by: number): MakingPlace {
  const { index, borders } = making.kit;
  const kit = makeContourKit(withFactor(index, factorOff(index.front.etchFactor, by)), borders);
  const reached = new Map([...making.reached, ...reachedRegions(kit, inDoubt(making, by))]);
  return { ...making, kit, land: landOf({ kit }).land, reached };
}

/**
 * Regions whose floor may pass a limit that the plan's own floor, which stands in `reached`, keeps. One that keeps a share is not lost
 * either, and of a neck only the depth is reported.
 */
function inDoubt({ plan, reached }: MakingPlace, by: number): PlannedRegion[] {
  const deepest = Math.max(...plan.stages.map(({ level }) => level));
  return plan.regions.filter(({ id, level, area, loops }) => {
    const spare = (valueAt(reached, id).share - LEAST_FLOOR_SHARE.value) * area;
    return level > 0 && spare < mostLost({ loops, deepest, by });
  });
}

/**
 * mm² of floor that another factor takes from a region at most: a contour of the front moves by no more than `by` times the level that it
 * belongs to, and what bounds a floor is an opening's parallel from within or a deeper one's from without, each no longer than the
 * region's own border and a turn about what it goes round; twice that border is more than both.
 */
function mostLost({
  loops,
  deepest,
  by,
}: {
  loops: PlannedRegion['loops'];
  deepest: number;
  by: number;
}): number {
  return 2 * Math.abs(by) * deepest * spansLength(loops.flat());
}

function keyOf({ code, place: { regions = [] } }: Finding): string {
  return [code, ...regions].join(' ');
}

function factorOf(table: EtchFactor): number {
  return itemAt(table, 0)[1];
}

/** The width or share that is left, and what is asked of it. */
function factsOf(each: Finding) {
  switch (each.code) {
    case 'land-too-narrow':
      return { of: 'land', value: each.facts.width, limit: each.facts.limit } as const;
    case 'floor-not-reached':
      return { of: 'neck', value: each.facts.depth, limit: each.facts.least } as const;
    case 'floor-mostly-wall':
      return { of: 'share', value: each.facts.share, limit: each.facts.limit } as const;
    default:
      assert(each.code === 'floor-lost', 'land and floors are judged by four codes');
      return { of: 'floor', value: each.facts.shallowest, limit: each.facts.most } as const;
  }
}
