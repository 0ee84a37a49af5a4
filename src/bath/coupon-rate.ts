/**
 * The etch rate that a coupon shows. A coupon bare on both faces loses metal from each, so that a surface moves at half the
 * speed at which the thickness falls: rate = (T0 − TF) / (2 t), Glass, Measurement of Pre-penetrant Etch Rate, Materials
 * Evaluation 66(12) (2008).
 */

export interface Coupon {
  /** Thickness before and after the etch, in one unit of length. */
  readonly before: number;
  readonly after: number;
  readonly minutes: number;
  /** How many of its faces were bare. */
  readonly faces: 1 | 2;
}

/** Depth a minute of one surface, in the coupon's own unit of length. */
export function couponRate({ before, after, minutes, faces }: Coupon): number {
  return (before - after) / (faces * minutes);
}
