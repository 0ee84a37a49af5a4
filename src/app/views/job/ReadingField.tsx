/** One reading of a coupon, edited in place. */
import type { CouponReadings, ReadingKey } from '#app/state/edits/edit-coupons.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { LEAST_CHANGE } from '#job/fields/etch-figure-fields.ts';
import type { Limits } from '#job/fields/field.ts';
import { JOB } from '#job/job-file.ts';

const { parts } = JOB.members.process.members.coupon;

export interface ReadingsProps {
  readonly readings: CouponReadings;
  readonly onTake: (change: CouponReadings) => void;
}

interface ReadingFieldProps extends ReadingsProps {
  readonly name: Exclude<ReadingKey, 'minutes'>;
  /** Nearer than declared, where other readings are there, mm. */
  readonly within?: Partial<Limits>;
  /** It can be emptied. */
  readonly isOpen?: boolean;
  /** How far a reading may be off, where nothing is set. */
  readonly gauge?: number;
}

export function ReadingField({ readings, onTake, name, within, gauge, ...rest }: ReadingFieldProps) {
  const { isOpen = gauge !== undefined } = rest;
  return (
    <LengthField
      isFine
      of={parts[name]}
      length={readings[name]}
      usual={gauge}
      placeholder="none"
      {...(within === undefined ? {} : { within })}
      onTake={(length) => onTake({ [name]: length })}
      onClear={isOpen ? () => onTake({ [name]: undefined }) : undefined}
    />
  );
}

/** So much must a coupon have lost between two readings, or its opening gained. */
export function above(reading: number | undefined): Partial<Limits> {
  return reading === undefined ? {} : { least: reading + LEAST_CHANGE };
}

export function below(reading: number | undefined): Partial<Limits> {
  return reading === undefined ? {} : { most: reading - LEAST_CHANGE };
}
