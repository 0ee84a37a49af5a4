/** Layers that look like dimensions, centre lines, a border or notes, to be left out all in one step. */
import { leaveLayersOut } from '#app/state/edits/edit-job.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

/** More names than these fill the panel. */
const MOST_NAMED = 12;

export function NoiseLayers() {
  const { actions } = useWorkbench();
  const findings = useWorkbenchState((state) => state.derived.page?.findings) ?? [];
  const noise = findings.flatMap((each) =>
    each.code === 'layer-beside-the-part' && each.place.layer !== undefined
      ? [{ layer: each.place.layer, why: each.facts.why }]
      : [],
  );
  if (noise.length === 0) return null;
  const layers = noise.map(({ layer }) => layer);
  const more = noise.length - MOST_NAMED;
  return (
    <div className="noise-layers">
      <p>{noise.length === 1 ? 'One layer does' : `${noise.length} layers do`} not look like the part:</p>
      <ul>
        {noise.slice(0, MOST_NAMED).map(({ layer, why }) => (
          <li key={layer}>
            <span className="layer-name">{layer}</span> <span className="aside">for {why}</span>
          </li>
        ))}
        {more > 0 && <li className="aside">and {more} more</li>}
      </ul>
      <button
        type="button"
        onClick={() =>
          actions.edit(noise.length === 1 ? `leave layer ${layers[0]} out` : 'leave layers out', (before) =>
            leaveLayersOut(before, layers),
          )
        }
      >
        {noise.length === 1 ? 'leave it out' : 'leave them out'}
      </button>
    </div>
  );
}
