/**
 * Metal left under a floor, held against the least web: as planned, and at worst, when the sheet comes at its least
 * thickness and the bath cuts faster than planned by the whole rate spread: thickness − minus − level (1 + spread).
 */
import { type Finding, finding } from '#findings/finding.ts';
import { thicknessOver } from '#part/thickness-over.ts';
import type { MakingPlace } from './making.ts';

export function checkWeb({ plan, job: { stock, process, rules } }: MakingPlace): Finding[] {
  const regionOf = new Map(plan.regions.map((region) => [region.id, region]));
  const isLeft = (id: string) => regionOf.get(id)?.asked.wall === undefined;
  return plan.stages.flatMap(({ level, regions: all }) => {
    // Of what is cut out nothing is to be left.
    const regions = all.filter(isLeft);
    // A tapered sheet is as thick as it is over each region.
    const thinnest = regions.reduce(
      (least, id) => Math.min(least, thicknessOver(stock.thickness, regionOf.get(id)?.loops ?? []).least),
      Number.POSITIVE_INFINITY,
    );
    const web = thinnest - level;
    const worst = web - stock.minus - level * process.rateSpread;
    if (worst >= rules.minWeb) return [];
    const at = regionOf.get(regions[0] ?? '')?.label;
    const place = { regions, ...(at === undefined ? {} : { at }) };
    if (web < rules.minWeb) {
      return [finding('web-too-thin', { web, limit: rules.minWeb, thickness: thinnest, level }, place)];
    }
    const facts = {
      worst,
      web,
      limit: rules.minWeb,
      sheetMinus: stock.minus,
      fast: level * process.rateSpread,
      level,
    };
    return [finding('web-thin-at-worst', facts, place)];
  });
}
