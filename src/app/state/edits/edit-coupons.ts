/**
 * The coupons of a job, as pure functions: (job, arguments) → job. Readings are flat and in millimetres, as they are typed in one
 * by one. One coupon stands in the job as itself, several as a list; an opening counts when all three of its readings are there.
 */
import type { JobFile } from '#job/job-file.ts';
import { fromJobUnits, inJobUnits } from './edit-figures.ts';

type GivenCoupon = JobFile['process']['coupon'];
type JobCoupon = Exclude<GivenCoupon, undefined | readonly unknown[]>;

export type ReadingKey =
  | 'before'
  | 'after'
  | 'minutes'
  | 'gauge'
  | 'openingBefore'
  | 'openingAfter'
  | 'openingDepth'
  | 'openingGauge';

/** What was read on one coupon so far. */
export type CouponReadings = Readonly<Partial<Record<ReadingKey, number | undefined>>> & {
  readonly faces?: 1 | 2;
};

type With<Key extends ReadingKey> = CouponReadings & Readonly<Record<Key, number>>;

/** What the job holds; what was not read is left out. */
export function couponReadings(job: JobFile): CouponReadings[] {
  const length = (value: number) => fromJobUnits(job, value);
  return listed(job.process.coupon).map(({ before, after, minutes, faces, gauge, opening }) => ({
    before: length(before),
    after: length(after),
    minutes,
    faces,
    ...(gauge === undefined ? {} : { gauge: length(gauge) }),
    ...(opening === undefined
      ? {}
      : {
          openingBefore: length(opening.before),
          openingAfter: length(opening.after),
          openingDepth: length(opening.depth),
          ...(opening.gauge === undefined ? {} : { openingGauge: length(opening.gauge) }),
        }),
  }));
}

/** Both thicknesses and the minutes: a coupon that gives a rate. */
export function isWholeCoupon(readings: CouponReadings): readings is With<'before' | 'after' | 'minutes'> {
  const { before, after, minutes } = readings;
  return before !== undefined && after !== undefined && minutes !== undefined;
}

/** Both widths and the depth: an opening that gives an etch factor. */
export function isWholeOpening(
  readings: CouponReadings,
): readings is With<'openingBefore' | 'openingAfter' | 'openingDepth'> {
  const { openingBefore, openingAfter, openingDepth } = readings;
  return openingBefore !== undefined && openingAfter !== undefined && openingDepth !== undefined;
}

/**
 * The coupon at `index`, or one more after the last; nothing before it is whole. Coupons stand in place of a rate, and their
 * openings in place of an etch factor.
 */
export function setCoupon(job: JobFile, index: number, readings: CouponReadings): JobFile {
  if (!isWholeCoupon(readings)) return job;
  const length = (value: number) => inJobUnits(job, value);
  const { before, after, minutes, faces = 2, gauge } = readings;
  const opening = openingOf(job, readings);
  const coupon: JobCoupon = {
    before: length(before),
    after: length(after),
    minutes,
    faces,
    ...(gauge === undefined ? {} : { gauge: length(gauge) }),
    ...(opening === undefined ? {} : { opening }),
  };
  return withCoupons(job, listed(job.process.coupon).toSpliced(index, 1, coupon));
}

/** Without the last one the rate is left to the bath. */
export function removeCoupon(job: JobFile, index: number): JobFile {
  return withCoupons(job, listed(job.process.coupon).toSpliced(index, 1));
}

/** The coupons as far as they give a rate. */
export function withoutOpenings(given: NonNullable<GivenCoupon>): NonNullable<GivenCoupon> {
  const bare = ({ opening, ...coupon }: JobCoupon): JobCoupon => coupon;
  return Array.isArray(given) ? given.map(bare) : bare(given);
}

function openingOf(job: JobFile, readings: CouponReadings): JobCoupon['opening'] {
  if (!isWholeOpening(readings)) return undefined;
  const { openingBefore, openingAfter, openingDepth, openingGauge } = readings;
  return {
    before: inJobUnits(job, openingBefore),
    after: inJobUnits(job, openingAfter),
    depth: inJobUnits(job, openingDepth),
    ...(openingGauge === undefined ? {} : { gauge: inJobUnits(job, openingGauge) }),
  };
}

function withCoupons(job: JobFile, coupons: readonly JobCoupon[]): JobFile {
  const { coupon, rate, ...process } = job.process;
  const [only] = coupons;
  if (only === undefined) return { ...job, process };
  const list = coupons.length === 1 ? only : [...coupons];
  if (coupons.every(({ opening }) => opening === undefined)) {
    return { ...job, process: { ...process, coupon: list } };
  }
  const { etchFactor, depthPerUndercut, ...others } = process;
  return { ...job, process: { ...others, coupon: list } };
}

function listed(given: GivenCoupon): JobCoupon[] {
  return [given ?? []].flat();
}
