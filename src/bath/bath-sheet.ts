/**
 * What a run does to the bath and to the air above it: metal dissolved, caustic used, hydrogen at its fastest, and the air
 * that keeps it thin. Calculated for aluminium in caustic soda only: no other reaction is known here. Stoichiometry as in
 * `aluminium-chemistry.ts`; the ideal gas at 25 °C and 101.325 kPa.
 */

import * as z from 'zod/mini';
import { causticGramsOf, heatOf, hydrogenLitresOf } from './aluminium-chemistry.ts';
import { arrheniusRatio } from './arrhenius.ts';
import { bathLoad, type Tank } from './bath-load.ts';
import type { Sourced } from './provenance.ts';

/** In place of a stage's number: the etch before masking (M8.7). */
export const SIZING = 0;

export interface StageInBath {
  readonly number: number;
  readonly minutes: number;
  /** Metal dissolved by the stage, g. */
  readonly grams: number;
  /** Metal bare at most during the stage, mm². */
  readonly bareArea: number;
}

const figure = z.number();
const count = z.number().check(z.gte(0), z.multipleOf(1));

export const bathSheetSchema = z.object({
  stages: z.array(z.object({ number: count, metal: figure, caustic: figure })),
  /** Before them, where the sheet is sized. */
  sizing: z.exactOptional(z.object({ metal: figure, caustic: figure })),
  /** g in all: metal dissolved and sodium hydroxide used up. */
  metal: figure,
  caustic: figure,
  /** Hydrogen of the whole run in litres, at 0 °C and at 25 °C, 101.325 kPa. */
  hydrogen: z.object({ at0C: figure, at25C: figure }),
  /** Dissolved metal in the bath, g/L; where the job names the tank. */
  load: z.exactOptional(z.object({ before: figure, after: figure, limit: figure })),
  /**
   * Of all parts hung at once: kJ given off by the whole run, and where the job names the tank the K that the bath warms by at most
   * and the share by which that speeds it, at 46 kJ/mol and 85 °C.
   */
  heat: z.exactOptional(
    z.object({
      parts: figure,
      kilojoules: figure,
      warmer: z.exactOptional(figure),
      faster: z.exactOptional(figure),
    }),
  ),
  /**
   * Of all parts hung at once, in the minute that gives off most: its stage, 0 for the sizing, metal in g/min, hydrogen in litres a minute at 25 °C, and air and hydrogen
   * together that the extraction has to take away at least.
   */
  peak: z.object({ stage: count, metal: figure, hydrogen: figure, ventilation: figure }),
});

export type BathSheet = z.output<typeof bathSheetSchema>;

/** Volume of a gas at 25 °C to that at 0 °C. */
const ROOM = 298.15 / 273.15;

/** Lower flammable limit of hydrogen in air, share by volume, and the share of it to stay under. */
export const FLAMMABLE_FROM: Sourced = {
  value: 0.04,
  source: 'common practice: 4 to 75 % by volume burn',
  kind: 'common-practice',
};
export const SAFE_SHARE: Sourced = {
  value: 0.25,
  source: 'common practice: a quarter',
  kind: 'common-practice',
};

/** `rate` in mm/min, `density` in g/cm³. Undefined where nothing is etched. */
export function bathSheet(
  stages: readonly StageInBath[],
  {
    rate,
    density,
    tank,
    parts = 1,
  }: {
    readonly rate: number;
    readonly density: number;
    readonly tank?: Tank | undefined;
    /** Hung at once. */
    readonly parts?: number | undefined;
  },
): BathSheet | undefined {
  const fastest = [...stages].sort((a, b) => b.bareArea - a.bareArea)[0];
  if (fastest === undefined) return undefined;
  const metal = stages.reduce((sum, { grams }) => sum + grams, 0);
  const perMinute = (parts * fastest.bareArea * rate * density) / 1000;
  const hydrogen = hydrogenLitresOf(perMinute) * ROOM;
  const took = ({ grams }: StageInBath) => ({ metal: grams, caustic: causticGramsOf(grams) });
  const sizing = stages.find(({ number }) => number === SIZING);
  return {
    stages: stages
      .filter((stage) => stage !== sizing)
      .map((stage) => ({ number: stage.number, ...took(stage) })),
    ...(sizing === undefined ? {} : { sizing: took(sizing) }),
    metal,
    caustic: causticGramsOf(metal),
    hydrogen: { at0C: hydrogenLitresOf(metal), at25C: hydrogenLitresOf(metal) * ROOM },
    ...(tank === undefined ? {} : { load: bathLoad(tank, metal * parts) }),
    heat: { parts, ...warming(metal * parts, tank) },
    peak: {
      stage: fastest.number,
      metal: perMinute,
      hydrogen,
      ventilation: hydrogen / (FLAMMABLE_FROM.value * SAFE_SHARE.value),
    },
  };
}

/** kJ to warm a litre of bath by a kelvin. */
export const HEAT_CAPACITY: Sourced = {
  value: 4.1,
  source: 'from memory: caustic soda of common strength',
  kind: 'memory',
};
/** kJ/mol and °C that the change of rate is given at. */
const ENERGY = 46;
const USUAL_C = 85;

/** Nothing leaves the bath: it warms by no more. */
export function warming(
  grams: number,
  tank: Tank | undefined,
): { readonly kilojoules: number; readonly warmer?: number; readonly faster?: number } {
  const kilojoules = heatOf(grams);
  if (tank === undefined) return { kilojoules };
  const warmer = kilojoules / (tank.litres * HEAT_CAPACITY.value);
  const faster = arrheniusRatio(ENERGY, { fromC: USUAL_C, toC: USUAL_C + warmer }) - 1;
  return { kilojoules, warmer, faster };
}
