/**
 * What the doubt of the etch factor does to a plan whose lines are cut (M6.7): the front is made again with the same openings and the factor
 * at either end of its doubt, and land and floors are judged on it by the rules that judge the plan. Told is what those rules find there and
 * do not find of the plan itself. Cost: the measuring of all regions, twice.
 */
import type { EtchFactor } from '#bath/etch-factor.ts';
import { type Finding, type FindingCode, finding } from '#findings/finding.ts';
import { makeContourKit } from '#front/contours/contour-kit.ts';
import { indexFront } from '#front/front-index.ts';
import { reachedRegions } from '#front/reached-regions.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Job } from '#job/job.ts';
import { checkFloor } from './check-floor.ts';
import { checkLand } from './check-land.ts';
import { makingPlace } from './check-making.ts';
import { factorOff } from './line-causes.ts';
import type { Making, MakingPlace } from './making.ts';

const RULES: readonly ((making: MakingPlace) => readonly Finding[])[] = [checkLand, checkFloor];

/** Finding: `factor-doubt-matters`, one for each rule that is broken at an end of the doubt, its worst place first. */
export function checkFactorDoubt(making: Making): Finding[] {
  const { plan, job } = making;
  const { factorSpread } = job.process;
  if (factorSpread === 0 || plan.stages.length === 0) return [];
  const known = new Set(judged(making).map(keyOf));
  const broken = [factorSpread, -factorSpread].flatMap((by) =>
    judged(doubted(making, by)).flatMap((each) => (known.has(keyOf(each)) ? [] : [{ each, by }])),
  );
  return codesOf(broken).flatMap((code) => {
    const same = broken.filter(({ each }) => each.code === code);
    const { each, by } = itemAt(same, 0);
    const regions = [...new Set(same.flatMap((one) => one.each.place.regions ?? []))].sort();
    const at = each.place.at === undefined ? {} : { at: each.place.at };
    const facts = { ...factsOf(each, job), by, factor: factorOf(plan.etchFactor), places: same.length };
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

function judged(making: Making): Finding[] {
  const { place } = makingPlace(making);
  return RULES.flatMap((rule) => rule(place));
}

/** The same openings, etched with another factor. */
function doubted(making: Making, by: number): Making {
  const { front } = making.kit.index;
  const kit = makeContourKit(indexFront({ ...front, etchFactor: factorOff(front.etchFactor, by) }));
  return { ...making, kit, reached: reachedRegions(kit, making.plan.regions) };
}

function keyOf({ code, place: { regions = [] } }: Finding): string {
  return [code, ...regions].join(' ');
}

function factorOf(table: EtchFactor): number {
  return itemAt(table, 0)[1];
}

/** The width or share that is left, and what is asked of it. */
function factsOf(each: Finding, { rules }: Pick<Job, 'rules'>) {
  switch (each.code) {
    case 'land-too-narrow':
      return { of: 'land', value: each.facts.width, limit: each.facts.limit } as const;
    case 'floor-not-reached':
      return { of: 'neck', value: each.facts.depth, limit: each.facts.least } as const;
    case 'floor-mostly-wall':
      return { of: 'share', value: each.facts.share, limit: each.facts.limit } as const;
    case 'floor-lost':
      return { of: 'floor', value: each.facts.shallowest, limit: each.facts.most } as const;
    default:
      return { of: 'land', value: 0, limit: rules.minLandWidth } as const;
  }
}
