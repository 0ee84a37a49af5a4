/**
 * Metal left under a floor, held against the least web: as planned, and at worst, when the sheet comes at its least
 * thickness and the bath cuts faster than planned by the whole rate spread: thickness − minus − level (1 + spread).
 */
import { type Finding, finding } from '#findings/finding.ts';
import { thicknessOver } from '#part/thickness-over.ts';
import type { PlanPlace } from './making.ts';

export function checkWeb({ plan, job: { stock, process, rules } }: PlanPlace): Finding[] {
  return plan.stages.flatMap(({ level }) => {
    // Of what is cut out nothing is to be left; a tapered sheet is as thick as it is over each region.
    const floors = plan.regions.filter(({ level: own, asked }) => own === level && asked.wall === undefined);
    const thinnest = floors.reduce(
      (least, { loops }) => Math.min(least, thicknessOver(stock.thickness, loops).least),
      Number.POSITIVE_INFINITY,
    );
    const web = thinnest - (stock.surveyed?.bow ?? 0) - level;
    const worst = web - stock.minus - level * process.rateSpread;
    if (worst >= rules.minWeb) return [];
    const [first] = floors;
    const place = { regions: floors.map(({ id }) => id), ...(first && { at: first.label }) };
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
