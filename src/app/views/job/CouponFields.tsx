/** One coupon: its thickness before and after, how long it was in the bath, and an opening where one was measured. */
import { isWholeCoupon } from '#app/state/edits/edit-coupons.ts';
import { NumberField } from '#app/views/NumberField.tsx';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { surfaceRate, THICKNESS_GAUGE } from '#bath/coupon.ts';
import { JOB } from '#job/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { OpeningFields } from './OpeningFields.tsx';
import { above, below, ReadingField, type ReadingsProps } from './ReadingField.tsx';
import { wordsOf } from './words-of.ts';

const { parts } = JOB.members.process.members.coupon;

interface CouponFieldsProps extends ReadingsProps {
  /** In a sentence, and at its head. */
  readonly name: string;
  readonly title: string;
  readonly onRemove: (() => void) | undefined;
}

export function CouponFields({ name, title, onRemove, ...props }: CouponFieldsProps) {
  const { readings, onTake } = props;
  const { before, after, minutes, faces = 2 } = readings;
  return (
    <fieldset>
      <legend>{title}</legend>
      <ReadingField {...props} name="before" within={above(after)} />
      <ReadingField {...props} name="after" within={below(before)} />
      <NumberField of={parts.minutes} value={minutes} onTake={(value) => onTake({ minutes: value })} />
      <ChoiceField
        label={parts.faces.label}
        value={String(faces)}
        onTake={(value) => onTake({ faces: value === '1' ? 1 : 2 })}
      >
        {Object.entries(wordsOf(parts.faces)).map(([count, said]) => (
          <option key={count} value={count}>
            {said}
          </option>
        ))}
      </ChoiceField>
      <ReadingField {...props} name="gauge" gauge={THICKNESS_GAUGE.value} />
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
