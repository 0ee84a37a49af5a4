/** What was found in the drawing: its unit, layers and their parts, joins, trouble with places, regions. */
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { DrawingFields } from './DrawingFields.tsx';
import { FarFields } from './FarFields.tsx';
import { FigureList } from './FigureList.tsx';
import { LayerRoles } from './LayerRoles.tsx';
import { NoiseLayers } from './NoiseLayers.tsx';
import { SheetEdgeFields } from './SheetEdgeFields.tsx';
import { TroubleList } from './TroubleList.tsx';

export function DrawingPanel() {
  const job = useDocument()?.job;
  const layers = useWorkbenchState((state) => state.derived.page?.layers) ?? [];
  const regions = useWorkbenchState((state) => state.derived.page?.plan?.regions.length);
  if (job === undefined) return <p className="aside">Open a drawing or a job first.</p>;
  return (
    <div className="layers">
      <p className="aside">{job.drawing}</p>
      {layers.length > 0 && (
        <>
          <DrawingFields job={job} />
          <SheetEdgeFields job={job} />
          <h3>{layers.length === 1 ? '1 layer' : `${layers.length} layers`}</h3>
          <NoiseLayers />
          <LayerRoles job={job} layers={layers} />
          <FarFields job={job} />
          <TroubleList />
          {regions !== undefined && (
            <p className="regions-found">{regions === 1 ? '1 region' : `${regions} regions`} found.</p>
          )}
          <FigureList key={job.drawing} job={job} />
        </>
      )}
    </div>
  );
}
