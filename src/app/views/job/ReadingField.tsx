/** One reading of a coupon, edited in place. Limits are our own choice, mm. */
import type { CouponReadings, ReadingKey } from '#app/state/edits/edit-coupons.ts';
import { LengthField } from '#app/views/LengthField.tsx';

/** The least that a coupon must have lost, or its opening gained: what a micrometer can resolve. */
export const LEAST_CHANGE = 0.001;

/** How far a reading may be off. */
const FINEST_GAUGE = 0.001;
const COARSEST_GAUGE = 1;

export interface ReadingsProps {
  readonly readings: CouponReadings;
  readonly onTake: (change: CouponReadings) => void;
}

interface ReadingFieldProps extends ReadingsProps {
  readonly name: ReadingKey;
  readonly label: string;
  readonly least?: number;
  /** What it must stay below, where that was read. */
  readonly below?: number | undefined;
  /** It can be emptied. */
  readonly isOpen?: boolean;
  /** How far a reading may be off, where nothing is set. */
  readonly gauge?: number;
}

export function ReadingField({ readings, onTake, name, label, below, gauge, ...rest }: ReadingFieldProps) {
  const { least = gauge === undefined ? LEAST_CHANGE : FINEST_GAUGE, isOpen = gauge !== undefined } = rest;
  const most = gauge === undefined ? below && below - LEAST_CHANGE : COARSEST_GAUGE;
  return (
    <LengthField
      isFine
      label={label}
      length={readings[name]}
      usual={gauge}
      placeholder="none"
      least={least}
      {...(most === undefined ? {} : { most })}
      onTake={(length) => onTake({ [name]: length })}
      onClear={isOpen ? () => onTake({ [name]: undefined }) : undefined}
    />
  );
}
