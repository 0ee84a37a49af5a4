/** How the sheet is looked at: plan or relief, and the relief's height. */
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

const HEIGHTS = [1, 2, 4, 8, 16];

export function SheetChoices({ fitAll }: { readonly fitAll: () => void }) {
  const { actions } = useWorkbench();
  const { view, exaggeration } = useWorkbenchState((state) => state.session);
  return (
    <fieldset className="sheet-choices">
      <legend className="unseen">View of the sheet</legend>
      {(['plan', 'relief'] as const).map((each) => (
        <label key={each}>
          <input type="radio" name="view" checked={view === each} onChange={() => actions.show(each)} />
          {each}
        </label>
      ))}
      {view === 'relief' && (
        <label className="height">
          height ×
          <select
            value={exaggeration}
            aria-label="Height exaggeration"
            onChange={(event) => actions.exaggerate(Number(event.target.value))}
          >
            {HEIGHTS.map((height) => (
              <option key={height} value={height}>
                {height}
              </option>
            ))}
          </select>
        </label>
      )}
      <button type="button" onClick={fitAll}>
        whole part
      </button>
    </fieldset>
  );
}
