/**
 * Sheet, bath and rules of a job, as pure functions: (job, arguments) → job. Lengths come in millimetres. What is set to
 * undefined leaves the job: then the default counts, whatever it will be.
 */
import type { Tank } from '#bath/bath-load.ts';
import type { WideLines } from '#drawing/drawing.ts';
import type { EdgeDatum, MakingRules, Masking } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';

/** Six places: a millionth of a unit is below anything that can be measured, and keeps the file readable. */
export function inJobUnits(job: JobFile, millimetres: number): number {
  return Number((millimetres / millimetresIn(job.units ?? 'mm')).toFixed(6));
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

export function setAlloy(job: JobFile, alloy: string | undefined): JobFile {
  return { ...job, stock: withKey(job.stock, 'alloy', alloy) };
}

/** g/cm³ */
export function setDensity(job: JobFile, density: number | undefined): JobFile {
  return { ...job, stock: withKey(job.stock, 'density', density) };
}

export function setSheetTolerance(job: JobFile, side: 'minus' | 'plus', length: number | undefined): JobFile {
  return { ...job, stock: withKey(job.stock, side, length && inJobUnits(job, length)) };
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
  return { ...job, stock: withKey(job.stock, 'measured', measured.length === 0 ? undefined : measured) };
}

/** Thickness at one end of a sheet that tapers. */
export function setTaperEnd(job: JobFile, end: 'thicknessFrom' | 'thicknessTo', length: number): JobFile {
  const { thickness } = job.stock;
  if (typeof thickness === 'number') return job;
  return { ...job, stock: { ...job.stock, thickness: { ...thickness, [end]: inJobUnits(job, length) } } };
}

export function setBath(job: JobFile, bath: string | undefined): JobFile {
  return { ...job, process: withKey(job.process, 'bath', bath) };
}

/** Rate in mm/min. It stands in place of a coupon: a job has one or the other, or leaves it to the bath. */
export function setRate(job: JobFile, rate: number | undefined): JobFile {
  const { coupon, ...process } = job.process;
  return { ...job, process: withKey(process, 'rate', rate && rateInJobUnits(job, rate)) };
}

/** °C at which the rate was measured, and at which the bath is run. */
export function setTemperature(job: JobFile, key: 'rateAtC' | 'bathC', celsius: number | undefined): JobFile {
  return { ...job, process: withKey(job.process, key, celsius) };
}

/** Litres, and g/L of dissolved metal now and at most. */
export function setTank(job: JobFile, tank: Tank | undefined): JobFile {
  return { ...job, process: withKey(job.process, 'tank', tank) };
}

/** Share, ±. */
export function setRateSpread(job: JobFile, rateSpread: number | undefined): JobFile {
  return { ...job, process: withKey(job.process, 'rateSpread', rateSpread) };
}

export function setEdgeDatum(job: JobFile, edgeDatum: EdgeDatum | undefined): JobFile {
  return { ...job, process: withKey(job.process, 'edgeDatum', edgeDatum) };
}

export function setMasking(job: JobFile, masking: Masking | undefined): JobFile {
  return { ...job, process: withKey(job.process, 'masking', masking) };
}

export function setRule(job: JobFile, rule: keyof MakingRules, length: number | undefined): JobFile {
  const rules = withKey(job.rules ?? {}, rule, length === undefined ? undefined : inJobUnits(job, length));
  return withKey(job, 'rules', Object.keys(rules).length === 0 ? undefined : rules);
}

export function setJoinTolerance(job: JobFile, length: number | undefined): JobFile {
  return withKey(job, 'joinTolerance', length === undefined ? undefined : inJobUnits(job, length));
}

export function setDrawingUnits(job: JobFile, unit: LengthUnit | undefined): JobFile {
  return withKey(job, 'drawingUnits', unit);
}

export function setWideLines(job: JobFile, taken: WideLines | undefined): JobFile {
  return withKey(job, 'wideLines', taken);
}

/** A key that nobody wants leaves the object; one that stays keeps its place. */
function withKey<Held extends object, Key extends keyof Held>(
  held: Held,
  key: Key,
  value: Held[Key] | undefined,
): Held {
  if (value !== undefined) return { ...held, [key]: value };
  const { [key]: _, ...rest } = held;
  return rest as Held;
}
