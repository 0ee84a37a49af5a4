/** The coupon that the rate is taken from. It counts as soon as it is whole; until then it stays on the panel only. */
import { useState } from 'react';
import { fromJobUnits, setCoupon, setRate } from '#app/state/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useBench, useWorkbench } from '#app/views/workbench-context.ts';
import { type CouponEtch, surfaceRate } from '#bath/coupon.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { readFigure } from '#units/read-figure.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './JobPanel.tsx';

/** The least that a coupon must have lost, mm: what a micrometer can tell. */
const LEAST_LOSS = 0.001;

export function CouponFields({ job }: JobPart) {
  const { actions } = useWorkbench();
  const [draft, setDraft] = useState<Partial<CouponEtch>>({});
  const { coupon } = job.process;
  const given = couponOf(job);
  const shown = given ?? draft;
  const take = (change: Partial<CouponEtch>) => {
    const next = { faces: 2 as const, ...shown, ...change };
    if (!isWhole(next)) return setDraft(next);
    setDraft({});
    actions.edit('coupon', (before) => setCoupon(before, next));
  };
  if (Array.isArray(coupon)) return <CouponCount count={coupon.length} />;
  return (
    <fieldset>
      <legend>Coupon</legend>
      <LengthField
        label="Before"
        length={shown.before}
        placeholder="none"
        least={(shown.after ?? 0) + LEAST_LOSS}
        onTake={(before) => take({ before })}
      />
      <LengthField
        label="After"
        length={shown.after}
        placeholder="none"
        least={LEAST_LOSS}
        {...(shown.before === undefined ? {} : { most: shown.before - LEAST_LOSS })}
        onTake={(after) => take({ after })}
      />
      <QuantityField
        label="In the bath"
        text={shown.minutes === undefined ? '' : String(shown.minutes)}
        placeholder="none"
        suffix="min"
        read={(text) => {
          const minutes = readFigure(text);
          return minutes !== undefined && minutes >= 0.01 ? minutes : undefined;
        }}
        expected="Minutes, 0.01 or more."
        onTake={(minutes) => take({ minutes })}
      />
      <ChoiceField
        label="Bare"
        value={String(shown.faces ?? 2)}
        onTake={(faces) => take({ faces: faces === '1' ? 1 : 2 })}
      >
        <option value="1">on one face</option>
        <option value="2">on both faces</option>
      </ChoiceField>
      {given === undefined ? (
        <p className="aside">Counts in place of the rate when all four are there.</p>
      ) : (
        <p>
          <CouponRate coupon={given} />{' '}
          <button
            type="button"
            onClick={() => actions.edit('no coupon', (before) => setRate(before, undefined))}
          >
            do without it
          </button>
        </p>
      )}
    </fieldset>
  );
}

/** Several are entered in the job file. */
function CouponCount({ count }: { readonly count: number }) {
  const { actions } = useWorkbench();
  return (
    <fieldset>
      <legend>Coupons</legend>
      <p>
        The rate is the mean of {count} coupons in the job file.{' '}
        <button
          type="button"
          onClick={() => actions.edit('no coupons', (before) => setRate(before, undefined))}
        >
          do without them
        </button>
      </p>
    </fieldset>
  );
}

function CouponRate({ coupon }: { readonly coupon: CouponEtch }) {
  const unit = useBench((state) => state.session.unit);
  const rate = surfaceRate(coupon) / millimetresIn(unit);
  return `Rate ${Number(rate.toPrecision(4))} ${unit} a minute.`;
}

/** In mm. */
function couponOf(job: JobPart['job']): CouponEtch | undefined {
  const { coupon } = job.process;
  if (coupon === undefined || Array.isArray(coupon)) return undefined;
  const { before, after, minutes, faces } = coupon;
  return { before: fromJobUnits(job, before), after: fromJobUnits(job, after), minutes, faces };
}

function isWhole(coupon: Partial<CouponEtch>): coupon is CouponEtch {
  const { before, after, minutes } = coupon;
  return before !== undefined && after !== undefined && minutes !== undefined;
}
