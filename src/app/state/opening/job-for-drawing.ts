/**
 * A job for a drawing just opened. Nothing is inherited from the previous job: what the drawing itself gives is filled in (its
 * unit, the layer of its edge, layers about the part), a shop's own defaults where the user saved some, and everything else is asked for.
 */

import { setJobUnit } from '#app/state/edits/job-unit.ts';
import type { ShopDefault } from '#app/state/keeping/shop-default.ts';
import type { BegunJob } from '#app/worker/plan-service.ts';
import type { JobFile } from '#job/job-file.ts';

/**
 * mm: stands in the file until the sheet is set, since a job must have one; thicker than most that is etched, so that no figure of the
 * drawing is passed over for it.
 */
export const UNSAID_THICKNESS = 25.4;

export function jobForDrawing(drawing: string, begun: BegunJob | undefined, shop?: ShopDefault): JobFile {
  const bare: JobFile = {
    format: 'isobath-job',
    version: 1,
    name: drawing.replace(/\.dxf$/i, ''),
    drawing,
    units: 'mm',
    layers: begun?.layers ?? { outline: [] },
    stock: { thickness: UNSAID_THICKNESS },
    process: {},
    requirements: [],
  };
  const own = shop === undefined ? bare : { ...bare, ...shop.choices };
  return setJobUnit(own, begun?.units ?? 'mm');
}
