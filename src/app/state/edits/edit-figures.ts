/** Figures of a job that have controls of their own, as pure functions: (job, arguments) → job. Lengths come in millimetres. */

import { setField } from '#job/fields/edit-field.ts';
import type { JobFile } from '#job/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';

/** Six places: a millionth of a unit is below anything that can be measured, and keeps the file readable. */
export function inJobUnits(job: JobFile, millimetres: number): number {
  return toMillionth(millimetres / millimetresIn(job.units ?? 'mm'));
}

/** Digits, not places: a slow bath in inches has its first one in the fourth place. */
function rateInJobUnits(job: JobFile, millimetres: number): number {
  return Number((millimetres / millimetresIn(job.units ?? 'mm')).toPrecision(RATE_DIGITS));
}

/** Far beyond what any coupon gives, and short enough to read. */
const RATE_DIGITS = 7;

/** The other way round, for what is shown. */
export function fromJobUnits(job: JobFile, length: number): number {
  return length * millimetresIn(job.units ?? 'mm');
}

/** Thicknesses measured before the first dip, mm; undefined where they have places, as those of a tapered sheet must. */
export function sheetReadingsOf(job: JobFile): readonly number[] | undefined {
  const { thickness, measured = [] } = job.stock;
  const plain = measured.filter((reading) => typeof reading === 'number');
  if (typeof thickness !== 'number' || plain.length < measured.length) return undefined;
  return plain.map((reading) => fromJobUnits(job, reading));
}

export function setSheetReadings(job: JobFile, lengths: readonly number[]): JobFile {
  const measured = lengths.map((length) => inJobUnits(job, length));
  return setField(job, ['stock', 'measured'], measured.length === 0 ? undefined : measured);
}

/** Thickness at one end of a sheet that tapers. */
export function setTaperEnd(job: JobFile, end: 'thicknessFrom' | 'thicknessTo', length: number): JobFile {
  const { thickness } = job.stock;
  if (typeof thickness === 'number') return job;
  return { ...job, stock: { ...job.stock, thickness: { ...thickness, [end]: inJobUnits(job, length) } } };
}

/** Rate in mm/min. It stands in place of a coupon: a job has one or the other, or leaves it to the bath. */
export function setRate(job: JobFile, rate: number | undefined): JobFile {
  const bare = setField(job, ['process', 'coupon'], undefined);
  return setField(bare, ['process', 'rate'], rate && rateInJobUnits(job, rate));
}
