/**
 * What coupons show, and how surely (M5.5). A coupon bare on both faces loses metal from each, so that a surface moves at half
 * the speed at which the thickness falls: rate = (T0 − TF) / (2 t), Glass, Measurement of Pre-penetrant Etch Rate, Materials
 * Evaluation 66(12) (2008). An opening in its maskant widens on both sides: etch factor = (after − before) / (2 depth).
 * Uncertainty by JCGM 100:2008 (GUM): a reading off by up to ± a is a rectangular distribution, a / √3 (4.3.7); several
 * coupons have the standard error of their mean (4.2.3), with Student's t of the degrees of freedom that gauges
 * and scatter have together (G.4.1, table G.2).
 */
import { hypot } from '#maths/hypot.ts';
import { coverageFactor } from './coverage-factor.ts';
import type { Sourced } from './provenance.ts';

/** All in one unit of length. */
export interface CouponEtch {
  /** Thickness before and after the etch. */
  readonly before: number;
  readonly after: number;
  readonly minutes: number;
  /** How many of its faces were bare. */
  readonly faces: 1 | 2;
}

export interface Coupon extends CouponEtch {
  /** How far a thickness or depth that was read may be off, ±. */
  readonly gauge: number;
  readonly opening?: CouponOpening;
}

export interface CouponOpening {
  /** Width in the maskant before; at the metal's surface after. */
  readonly before: number;
  readonly after: number;
  /** Depth etched, not through. */
  readonly depth: number;
  /** How far a width that was read may be off, ±. */
  readonly gauge: number;
}

/** mm, ±, where the job does not say: thickness by micrometer, width by measuring microscope. */
export const THICKNESS_GAUGE: Sourced = fromMemory(0.005);
export const WIDTH_GAUGE: Sourced = fromMemory(0.02);

/** Share of the rate that coupons may leave open (95 %) before it is worth a word. */
export const COARSEST_COUPON: Sourced = fromMemory(0.1);
/** The same of the etch factor, which two widths give by their difference. */
export const COARSEST_OPENING: Sourced = fromMemory(0.25);

function fromMemory(value: number): Sourced {
  return { value, source: 'from memory', kind: 'memory' };
}

interface Shown {
  readonly value: number;
  /** Standard uncertainty from the gauges alone. */
  readonly u: number;
}

/** Depth a minute of one surface. */
export function surfaceRate({ before, after, minutes, faces }: CouponEtch): number {
  return (before - after) / (faces * minutes);
}

/** The same of all coupons together, with its 95 % half-width. */
export function couponRate(coupons: readonly Coupon[]): Pick<Sourced, 'value' | 'plusMinus'> {
  return mean(
    coupons.map((coupon) => ({
      value: surfaceRate(coupon),
      u: (Math.SQRT2 * rectangular(coupon.gauge)) / (coupon.faces * coupon.minutes),
    })),
  );
}

/** Undercut over depth, with its 95 % half-width; undefined where no coupon had an opening measured. */
export function couponFactor(coupons: readonly Coupon[]): Pick<Sourced, 'value' | 'plusMinus'> | undefined {
  const shown = coupons.flatMap(({ opening, gauge }): Shown[] => {
    if (opening === undefined) return [];
    const { before, after, depth } = opening;
    const value = (after - before) / (2 * depth);
    const ofWidths = (Math.SQRT2 * rectangular(opening.gauge)) / (2 * depth);
    return [{ value, u: hypot(ofWidths, (value * rectangular(gauge)) / depth) }];
  });
  return shown.length === 0 ? undefined : mean(shown);
}

function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/**
 * Coupons that agree by chance are no surer than their gauges; one alone says nothing about how coupons differ. What gauges
 * explain of the scatter is surely known, and only the rest is judged from so few.
 */
function mean(shown: readonly Shown[]): { readonly value: number; readonly plusMinus: number } {
  const count = shown.length;
  const value = shown.reduce((sum, each) => sum + each.value, 0) / count;
  const gauges = shown.reduce((sum, { u }) => sum + u * u, 0) / count;
  const squares = shown.reduce((sum, each) => sum + (each.value - value) * (each.value - value), 0);
  const scatter = count === 1 ? 0 : squares / (count - 1);
  const error = Math.sqrt(Math.max(gauges, scatter) / count);
  return { value, plusMinus: error * coverageFactor(freedomOf({ gauges, scatter, count })) };
}

/** Welch and Satterthwaite (GUM G.4.1): gauges with endless freedom, what scatters beyond them with that of the coupons. */
function freedomOf({
  gauges,
  scatter,
  count,
}: Readonly<Record<'gauges' | 'scatter' | 'count', number>>): number {
  if (scatter <= gauges) return Number.POSITIVE_INFINITY;
  return (count - 1) / ((1 - gauges / scatter) * (1 - gauges / scatter));
}
