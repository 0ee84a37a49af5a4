/** A sizing as it stands in plan.json, with the metal that it takes; the outline that it leaves is the plan's own. mm, minutes, mm³, g */
import type { Loop } from '#geometry/span.ts';
import type { SizingRecord } from '#job/formats/plan-file.ts';
import type { Job } from '#job/job.ts';
import { thickestOf, thinnestOf } from '#job/sheet-at.ts';
import { sheetVolume } from '#part/sheet-volume.ts';

/** @param sheets the sheet's border before and after; without one no volume is known */
export function sizingRecord(
  { sizing, stock }: Pick<Job, 'sizing' | 'stock'>,
  sheets: { readonly drawn: readonly Loop[]; readonly left: readonly Loop[] },
): SizingRecord | undefined {
  if (sizing === undefined) return undefined;
  const { amount, faces, minutes, edge, doubt, sheet } = sizing;
  const before = sheetVolume(sheets.drawn, sheet.thickness);
  const after = sheetVolume(sheets.left, stock.thickness);
  const removed = before === undefined || after === undefined ? null : before - after;
  return {
    amount,
    faces,
    minutes,
    edge,
    doubt,
    before: rangeOf(sheet.thickness),
    after: rangeOf(stock.thickness),
    removedVolume: removed,
    removedMass: removed === null || stock.density === undefined ? null : (removed * stock.density) / 1000,
  };
}

function rangeOf(thickness: Job['stock']['thickness']): SizingRecord['before'] {
  return { least: thinnestOf(thickness), most: thickestOf(thickness) };
}
