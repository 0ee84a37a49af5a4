/** One coat beside a new coat for each stage, as lines of text for under a stage table. */
import type { PlanFile } from './stage-table.ts';
import { alignedLines } from './text-table.ts';

/** A row for each way, the one planned marked; none where there is nothing to choose. */
export function maskingsText({ maskings, masking }: Pick<PlanFile, 'maskings' | 'masking'>): string[] {
  if (maskings === undefined) return [];
  const rows = maskings.map((way) => {
    const most = (key: 'allowance' | 'fillet' | 'corner') => Math.max(...way.walls.map((wall) => wall[key]));
    return [
      way.masking === masking ? `${way.masking}, as planned` : way.masking,
      String(way.coats),
      String(way.stages),
      way.minutes.toFixed(1),
      `${Math.round(way.worstShare * 100)} %`,
      way.worstDeviation.toFixed(3),
      most('allowance').toFixed(3),
      most('fillet').toFixed(3),
      most('corner').toFixed(3),
      way.overhang.toFixed(3),
    ];
  });
  return alignedLines([HEADS, ...rows], ['left', 'right']);
}

/** Lengths in mm, each the greatest that the part has. */
const HEADS = [
  'masking',
  'coats',
  'stages',
  'minutes',
  'of tolerance',
  'deviation mm',
  'allowance',
  'fillet R',
  'corner R',
  'overhang',
];
