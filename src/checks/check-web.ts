/**
 * Metal left under a floor, held against the least web: as planned, and at worst, when the sheet comes at its least
 * thickness and the bath cuts faster than planned by the whole rate spread: thickness − minus − level (1 + spread).
 */
import { type Finding, finding } from '#findings/finding.ts';
import type { MakingPlace } from './making.ts';

export function checkWeb({ plan, job: { stock, process, rules } }: MakingPlace): Finding[] {
  const { thickness } = stock;
  const thinnest =
    typeof thickness === 'number' ? thickness : Math.min(thickness.fromValue, thickness.toValue);
  return plan.stages.flatMap(({ level, regions }) => {
    const web = thinnest - level;
    const worst = web - stock.minus - level * process.rateSpread;
    if (worst >= rules.minWeb) return [];
    const at = plan.regions.find(({ id }) => id === regions[0])?.label;
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
