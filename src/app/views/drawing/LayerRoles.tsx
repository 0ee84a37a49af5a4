/** Layers of the drawing with what is on them, and the part that each one plays. */
import { type LayerRole, layerRole, setLayerRole } from '#app/state/edits/edit-job.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';
import type { DrawingLayer } from '#drawing/drawing.ts';
import type { JobFile } from '#job/job-file.ts';

const ROLES: readonly { readonly role: LayerRole; readonly words: string }[] = [
  { role: 'outline', words: 'edge of the part' },
  { role: 'regions', words: 'regions' },
  { role: 'far', words: 'regions, far face' },
  { role: 'both', words: 'regions, both faces' },
  { role: 'ignore', words: 'left out' },
];

interface LayerRolesProps {
  readonly job: JobFile;
  readonly layers: readonly DrawingLayer[];
}

export function LayerRoles({ job, layers }: LayerRolesProps) {
  const { actions } = useWorkbench();
  return (
    <ul className="layer-roles" aria-label="Layers">
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
  );
}

function contents({ counts, shown }: DrawingLayer): string {
  const words = Object.entries(counts).map(([kind, count]) => `${count} ${kind}`);
  return `${words.length === 0 ? 'empty' : words.join(', ')}${shown ? '' : ' (off, passed over)'}`;
}
