/** How the relief is looked at: as drawn, cut open along the section line, or from below; and how much heights are drawn larger. */
import { faceOnShow } from '#app/state/shown-face.ts';
import type { ReliefView } from '#app/state/workbench-state.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

const VIEWS: readonly { readonly view: ReliefView; readonly words: string }[] = [
  { view: 'drawn', words: 'As drawn' },
  { view: 'cut', words: 'Cut at A' },
  { view: 'below', words: 'From below' },
];
const HEIGHTS = [1, 2, 4, 8, 16, 32, 64];

export function ReliefChoices() {
  const { actions } = useWorkbench();
  const exaggeration = useWorkbenchState((state) => state.session.exaggeration);
  const face = useWorkbenchState(faceOnShow);
  const fitted = useWorkbenchState((state) => state.fittedHeight);
  return (
    <>
      {face === 'near' && <ViewChoice />}
      <label className="height">
        height
        <select
          value={exaggeration}
          aria-label="Height exaggeration"
          onChange={({ target }) =>
            actions.exaggerate(target.value === 'fitted' ? 'fitted' : Number(target.value))
          }
        >
          <option value="fitted">×{fitted} fits</option>
          {HEIGHTS.map((height) => (
            <option key={height} value={height}>
              ×{height}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}

/** The far face is seen from below. */
function ViewChoice() {
  const { actions } = useWorkbench();
  const reliefView = useWorkbenchState((state) => state.session.reliefView);
  return (
    <fieldset className="switch">
      <legend className="unseen">View of the relief</legend>
      {VIEWS.map(({ view, words }) => (
        <label key={view}>
          <input
            type="radio"
            name="relief-view"
            checked={reliefView === view}
            onChange={() => actions.turnRelief(view)}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}
