/** A part as etched, from the entities of a drawing and what its job says otherwise than the buoy's lid's. */
import { etchedPart } from '#run/etched-part.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';

/** Without files; drawn in mm. */
export async function etchedLid(entities: readonly string[], job: object) {
  const { plan, thickness } = await runJob(
    {
      jobText: JSON.stringify({ ...buoyLidJob, ...job }),
      drawingName: 'lid.dxf',
      drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities })),
    },
    { withoutFiles: true },
  );
  if (plan === undefined || thickness === undefined) throw new Error('the part can be planned');
  return { etched: etchedPart(plan, thickness), plan, thickness };
}
