/** An opening in a coupon's maskant: how wide it was and how wide the metal is now, and the depth etched there. Emptied, it goes. */
import type { CouponReadings } from '#app/state/edit-coupons.ts';
import { isWholeOpening } from '#app/state/edit-coupons.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { WIDTH_GAUGE } from '#bath/coupon.ts';
import { COARSEST_GAUGE, FINEST_GAUGE, LEAST_CHANGE } from './coupon-limits.ts';

interface OpeningFieldsProps {
  readonly readings: CouponReadings;
  readonly onTake: (change: CouponReadings) => void;
}

export function OpeningFields({ readings, onTake }: OpeningFieldsProps) {
  const { before, openingBefore, openingAfter, openingDepth, openingGauge } = readings;
  return (
    <div className="fields">
      <LengthField
        isFine
        label="Width before"
        length={openingBefore}
        placeholder="none"
        least={LEAST_CHANGE}
        {...(openingAfter === undefined ? {} : { most: openingAfter - LEAST_CHANGE })}
        onTake={(length) => onTake({ openingBefore: length })}
        onClear={() => onTake({ openingBefore: undefined })}
      />
      <LengthField
        isFine
        label="Width after"
        length={openingAfter}
        placeholder="none"
        least={(openingBefore ?? 0) + LEAST_CHANGE}
        onTake={(length) => onTake({ openingAfter: length })}
        onClear={() => onTake({ openingAfter: undefined })}
      />
      <LengthField
        isFine
        label="Depth in it"
        length={openingDepth}
        placeholder="none"
        least={LEAST_CHANGE}
        {...(before === undefined ? {} : { most: before - LEAST_CHANGE })}
        onTake={(length) => onTake({ openingDepth: length })}
        onClear={() => onTake({ openingDepth: undefined })}
      />
      <LengthField
        isFine
        label="Widths may be off by"
        length={openingGauge}
        usual={WIDTH_GAUGE.value}
        least={FINEST_GAUGE}
        most={COARSEST_GAUGE}
        onTake={(length) => onTake({ openingGauge: length })}
        onClear={() => onTake({ openingGauge: undefined })}
      />
      <p>
        {isWholeOpening(readings) ? (
          `Undercut / depth ${openingFactor(readings)}.`
        ) : (
          <span className="aside">Counts in place of the etch factor when widths and depth are there.</span>
        )}
      </p>
    </div>
  );
}

/** It widens on both sides. */
function openingFactor({
  openingBefore,
  openingAfter,
  openingDepth,
}: Readonly<Record<'openingBefore' | 'openingAfter' | 'openingDepth', number>>): number {
  return Number(((openingAfter - openingBefore) / (2 * openingDepth)).toPrecision(4));
}
