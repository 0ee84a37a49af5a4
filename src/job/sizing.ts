/**
 * Sizing: an overall etch before masking (M8.7). A bare sheet loses the same on each bare face and moves in at its edges by the
 * undercut of that depth; all that is planned is about what is left. Lengths in mm.
 */
import { type EtchFactor, etchFactorAt } from '#bath/etch-factor.ts';
import { etchMinutes } from '#bath/etch-minutes.ts';
import { toMillionth } from '#units/round-figures.ts';
import type { Taper } from './taper.ts';

export interface Sizing {
  /** Off each bare face. */
  readonly amount: number;
  readonly faces: 'both' | 'one';
  /** The mean thickness that it is sized to, where the job says one. */
  readonly to?: number;
  /** What the sheet gets thinner by. */
  readonly thinner: number;
  /** What the outline and the edges of holes move into the metal. */
  readonly edge: number;
  readonly minutes: number;
  /** Half-width by which the sheet may come out thicker or thinner for the sizing alone, until it is gauged. */
  readonly doubt: number;
  /** The sheet as it comes. */
  readonly sheet: {
    readonly thickness: number | Taper;
    readonly minus: number;
    readonly plus: number;
  };
}

interface SizedIn {
  /** mm/min */
  readonly rate: number;
  readonly rateSpread: number;
  /** min */
  readonly timing: number;
  readonly etchFactor: EtchFactor;
}

export function sizingOf(
  { amount, faces, to }: Pick<Sizing, 'amount' | 'faces'> & { readonly to: number | undefined },
  sheet: Sizing['sheet'],
  { rate, rateSpread, timing, etchFactor }: SizedIn,
): Sizing {
  const bare = bareFaces(faces);
  return {
    amount,
    faces,
    ...(to === undefined ? {} : { to }),
    thinner: toMillionth(bare * amount),
    edge: etchFactorAt(etchFactor, amount) * amount,
    minutes: etchMinutes({ depth: amount, rate }),
    doubt: toMillionth(bare * (amount * rateSpread + rate * (1 + rateSpread) * timing)),
    sheet,
  };
}

export function bareFaces(faces: Sizing['faces']): 1 | 2 {
  return faces === 'both' ? 2 : 1;
}

/** A sheet that has lost so much all over keeps its slope. */
export function thinnedBy(thickness: number | Taper, by: number): number | Taper {
  if (typeof thickness === 'number') return toMillionth(thickness - by);
  return {
    ...thickness,
    fromValue: toMillionth(thickness.fromValue - by),
    toValue: toMillionth(thickness.toValue - by),
  };
}
