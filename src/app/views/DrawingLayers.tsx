/** Layers of the drawing with what is on them, and the part that each one plays. */
import { type LayerRole, layerRole, setLayerRole } from '#app/state/edit-job.ts';
import type { DrawingLayer } from '#drawing/drawing.ts';
import { useBench, useDocument, useWorkbench } from './workbench-context.ts';

const ROLES: readonly { readonly role: LayerRole; readonly words: string }[] = [
  { role: 'outline', words: 'edge of the part' },
  { role: 'regions', words: 'regions' },
  { role: 'ignore', words: 'left out' },
];

export function DrawingLayers() {
  const { actions } = useWorkbench();
  const job = useDocument()?.job;
  const layers = useBench((state) => state.derived.page?.layers);
  if (job === undefined || layers === undefined || layers.length === 0) return null;
  const hasOutline = (job.layers?.outline?.length ?? 0) > 0;
  return (
    <details className="layers" open={!hasOutline}>
      <summary>
        Drawing: {layers.length === 1 ? '1 layer' : `${layers.length} layers`}
        {!hasOutline && ', none is the edge of the part yet'}
      </summary>
      <ul>
        {layers.map((layer) => (
          <li key={layer.name}>
            <label>
              <span className="layer-name">{layer.name}</span>
              <span className="aside">{contents(layer)}</span>
              <select
                value={layerRole(job, layer.name)}
                disabled={!layer.shown}
                onChange={({ target }) =>
                  actions.edit(`part of layer ${layer.name}`, (before) =>
                    setLayerRole(before, layer.name, target.value as LayerRole),
                  )
                }
              >
                {ROLES.map(({ role, words }) => (
                  <option key={role} value={role}>
                    {words}
                  </option>
                ))}
              </select>
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}

function contents({ counts, shown }: DrawingLayer): string {
  const words = Object.entries(counts).map(([kind, count]) => `${count} ${kind}`);
  return `${words.length === 0 ? 'empty' : words.join(', ')}${shown ? '' : ' (off, passed over)'}`;
}
