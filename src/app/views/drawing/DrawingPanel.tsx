/** What was found in the drawing: its unit, layers and their parts, joins, trouble with places, regions, depth notes. */
import { useState } from 'react';
import { outlineLayers, sheetChoice } from '#app/state/edit-sheet.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { JobFile } from '#job/job-file.ts';
import { DepthNotesView } from './DepthNotesView.tsx';
import { DrawingFields } from './DrawingFields.tsx';
import { LayerRoles } from './LayerRoles.tsx';
import { NoiseLayers } from './NoiseLayers.tsx';
import { SheetFields } from './SheetFields.tsx';
import { TroubleList } from './TroubleList.tsx';

export function DrawingPanel() {
  const job = useDocument()?.job;
  const id = useWorkbenchState((state) => state.openJob?.id);
  if (job === undefined) return null;
  return <DrawingFound key={`${id} ${job.drawing}`} job={job} />;
}

function DrawingFound({ job }: { readonly job: JobFile }) {
  const layers = useWorkbenchState((state) => state.derived.page?.layers) ?? [];
  const regions = useWorkbenchState((state) => state.derived.page?.plan?.regions.length);
  const hasOutline = outlineLayers(job).length > 0 || sheetChoice(job) !== undefined;
  // A job that is only beginning begins here; what is open then stays so until it is closed.
  const [isNew] = useState(!hasOutline || job.requirements.length === 0);
  if (layers.length === 0) return null;
  return (
    <details className="layers" open={isNew}>
      <summary>
        Drawing: {layers.length === 1 ? '1 layer' : `${layers.length} layers`}
        {!hasOutline && ', none is the edge of the part yet'}
      </summary>
      <DrawingFields job={job} />
      <SheetFields job={job} />
      <h3>Layers</h3>
      <NoiseLayers />
      <LayerRoles job={job} layers={layers} />
      <TroubleList />
      {regions !== undefined && (
        <p className="regions-found">{regions === 1 ? '1 region' : `${regions} regions`} found.</p>
      )}
      <DepthNotesView job={job} />
    </details>
  );
}
