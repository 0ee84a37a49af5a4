/** One coat beside a new coat for each stage, as lines of text for under a stage table. */
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import type { PlanFile } from './stage-table.ts';
import { alignedLines } from './text-table.ts';

/** A row for each way, the one planned marked; none where there is nothing to choose. */
export function maskingsText(
  { maskings, masking }: Pick<PlanFile, 'maskings' | 'masking'>,
  unit: ShownUnit,
): string[] {
  if (maskings === undefined) return [];
  const rows = maskings.map((way) => {
    const most = (key: 'allowance' | 'fillet' | 'corner') => Math.max(...way.walls.map((wall) => wall[key]));
    return [
      way.masking === masking ? `${way.masking}, as planned` : way.masking,
      String(way.coats),
      String(way.stages),
      way.minutes.toFixed(1),
      `${Math.round(way.worstShare * 100)} %`,
      ...[way.worstDeviation, most('allowance'), most('fillet'), most('corner'), way.overhang].map((length) =>
        gaugedFigure(length, unit),
      ),
    ];
  });
  return alignedLines([HEADS, ...rows], ['left', 'right']);
}

/** Lengths, from the deviation on, are each the greatest that the part has. */
const HEADS = [
  'masking',
  'coats',
  'stages',
  'minutes',
  'of tolerance',
  'deviation',
  'allowance',
  'fillet R',
  'corner R',
  'overhang',
];
