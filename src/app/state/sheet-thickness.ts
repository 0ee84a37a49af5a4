/** The sheet's thickness in mm, as measured or else nominal; of a tapered sheet the thickest, so that every level fits on the ladder. */
import type { JobFile } from '#job/job-file.ts';
import { meanReading } from '#job/measured-sheet.ts';
import { millimetresIn } from '#units/length-unit.ts';

export function sheetThickness({ stock, units }: JobFile): number {
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
