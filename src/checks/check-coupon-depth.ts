/** A coupon that gave the etch factor, held against the depth that the factor is used to: undercut is measured for what it was etched to. */
import type { Coupon } from '#bath/coupon.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { COUPON_DEPTH_TIMES } from './making-limits.ts';

/** Finding: `coupon-depth-differs`, of the coupon that comes nearest. */
export function checkCouponDepth({ stages, masking }: EtchPlan, coupons: readonly Coupon[]): Finding[] {
  const depths = coupons.flatMap(({ opening }) => (opening === undefined ? [] : [opening.depth]));
  // With a new coat for each stage each cut is only as deep as its own etch.
  const deepest = Math.max(0, ...stages.map(({ level, etch }) => (masking === 're-mask' ? etch : level)));
  if (depths.length === 0 || deepest === 0) return [];
  const times = (depth: number): number => Math.max(depth / deepest, deepest / depth);
  const coupon = depths.reduce((a, b) => (times(b) < times(a) ? b : a));
  const limit = COUPON_DEPTH_TIMES.value;
  if (times(coupon) <= limit) return [];
  const facts = { coupon, deepest, times: deepest / coupon, limit };
  return [finding('coupon-depth-differs', facts, { path: 'process.coupon' })];
}
