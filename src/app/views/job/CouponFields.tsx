/** One coupon: its thickness before and after, how long it was in the bath, and an opening where one was measured. */
import { isWholeCoupon } from '#app/state/edits/edit-coupons.ts';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { surfaceRate, THICKNESS_GAUGE } from '#bath/coupon.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { readFigure } from '#units/read-figure.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { OpeningFields } from './OpeningFields.tsx';
import { LEAST_CHANGE, ReadingField, type ReadingsProps } from './ReadingField.tsx';

interface CouponFieldsProps extends ReadingsProps {
  readonly name: string;
  readonly onRemove: (() => void) | undefined;
}

export function CouponFields({ name, onRemove, ...props }: CouponFieldsProps) {
  const { readings, onTake } = props;
  const { before, after, minutes, faces = 2 } = readings;
  return (
    <fieldset>
      <legend>{name.replace(/^c/, 'C')}</legend>
      <ReadingField {...props} name="before" label="Before" least={(after ?? 0) + LEAST_CHANGE} />
      <ReadingField {...props} name="after" label="After" below={before} />
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
      <ReadingField {...props} name="gauge" label="Gauge may be off by" gauge={THICKNESS_GAUGE.value} />
      <Disclosure title="Opening in its maskant" startsOpen={readings.openingDepth !== undefined}>
        <OpeningFields {...props} />
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
  const unit = useWorkbenchState((state) => state.session.unit);
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
