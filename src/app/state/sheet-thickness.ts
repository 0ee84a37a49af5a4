/** The sheet's nominal thickness in mm; of a tapered sheet the thickest, so that every level fits on the ladder. */
import type { JobFile } from '#part/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';

export function sheetThickness({ stock, units }: JobFile): number {
  const { thickness } = stock;
  const most =
    typeof thickness === 'number' ? thickness : Math.max(thickness.thicknessFrom, thickness.thicknessTo);
  return most * millimetresIn(units ?? 'mm');
}
