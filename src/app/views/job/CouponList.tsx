/** The coupons that rate and etch factor are taken from. Each counts as soon as it is whole; until then it stays on the panel only. */
import { useState } from 'react';
import {
  type CouponReadings,
  couponReadings,
  isWholeCoupon,
  isWholeOpening,
  removeCoupon,
  setCoupon,
} from '#app/state/edits/edit-coupons.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { couponRate } from '#bath/coupon.ts';
import { couponsOf } from '#job/job-coupons.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { CouponFields } from './CouponFields.tsx';
import type { JobPart } from './job-part.ts';

export function CouponList({ job }: JobPart) {
  const { actions } = useWorkbench();
  /** What the job can't hold yet, coupon by coupon. */
  const [drafts, setDrafts] = useState<readonly CouponReadings[]>([]);
  const given = couponReadings(job);
  const count = Math.max(given.length, drafts.length, 1);
  const coupons = Array.from({ length: count }, (_, index) => ({ ...drafts[index], ...given[index] }));
  const nameOf = (index: number, word = 'coupon') => (count === 1 ? word : `${word} ${index + 1}`);

  const keepDraft = (index: number, draft: CouponReadings) => {
    const places = Array.from({ length: Math.max(count, index + 1) }, (_, each) => drafts[each] ?? {});
    setDrafts(trimmed(places.with(index, draft)));
  };
  const take = (index: number, change: CouponReadings) => {
    const readings = { ...coupons[index], ...change };
    if (!isWholeCoupon(readings)) return keepDraft(index, readings);
    keepDraft(index, isWholeOpening(readings) ? {} : openingIn(readings));
    if (isOpeningOnly(change) && ![readings, given[index] ?? {}].some(isWholeOpening)) return;
    actions.edit(nameOf(index), (before) => setCoupon(before, index, readings));
  };
  const remove = (index: number) => {
    setDrafts(trimmed(drafts.toSpliced(index, 1)));
    if (index < given.length) actions.edit(`no ${nameOf(index)}`, (before) => removeCoupon(before, index));
  };
  return (
    <>
      {coupons.map((readings, index) => (
        <CouponFields
          // biome-ignore lint/suspicious/noArrayIndexKey: a coupon is known by its place, and keeps the caret when it gets whole
          key={index}
          name={nameOf(index)}
          title={nameOf(index, 'Coupon')}
          readings={readings}
          onTake={(change) => take(index, change)}
          onRemove={index < given.length || count > 1 ? () => remove(index) : undefined}
        />
      ))}
      <p>
        {given.length > 1 && <MeanRate job={job} />}{' '}
        {count === given.length && (
          <button type="button" onClick={() => keepDraft(count, { faces: 2 })}>
            add a coupon
          </button>
        )}
      </p>
    </>
  );
}

function MeanRate({ job }: Pick<JobPart, 'job'>) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const { value } = couponRate(couponsOf(job.process.coupon, job.units ?? 'mm'));
  return `Their mean counts: ${Number((value / millimetresIn(unit)).toPrecision(4))} ${unit} a minute.`;
}

/** A draft that holds nothing is none, unless a later one does. */
function trimmed(drafts: readonly CouponReadings[]): CouponReadings[] {
  const last = drafts.findLastIndex((draft) => Object.values(draft).some((value) => value !== undefined));
  return drafts.slice(0, last + 1);
}

/** Readings of an opening that wait for the rest. */
function openingIn({
  openingBefore,
  openingAfter,
  openingDepth,
  openingGauge,
}: CouponReadings): CouponReadings {
  return { openingBefore, openingAfter, openingDepth, openingGauge };
}

function isOpeningOnly(change: CouponReadings): boolean {
  return Object.keys(change).every((key) => key.startsWith('opening'));
}
