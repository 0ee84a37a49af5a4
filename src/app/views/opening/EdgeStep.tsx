/** The edge of the part, as found; a layer or the outermost outline may take its place. */

import { setLayerRole } from '#app/state/edits/edit-job.ts';
import { outlineLayers, setSheetChoice } from '#app/state/edits/edit-sheet.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

const MOST = 6;

export function EdgeStep() {
  const { actions } = useWorkbench();
  const job = useDocument()?.job;
  const layers = useWorkbenchState((state) => state.derived.page?.layers) ?? [];
  if (job === undefined) return null;
  const ignored = job.layers?.ignore ?? [];
  const likely = layers.filter(
    ({ name, counts, shown }) => shown && !ignored.includes(name) && Object.keys(counts).length > 0,
  );
  const now = outlineLayers(job);
  return (
    <>
      <p>
        <strong>Which outline is the edge of the part?</strong>
      </p>
      <p className="row">
        <button
          type="button"
          aria-pressed={job.layers?.outline === 'outermost'}
          onClick={() =>
            actions.edit('outermost outline is the edge', (before) => setSheetChoice(before, 'outermost'))
          }
        >
          Outermost outline
        </button>
        {likely.slice(0, MOST).map(({ name }) => (
          <button
            key={name}
            type="button"
            aria-pressed={now.includes(name)}
            onClick={() =>
              actions.edit(`layer ${name} is the edge`, (before) => setLayerRole(before, name, 'outline'))
            }
          >
            Layer {name}
          </button>
        ))}
      </p>
    </>
  );
}
