/** The sheet's thickness in mm, as measured or else nominal; of a tapered sheet the thickest, so that every level fits on the ladder. */
import type { JobFile } from '#job/job-file.ts';
import { meanReading } from '#job/measured-sheet.ts';
import { bareFaces } from '#job/sizing.ts';
import { millimetresIn } from '#units/length-unit.ts';

/**
 * What is masked and etched: once it is sized, where it is.
 * @param unasked mm that it gets thinner by in the plan on show, where the job says nothing of sizing
 */
export function sheetThickness(job: JobFile, unasked = 0): number {
  const most = orderedThickness(job);
  if (job.process.sizing === undefined) return most - unasked;
  const { amount, to, faces = 'both' } = job.process.sizing;
  const unit = millimetresIn(job.units ?? 'mm');
  if (amount !== undefined) return most - bareFaces(faces) * amount * unit;
  if (to === undefined) return most;
  const { thickness } = job.stock;
  const slope = typeof thickness === 'number' ? 0 : Math.abs(thickness.thicknessTo - thickness.thicknessFrom);
  return (to + slope / 2) * unit;
}

/** As it comes. */
export function orderedThickness({ stock, units }: JobFile): number {
  const { thickness, measured } = stock;
  const most =
    typeof thickness === 'number'
      ? (meanReading(measured) ?? thickness)
      : Math.max(thickness.thicknessFrom, thickness.thicknessTo);
  return most * millimetresIn(units ?? 'mm');
}

/** Whether what a depth leaves depends on the place. */
export function isTapered({ stock }: JobFile): boolean {
  return typeof stock.thickness !== 'number';
}
