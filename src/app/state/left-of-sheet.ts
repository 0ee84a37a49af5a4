/** What a depth leaves of the sheet, mm: by its one thickness, at most where it tapers, or by its survey at the regions' labels. */
import type { PlanFile } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';
import { isTapered, sheetThickness } from './sheet-thickness.ts';

export interface LeftOfSheet {
  readonly least: number;
  readonly most: number;
  /** The sheet tapers: nowhere is more left. */
  readonly isMost: boolean;
  /** By a survey: where the sheet bends, a little more or less beside the labels. */
  readonly isSurveyed: boolean;
}

interface Sheet {
  readonly job: JobFile;
  readonly survey: PlanFile['survey'] | undefined;
  /** What sizing takes off the thickness, mm. */
  readonly sized: number;
}

/** @param regions ids; none for land */
export function leftOfSheet(
  { job, survey, sized }: Sheet,
  regions: readonly string[],
  depth: number,
): LeftOfSheet {
  const plain = sheetThickness(job, sized) - depth;
  if (survey === undefined) return { least: plain, most: plain, isMost: isTapered(job), isSurveyed: false };
  const ids = new Set(regions);
  const own = survey.regions.filter(({ id }) => ids.has(id));
  const found = (own.length > 0 ? own : survey.readings).map((each) => each.thickness - sized - depth);
  return { least: Math.min(...found), most: Math.max(...found), isMost: false, isSurveyed: true };
}

/** `2.00`, `≤2.00`, `≈2.00` or `1.98–2.03`, as printed in the unit. */
export function leftFigure({ least, most, isMost, isSurveyed }: LeftOfSheet, unit: ShownUnit): string {
  const [from, to] = [least, most].map((each) => lengthFigure(each, unit));
  if (from !== to) return `${from}–${to}`;
  return `${isMost ? '≤' : isSurveyed ? '≈' : ''}${to}`;
}
