/** Where the sheet ends: by a layer, or on a drawing that has all on one layer by the outermost outline or a region of the sheet. */
import { clearHoles, setSheetChoice, sheetChoice } from '#app/state/edits/edit-sheet.ts';
import { ChoiceField } from '#app/views/job/ChoiceField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';

const BY_LAYER = '';
const OUTERMOST = 'outermost';
const STANDING = 'standing';
const PICKED = 'picked';

export function SheetEdgeFields({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const selection = useWorkbenchState((state) => state.session.selection);
  const choice = sheetChoice(job);
  const [picked] = selection;
  const holes = job.layers?.holes?.length ?? 0;
  const take = (value: string): void => {
    if (value === PICKED) actions.sheetAroundSelection();
    else if (value === BY_LAYER)
      actions.edit('edge of the part by layer', (now) => setSheetChoice(now, undefined));
    else if (value === OUTERMOST)
      actions.edit('outermost outline is the edge', (now) => setSheetChoice(now, OUTERMOST));
  };
  return (
    <div className="drawing-fields">
      <ChoiceField
        label={JOB.members.layers.members.outline.parts.way.label}
        value={optionFor(choice)}
        onTake={take}
      >
        <option value={BY_LAYER}>by its layer</option>
        <option value={OUTERMOST}>outermost outline</option>
        {typeof choice === 'object' && (
          <option value={STANDING}>outline around {choice.at.join(', ')}</option>
        )}
        {selection.length === 1 && <option value={PICKED}>outline around {picked}</option>}
      </ChoiceField>
      {holes > 0 && (
        <p className="aside">
          {holes === 1 ? '1 hole by point' : `${holes} holes by point`}{' '}
          <button type="button" onClick={() => actions.edit('no holes by point', clearHoles)}>
            {holes === 1 ? 'make it a region' : 'make them regions'}
          </button>
        </p>
      )}
    </div>
  );
}

function optionFor(choice: ReturnType<typeof sheetChoice>): string {
  if (choice === undefined) return BY_LAYER;
  return choice === OUTERMOST ? OUTERMOST : STANDING;
}
