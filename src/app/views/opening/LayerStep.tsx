/** Layers that are no outlines of the part, as found; more are in the panel. */
import { setLayerRole } from '#app/state/edits/edit-job.ts';
import { useDocument, useWorkbench } from '#app/views/workbench-context.ts';

export function LayerStep() {
  const { actions, layout } = useWorkbench();
  const ignored = useDocument()?.job.layers?.ignore ?? [];
  return (
    <>
      <p>
        <strong>
          {ignored.length === 0
            ? 'Every layer but the edge draws regions.'
            : 'These layers do not draw the part and are left out.'}
        </strong>
      </p>
      <p className="row">
        {ignored.map((name) => (
          <button
            key={name}
            type="button"
            onClick={() =>
              actions.edit(`layer ${name} draws regions`, (before) => setLayerRole(before, name, 'regions'))
            }
          >
            Take {name} in
          </button>
        ))}
        <button type="button" onClick={() => layout.setState({ panel: 'drawing' })}>
          All layers
        </button>
      </p>
    </>
  );
}
