/**
 * Colour numbers of the layers of stages in DXF files, by how many stages there are, the deepest first. Each has a contrast of 3 : 1 at least on
 * black and on white (WCAG 2.2, 1.4.11), by either of the two tables of colours that readers use, as near to the stage's colour on screen as that allows; a table, so that a file's colours never change.
 * Past four stages neighbours come near to each other: the marks carry it.
 */
import type { Masking } from '#job/job.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { nearestColorNumber } from './color-number.ts';

export const LAYER_COLORS: readonly (readonly number[])[] = [
  [44],
  [223, 124],
  [223, 44, 124],
  [223, 25, 54, 124],
  [223, 13, 44, 75, 124],
  [213, 243, 32, 55, 85, 124],
  [213, 243, 25, 44, 65, 95, 134],
  [213, 230, 13, 32, 55, 64, 95, 134],
  [193, 233, 13, 32, 45, 54, 75, 95, 134],
  [193, 233, 13, 32, 45, 44, 54, 85, 95, 124],
  [223, 220, 243, 25, 32, 44, 45, 84, 85, 114, 124],
  [193, 233, 13, 240, 32, 45, 44, 55, 64, 95, 124, 114],
];

/** With more stages than the table holds, the number nearest to the stage's colour on screen. */
export function layerColorOf(
  { number, color }: Pick<Stage, 'number' | 'color'>,
  { stages, masking }: { readonly stages: number; readonly masking: Masking },
): number {
  const place = masking === 're-mask' ? stages - number : number - 1;
  return LAYER_COLORS[stages - 1]?.[place] ?? nearestColorNumber(color);
}
