/** The bath sheet of a plan as it stands in plan.json, with the sources of its figures. Grams, mm², litres at 25 °C, minutes. */
import {
  ALUMINIUM_WEIGHT,
  CAUSTIC_WEIGHT,
  HEAT_OF_ALUMINIUM,
  MOLAR_VOLUME,
} from '#bath/aluminium-chemistry.ts';
import type { Tank } from '#bath/bath-load.ts';
import {
  type BathSheet,
  bathSheet,
  FLAMMABLE_FROM,
  HEAT_CAPACITY,
  SAFE_SHARE,
  SIZING,
  type StageInBath,
} from '#bath/bath-sheet.ts';
import { etchFactorAt } from '#bath/etch-factor.ts';
import type { Provenance } from '#bath/provenance.ts';
import { loopsArea, spansLength } from '#geometry/span.ts';
import type { SizingRecord } from '#job/formats/plan-file.ts';
import { provenanceOf } from '#job/job-figures.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { roundFigures } from '#units/round-figures.ts';
import type { PlanMeasures } from './plan-measures.ts';

export function bathRecord(
  plan: EtchPlan,
  measures: PlanMeasures,
  {
    density,
    tank,
    parts,
    sizing,
  }: {
    readonly density: number;
    readonly sizing?: SizingRecord | undefined;
    readonly tank?: Tank | undefined;
    readonly parts?: number | undefined;
  },
): BathSheet | undefined {
  const stages = plan.stages.map(({ number, minutes }, index) => ({
    number,
    minutes,
    grams: ((measures.stages[index]?.removedVolume ?? 0) * density) / 1000,
    bareArea: bareArea(plan, index) + (plan.far === undefined ? 0 : bareArea(plan.far, index)),
  }));
  const sized = sizing === undefined ? [] : [sizingInBath(sizing, plan.rate, density)];
  const sheet = bathSheet([...sized, ...stages], { rate: plan.rate, density, tank, parts });
  return sheet && roundFigures(sheet);
}

/** Its bare area is what gives its metal at the rate, edges and all. */
function sizingInBath({ minutes, removedVolume }: SizingRecord, rate: number, density: number): StageInBath {
  const volume = removedVolume ?? 0;
  return { number: SIZING, minutes, grams: (volume * density) / 1000, bareArea: volume / (rate * minutes) };
}

/**
 * Metal bare at the end of a stage, on the safe side (M5.4): the opening, and below the border of every opening so far a
 * quarter turn of wall as deep as it has got, with the corners of a convex border. Walls that have met count twice. With a
 * coat for each stage the walls of the stages before are coated over.
 */
function bareArea({ stages, masking, etchFactor }: EtchPlan, index: number): number {
  const end = stages[index];
  if (end === undefined) return 0;
  const below = end.level - end.etch;
  const bared = masking === 're-mask' ? [end] : stages.slice(0, index + 1);
  const walls = bared.reduce((sum, { level, opening }) => {
    const depth = level - below;
    const reach = depth * Math.max(1, etchFactorAt(etchFactor, depth));
    return (
      sum +
      opening.reduce(
        (all, loop) => all + (Math.PI / 2) * spansLength(loop) * reach + 2 * Math.PI * reach * reach,
        0,
      )
    );
  }, 0);
  return loopsArea(end.opening) + walls;
}

export const BATH_SHEET_PROVENANCE: readonly Provenance[] = [
  provenanceOf('molar mass of aluminium', 'g/mol', ALUMINIUM_WEIGHT),
  provenanceOf('molar mass of sodium hydroxide', 'g/mol', CAUSTIC_WEIGHT),
  provenanceOf('molar volume of a gas at 0 °C, 101.325 kPa', 'l/mol', MOLAR_VOLUME),
  provenanceOf('heat of dissolving aluminium', 'kJ/mol', HEAT_OF_ALUMINIUM),
  provenanceOf('heat capacity of the bath', 'kJ/(l K)', HEAT_CAPACITY),
  provenanceOf('lower flammable limit of hydrogen in air', 'share by volume', FLAMMABLE_FROM),
  provenanceOf('share of the lower flammable limit to stay under', '', SAFE_SHARE),
];
