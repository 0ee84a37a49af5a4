/**
 * Floors that read too thick, and the fewest dips that bring all of them into tolerance (M8.5). A floor is open from the first extra dip until it
 * is covered, so what it gets in all is one of the depths that dips add up to; a floor that may stay as it is can be covered before the first.
 * Fewest depths that meet every interval: minimum piercing (M4.1), from the greatest least upwards, so that the first dip is as short as can
 * be and leaves as many finished floors open as can be; then the depths that use up least of the tolerances.
 */
import { itemAt } from '#geometry/assert.ts';
import { SAME_SUM } from '#geometry/tolerances.ts';
import { bestLevels } from '#plan/fewest-levels.ts';

/** mm of etch that bring a floor into its tolerance; `most` under 0 where it is too thin already. */
export interface ExtraEtch {
  readonly least: number;
  readonly most: number;
}

export interface ExtraDips {
  /** Depths that the dips add up to, rising. */
  readonly depths: readonly number[];
  /** By floor: what it gets in all; 0 for one that is covered first; undefined for one that can't be saved. */
  readonly gets: readonly (number | undefined)[];
}

export function extraDips(floors: readonly ExtraEtch[]): ExtraDips {
  const canSave = floors.filter(({ most }) => most >= -SAME_SUM);
  const needed = canSave.filter(({ least }) => least > SAME_SUM);
  const first = firstDepths(needed)[0];
  if (first === undefined) return { depths: [], gets: floors.map(finishedGets) };
  // Finished floors that the first dip does them no harm to stay open, and have a say in how deep it is.
  const open = canSave.filter(({ least, most }) => least <= SAME_SUM && most >= first - SAME_SUM);
  const count = firstDepths(needed).length;
  const bands = [...needed, ...open].map(({ least, most }) => ({
    low: (least + most) / 2,
    high: (least + most) / 2,
    minus: (most - least) / 2,
    plus: (most - least) / 2,
  }));
  const best = bestLevels(bands, { count });
  const depths = (
    best !== undefined && best.worstShare <= 1 + SAME_SUM ? best.levels : firstDepths(needed)
  ).filter((depth) => depth > SAME_SUM);
  return { depths, gets: floors.map((floor) => getsOf(floor, depths)) };
}

/** From the greatest least upwards every depth as small as it can be; rising. */
function firstDepths(needed: readonly ExtraEtch[]): number[] {
  const depths: number[] = [];
  for (const { least, most } of [...needed].sort((a, b) => b.least - a.least)) {
    const lowest = depths.at(-1);
    if (lowest === undefined || most < lowest - SAME_SUM) depths.push(least);
  }
  return depths.reverse();
}

function finishedGets({ most }: ExtraEtch): number | undefined {
  return most < -SAME_SUM ? undefined : 0;
}

/** The depth in its interval that is nearest to the middle; a floor that may stay as it is and meets none is covered. */
function getsOf(floor: ExtraEtch, depths: readonly number[]): number | undefined {
  const { least, most } = floor;
  if (most < -SAME_SUM) return undefined;
  const middle = (least + most) / 2;
  const within = depths
    .filter((depth) => depth >= least - SAME_SUM && depth <= most + SAME_SUM)
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  return within.length === 0 ? 0 : itemAt(within, 0);
}
