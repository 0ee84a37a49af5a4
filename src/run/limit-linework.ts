/** Keeps linework that no sheet to mill can have from the arrangement, whose time and memory grow with every line. */
import type { Drawing } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Job } from '#job/job.ts';
import { MOST_IN_CURVE, MOST_LINEWORK } from '#part/part-limits.ts';
import { pickCurves } from '#part/pick-curves.ts';

/** `drawing-too-big` when there is more linework than that, in all or in one curve. */
export function limitLinework(drawing: Drawing, layers: Job['layers']): Finding | undefined {
  const { outline, regions } = pickCurves(drawing, layers);
  let found = 0;
  let most = 0;
  for (const source of [...outline, ...regions]) {
    const { length } = itemAt(drawing.curves, source).spans;
    found += length;
    most = Math.max(most, length);
  }
  if (found > MOST_LINEWORK)
    return finding('drawing-too-big', { what: 'lines and arcs', found, limit: MOST_LINEWORK });
  if (most > MOST_IN_CURVE)
    return finding('drawing-too-big', {
      what: 'lines and arcs in one curve',
      found: most,
      limit: MOST_IN_CURVE,
    });
  return undefined;
}
