/**
 * The cautions that go with every plan. Isobath plans geometry and time; who decides, and what can hurt, is said each time.
 * Sources: burns, hydrofluoric acid and its delayed pain: university safety pages; hydrogen 4 % lower flammable limit:
 * common practice; spent baths and hydrogen uptake: common practice.
 */
import type { Job } from '#job/job.ts';

const HYDROFLUORIC =
  'Hydrofluoric acid is a systemic poison whose pain may be delayed for hours: have its own first aid (calcium gluconate) and the site’s medical protocol ready before the bath is used.';

export const CAUTIONS: readonly string[] = [
  'This plan is computed geometry and time, not an approval: the site’s own process specification, local codes and licensed practice decide.',
  'Hot caustic and acid baths cause severe burns: protective clothing, face shield, safety shower and eye wash within reach.',
  HYDROFLUORIC,
  'Etching metal gives off hydrogen, flammable in air from 4 % by volume: ventilate, keep flames and sparks away.',
  'Spent baths and rinse water are regulated waste. Some alloys take up hydrogen and need a bake: ask the material specification.',
  'Etch rate and etch factor drift: measure both on a coupon of the same alloy, temper and thickness just before the run.',
];

/** All of them, unless the bath is known to hold no hydrofluoric acid: caustic soda alone is known so well. */
export function cautionsFor({ reaction }: Job['process']): readonly string[] {
  return reaction === undefined ? CAUTIONS : CAUTIONS.filter((each) => each !== HYDROFLUORIC);
}
