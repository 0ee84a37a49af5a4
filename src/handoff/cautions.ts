/**
 * The cautions that go with every plan, and in fewer words those that stand on the papers at the tank. Isobath plans geometry and time; who
 * decides, and what can hurt, is stated each time. Sources: burns, hydrofluoric acid and its delayed pain: university safety pages; hydrogen
 * 4 % lower flammable limit, nitrous fumes, hydrogen sulphide, spent baths and hydrogen uptake: common practice; that titanium is annealed in
 * vacuum, not baked: Albrecht and Mallett, AIME (1959), as quoted by suppliers.
 */
import type { Job } from '#job/job.ts';

const HYDROFLUORIC =
  'Hydrofluoric acid is a systemic poison whose pain may be delayed for hours: have its own first aid (calcium gluconate) and the site’s medical protocol ready before the bath is used.';
const SULPHIDE =
  'Caustic baths that hold sulphides give off hydrogen sulphide, a poison, when they meet acid: never drain or rinse the two together.';

export const CAUTIONS: readonly string[] = [
  'This plan is computed geometry and time, not an approval: the site’s own process specification, local codes and licensed practice decide.',
  'Hot caustic and acid baths cause severe burns: protective clothing, face shield, safety shower and eye wash within reach.',
  HYDROFLUORIC,
  'Etching metal gives off hydrogen, flammable in air from 4 % by volume: ventilate, keep flames and sparks away.',
  'Nitric acid, in the bath or for desmutting, gives off nitrous fumes, whose harm may be delayed for hours: extraction on, nothing organic in the tank.',
  SULPHIDE,
  'Spent baths and rinse water are regulated waste. Some alloys take up hydrogen: ask the material specification what they need. Titanium is annealed in vacuum, not baked.',
  'Etch rate and etch factor drift: measure both on a coupon of the same alloy, temper and thickness just before the run.',
];

/** All of them, but those that the bath is known not to need: caustic soda for aluminium alone is known so well. */
export function cautionsFor({ reaction }: Job['process']): readonly string[] {
  return reaction === undefined ? CAUTIONS : CAUTIONS.filter((each) => each !== HYDROFLUORIC);
}

/** For the papers at the tank; `**bold**` is what catches the eye. */
export function shopCautions({ process: { reaction, bathNamed } }: Job): readonly string[] {
  const isCaustic = reaction !== undefined;
  const etches = bathNamed?.etches;
  const isUnknown = bathNamed === undefined;
  const mayHoldFluoride =
    !isCaustic && (isUnknown || etches === 'titanium' || etches === 'steel' || etches === 'nickel');
  const burns = isCaustic
    ? '**Caustic bath, hot.** Burns skin and blinds.'
    : '**The bath burns skin and blinds.**';
  return [
    `${burns} Face shield, apron, gauntlets; shower and eye wash tried today.`,
    ...(mayHoldFluoride
      ? [
          '**Hydrofluoric acid poisons through the skin; pain may come hours later.** Calcium gluconate gel and the site’s medical protocol at the tank; call help at once.',
        ]
      : []),
    '**Hydrogen** comes off the metal while it etches and burns in air from 4 %. Extraction on before the part goes in; no flame, no spark.',
    ...(isCaustic || isUnknown
      ? [
          '**Never drain or rinse a caustic bath together with acid.** Sulphides in it give hydrogen sulphide.',
        ]
      : []),
    ...(isCaustic || isUnknown || etches === 'aluminium' || etches === 'titanium'
      ? [
          '**Nitric acid, desmut:** brown fumes are poison, the harm may come hours later. Extraction on; nothing organic in the tank.',
        ]
      : []),
    '**Spent bath and rinse water** are regulated waste: to the drain that the site names, nowhere else.',
  ];
}
