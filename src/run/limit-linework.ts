/** Keeps linework that no sheet to mill can have from the arrangement, whose time and memory grow with every line. */
import type { Drawing } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Job } from '#part/job.ts';
import { pickCurves } from '#part/pick-curves.ts';

/**
 * Lines and arcs on the layers that count. Eight hundred pockets with eight hundred nested in them have 13 000; the regions of
 * 100 000 are found in a few seconds, those of a million in most of a minute and 3 GB (measured).
 */
export const MOST_LINEWORK = 100_000;

/** `drawing-too-big` when there is more linework than that. */
export function limitLinework(drawing: Drawing, layers: Job['layers']): Finding | undefined {
  const { outline, regions } = pickCurves(drawing, layers);
  let found = 0;
  for (const source of [...outline, ...regions]) found += itemAt(drawing.curves, source).spans.length;
  if (found <= MOST_LINEWORK) return undefined;
  return finding('drawing-too-big', { what: 'lines and arcs', found, limit: MOST_LINEWORK });
}
