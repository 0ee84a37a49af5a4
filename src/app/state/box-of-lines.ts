/** The box of drawn lines: what to show of a drawing that has no plan. */
import type { DrawnLine } from '#app/worker/planned-page.ts';
import { type Box, boxOfPoints } from '#geometry/box.ts';
import { contourPoints } from './region-shape.ts';

export function boxOfLines(lines: readonly DrawnLine[]): Box | undefined {
  return lines.length === 0 ? undefined : boxOfPoints(lines.flatMap((line) => contourPoints(line.contour)));
}
