/** One coupon: its thickness before and after, how long it was in the bath, and an opening where one was measured. */
import type { CouponReadings } from '#app/state/edit-coupons.ts';
import { isWholeCoupon } from '#app/state/edit-coupons.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useBench } from '#app/views/workbench-context.ts';
import { surfaceRate, THICKNESS_GAUGE } from '#bath/coupon.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { readFigure } from '#units/read-figure.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { COARSEST_GAUGE, FINEST_GAUGE, LEAST_CHANGE } from './coupon-limits.ts';
import { OpeningFields } from './OpeningFields.tsx';

interface CouponFieldsProps {
  readonly name: string;
  readonly readings: CouponReadings;
  readonly onTake: (change: CouponReadings) => void;
  readonly onRemove: (() => void) | undefined;
}

export function CouponFields({ name, readings, onTake, onRemove }: CouponFieldsProps) {
  const { before, after, minutes, faces = 2, gauge } = readings;
  return (
    <fieldset>
      <legend>{name.replace(/^c/, 'C')}</legend>
      <LengthField
        isFine
        label="Before"
        length={before}
        placeholder="none"
        least={(after ?? 0) + LEAST_CHANGE}
        onTake={(length) => onTake({ before: length })}
      />
      <LengthField
        isFine
        label="After"
        length={after}
        placeholder="none"
        least={LEAST_CHANGE}
        {...(before === undefined ? {} : { most: before - LEAST_CHANGE })}
        onTake={(length) => onTake({ after: length })}
      />
      <QuantityField
        label="In the bath"
        text={minutes === undefined ? '' : String(minutes)}
        placeholder="none"
        suffix="min"
        read={readMinutes}
        expected="Minutes, 0.01 or more."
        onTake={(value) => onTake({ minutes: value })}
      />
      <ChoiceField
        label="Bare"
        value={String(faces)}
        onTake={(value) => onTake({ faces: value === '1' ? 1 : 2 })}
      >
        <option value="1">on one face</option>
        <option value="2">on both faces</option>
      </ChoiceField>
      <LengthField
        isFine
        label="Gauge may be off by"
        length={gauge}
        usual={THICKNESS_GAUGE.value}
        least={FINEST_GAUGE}
        most={COARSEST_GAUGE}
        onTake={(length) => onTake({ gauge: length })}
        onClear={() => onTake({ gauge: undefined })}
      />
      <Disclosure title="Opening in its maskant" startsOpen={readings.openingDepth !== undefined}>
        <OpeningFields readings={readings} onTake={onTake} />
      </Disclosure>
      <p>
        <CouponRate readings={readings} />{' '}
        {onRemove !== undefined && (
          <button type="button" onClick={onRemove}>
            remove<span className="unseen"> {name}</span>
          </button>
        )}
      </p>
    </fieldset>
  );
}

function CouponRate({ readings }: Pick<CouponFieldsProps, 'readings'>) {
  const unit = useBench((state) => state.session.unit);
  if (!isWholeCoupon(readings)) {
    return <span className="aside">Counts in place of the rate when thicknesses and minutes are there.</span>;
  }
  const rate = surfaceRate({ ...readings, faces: readings.faces ?? 2 }) / millimetresIn(unit);
  return `Rate ${Number(rate.toPrecision(4))} ${unit} a minute.`;
}

function readMinutes(text: string): number | undefined {
  const minutes = readFigure(text);
  return minutes !== undefined && minutes >= 0.01 ? minutes : undefined;
}
